// The one door between the page and the Go core: call(verb, flat object) gives
// a flat object. Names and texts cross as one string with NULs between, which
// costs one copy each way however many fields a job has.

const NUL = '\u0000';

/** Starts the core and returns its call. */
export async function startCore() {
  const go = new Go();
  const { instance } = await instantiate('core.wasm', go.importObject);
  go.run(instance);
  const door = globalThis.pintwelve;
  return (verb, flat) => unpack(door(verb, pack(flat)));
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
