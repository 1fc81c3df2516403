// The one door between the page and the Go core: call(verb, flat object) gives
// a flat object. Names and texts cross as one text with NULs between, in the
// core's memory, which costs one copy each way however many fields a job has.

const NUL = '\u0000';

const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** Starts the core and returns its call. */
export async function startCore() {
  const go = new Go();
  // Nothing in the core waits for a time. Only Go's memory keeper would, to hand back pages, which WebAssembly can't.
  go.importObject.gojs['runtime.scheduleTimeoutEvent'] = () => {};
  const { instance } = await instantiate('core.wasm', go.importObject);
  go.run(instance);
  const { mem, room, answer } = instance.exports;
  const bytes = (size) => {
    const at = room(size); // may move mem.buffer
    return new Uint8Array(mem.buffer, at, size);
  };
  return (verb, flat) => {
    const question = encoder.encode(verb + NUL + pack(flat));
    bytes(question.length).set(question);
    const size = answer(question.length);
    if (go.exited) throw new Error('the core has ended');
    return unpack(decoder.decode(bytes(size)));
  };
}

// A host that serves .wasm under another type can't be compiled as it streams.
async function instantiate(address, imports) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  if (response.headers.get('Content-Type') === 'application/wasm') {
    return WebAssembly.instantiateStreaming(response, imports);
  }
  return WebAssembly.instantiate(await response.arrayBuffer(), imports);
}

function pack(flat) {
  return Object.entries(flat).flat().map((text) => String(text).replaceAll(NUL, '')).join(NUL);
}

function unpack(packed) {
  const flat = {};
  const parts = packed.split(NUL);
  for (let i = 0; i + 1 < parts.length; i += 2) flat[parts[i]] = parts[i + 1];
  return flat;
}
