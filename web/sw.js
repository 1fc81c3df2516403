// Keeps the whole site on the phone. A version counts as installed only when
// every file has come and its hash is right; until then the one before serves.

/** The build puts the version and the first half of each file's SHA-256 here. */
const BUILT = { version: '', files: {} };

const SCOPE = new URL(self.registration.scope);
// Folders of one host share their caches' names; no path holds a space.
const OURS = `pintwelve ${SCOPE.pathname} `;
const CACHE = OURS + BUILT.version;

self.addEventListener('install', (event) => event.waitUntil(install()));
self.addEventListener('activate', (event) => event.waitUntil(activate()));
self.addEventListener('fetch', (event) => {
  const path = ownPath(event.request);
  if (path) event.respondWith(serve(path, event));
});
self.addEventListener('message', (event) => {
  if (event.data === 'take over') self.skipWaiting();
  if (event.data === 'claim') event.waitUntil(self.clients.claim());
  if (event.data === 'take over if alone') event.waitUntil(takeOverIfAlone(event.ports[0]));
});

async function install() {
  const stopping = new AbortController();
  try {
    const cache = await caches.open(CACHE);
    await Promise.all(Object.keys(BUILT.files).map((path) => keep(cache, path, stopping.signal)));
    await checkRuns(cache);
  } catch (error) {
    stopping.abort();
    await caches.delete(CACHE);
    throw error;
  }
}

async function activate() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  // The page that installed the first version is served from here on.
  await self.clients.claim();
}

/** The listed file that a request is for; undefined for anything else. */
function ownPath(request) {
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== SCOPE.origin || !url.pathname.startsWith(SCOPE.pathname)) return undefined;
  const path = url.pathname.slice(SCOPE.pathname.length) || 'index.html';
  return Object.hasOwn(BUILT.files, path) ? path : undefined;
}

async function serve(path, event) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(address(path));
  if (kept) return kept;
  // Only a cache that was cleared behind our back lacks a file. With nothing left
  // of this version, a load takes all from the network, whichever stands there.
  const empty = (await cache.keys()).length === 0;
  event.waitUntil(refill(cache));
  return empty ? fetch(event.request) : missing(path, event.request);
}

// What is left of this version goes with no file of another: where another stands
// on the network, all is let go, and the next load is that one's.
async function missing(path, request) {
  try {
    return await fetchChecked(path);
  } catch (error) {
    if (!await otherVersionStands()) throw error;
    await caches.delete(CACHE);
    if (request.mode === 'navigate') return fetch(request);
    throw error;
  }
}

// A network's login page or a host in trouble is no other version.
async function otherVersionStands() {
  const worker = await fetch(address('sw.js'), { cache: 'no-cache' });
  const version = (await worker.text()).match(/"version":"([^"]*)"/)?.[1];
  return worker.ok && version !== undefined && version !== BUILT.version;
}

let refilling = null;

/** Brings back all that a cache lacks of this version, where the network has all of it. */
function refill(cache) {
  refilling ??= lacking(cache).catch(() => []).then((files) =>
    Promise.allSettled(files.map(([path, file]) => cache.put(address(path), file)))).finally(() => { refilling = null; });
  return refilling;
}

async function lacking(cache) {
  const files = await Promise.all(Object.keys(BUILT.files).map(async (path) =>
    !await cache.match(address(path)) && [path, await fetchChecked(path)]));
  return files.filter(Boolean);
}

function address(path) {
  return new URL(path, SCOPE).href;
}

// A whole file may still be more than an old browser can run; then the version
// that it can run stays.
async function checkRuns(cache) {
  for (const path of Object.keys(BUILT.files).filter((name) => name.endsWith('.wasm'))) {
    const program = await cache.match(address(path));
    if (!WebAssembly.validate(await program.arrayBuffer())) throw new Error(`${path} can't run here`);
  }
}

async function keep(cache, path, signal) {
  await cache.put(address(path), await fetchChecked(path, signal));
}

// The browser's own cache is asked first, since a first visit has just filled
// it, and past it when what it gives is wrong.
async function fetchChecked(path, signal) {
  for (const cache of ['no-cache', 'reload']) {
    const response = await fetch(address(path), { cache, mode: 'same-origin', signal });
    const body = await response.arrayBuffer();
    if (response.ok && await sum(body) === BUILT.files[path]) {
      return new Response(body, { headers: { 'Content-Type': response.headers.get('Content-Type') ?? '' } });
    }
  }
  throw new Error(`${path} is not the file of version ${BUILT.version}`);
}

async function sum(body) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body), 0, 16);
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Takes over when the page that asks is the only one open, and tells it. */
async function takeOverIfAlone(port) {
  const pages = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  const alone = pages.filter((page) => page.url.startsWith(SCOPE.href)).length === 1;
  port.postMessage(alone);
  if (alone) await self.skipWaiting();
}
