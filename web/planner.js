// Plans the holes in a core of its own, so that the page goes on answering
// meanwhile and can end the planning by ending its worker.
import { startCore } from './bridge.js';

/** Answers a page's messages, from a worker that the page's own script runs in. */
export function planForPage() {
  const core = startCore();
  addEventListener('message', async ({ data }) => {
    try {
      const call = await core;
      postMessage(call('plan', data.form, { key: data.key }));
    } catch (error) {
      postMessage({ fault: error.message });
    }
  });
}
