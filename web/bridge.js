// The one door between the page and the Go core: call(verb, form, arguments)
// gives a flat object. Names and texts cross as one string with NULs between,
// which costs one copy each way, and of a form only what is other than the last
// call's, however many fields a job has.

import { FOLDER } from './folder.js';

const NUL = '\u0000';

/** A sum that went wrong. The core is whole again for the next call, or soon. */
export class Fault extends Error {}

/**
 * Starts the core and returns its call, which throws a Fault when a sum goes
 * wrong. A core that dies of one is started anew: anew() tells that it stands
 * again, when it was asked for something meanwhile. One that comes by the network
 * is fetched once free() says that what goes before is done.
 */
export async function startCore(anew = () => {}, free = async () => {}) {
  const module = await compiled('core.wasm', free);
  let core = await begun(module);
  let starting = null;
  let missed = false;

  async function open() {
    core = await begun(module);
    if (missed) anew();
    missed = false;
  }

  function restart() {
    // Where even this fails, the next call tries again.
    starting ??= open().catch(() => {}).finally(() => { starting = null; });
  }

  return (verb, form, args = {}) => {
    if (!core) {
      missed = true;
      restart();
      throw new Fault('the core is being started anew');
    }
    let packed;
    let why = 'the core stopped';
    try {
      packed = core.door(verb, ...core.form.changed(form), pack(Object.entries(args).flat()));
    } catch (error) {
      why = error.message;
    }
    if (packed === undefined) {
      bury(core);
      core = null;
      restart();
      throw new Fault(why);
    }
    const answers = unpack(packed);
    if (answers.fault !== undefined) throw new Fault(answers.fault);
    return answers;
  };
}

/** A core that runs. */
async function begun(module) {
  const go = new Go();
  go.run(await WebAssembly.instantiate(module, go.importObject));
  return { go, door: globalThis.pintwelve, form: new Sent() };
}

/** The form that a core has. */
class Sent {
  constructor() { this.form = new Map(); }

  /** Makes it another form; gives the texts that have come or are others, and the names that have gone, packed. */
  changed(form) {
    const texts = [];
    const gone = [];
    const names = Object.keys(form);
    for (const name of names) {
      if (this.form.get(name) === form[name]) continue;
      texts.push(name, form[name]);
      this.form.set(name, form[name]);
    }
    if (this.form.size > names.length) gone.push(...[...this.form.keys()].filter((name) => !Object.hasOwn(form, name)));
    for (const name of gone) this.form.delete(name);
    return [pack(texts), pack(gone)];
  }
}

/** Stops the timers of a core that died, which would wake it, and lets go of its memory. */
function bury({ go }) {
  for (const timer of go._scheduledTimeouts.values()) clearTimeout(timer);
  globalThis.pintwelve = undefined;
}

async function compiled(address, free) {
  const kept = await keptByWorker(address);
  if (kept) return WebAssembly.compile(kept);
  await free();
  // No file of the site is ever redirected, nor is the core a page: a network does that until one has logged in.
  const response = await fetch(address, { redirect: 'manual' });
  if (response.type === 'opaqueredirect' || response.headers.get('Content-Type')?.startsWith('text/html') && response.ok) {
    throw new Error(`a page of the network’s own came in the place of ${address}, perhaps for you to log in there first`);
  }
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  // A host that serves .wasm under another type can't be compiled as it streams.
  if (response.headers.get('Content-Type') === 'application/wasm') return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer());
}

// What the worker has kept is there whole, and through the worker it takes twice as
// long; to stream it would have this thread read all of it, where the page waits.
// While a newer version is being kept too, the worker knows which one is the page's.
async function keptByWorker(address) {
  if (!navigator.serviceWorker?.controller) return null;
  try {
    const [name, ...others] = (await caches.keys()).filter((each) => each.startsWith(`pintwelve ${FOLDER} `));
    if (!name || others.length > 0) return null;
    const response = await (await caches.open(name)).match(address);
    return response ? await response.arrayBuffer() : null;
  } catch {
    return null;
  }
}

function pack(texts) { return texts.map((text) => String(text).replaceAll(NUL, '')).join(NUL); }

function unpack(packed) {
  const flat = {};
  const parts = packed.split(NUL);
  for (let i = 0; i + 1 < parts.length; i += 2) flat[parts[i]] = parts[i + 1];
  return flat;
}
