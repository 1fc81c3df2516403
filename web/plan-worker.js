// Plans the holes in a core of its own, so that the page goes on answering
// meanwhile and can end the planning by ending this worker.
import './wasm_exec.js';
import { startCore } from './bridge.js';

const core = startCore();

addEventListener('message', async ({ data }) => {
  try {
    const call = await core;
    postMessage(call('plan', data.form, { key: data.key }));
  } catch (error) {
    postMessage({ fault: error.message });
  }
});
