// Registers the service worker and brings a new version in: at a start, before
// the form shows and with no other page open, by one reload; otherwise by a
// button. Without a worker (an old browser, a page opened from a file) the page
// goes on as it is.

const ANSWER_MS = 1000;
const TAKE_OVER_MS = 3000;
const ASKS = 4;
const ASK_AGAIN_MS = 250;
const CHECK_MS = 60 * 60 * 1000;

const workers = navigator.serviceWorker;
const controlled = Boolean(workers?.controller); // as the page started
let registration = null;
let reloading = false;
let changes = 0; // of the worker under this page
workers?.addEventListener('controllerchange', () => { changes++; });

/**
 * Lets a version that waits since an earlier visit take over. Await it before
 * the form shows, with nothing asked for meanwhile: Chromium ends the old
 * worker, and a request at that moment starts it anew for half a minute, for
 * which the new one waits. True means that the page is about to reload: show
 * nothing. With nothing waiting it costs one look-up and no request.
 */
export async function takeWaitingAtStart() {
  if (!workers?.controller) return false;
  const giveBack = holdBackIcons();
  const taken = await takeWaiting();
  if (taken) reload();
  else giveBack();
  return taken;
}

async function takeWaiting() {
  const found = await within(ANSWER_MS, workers.getRegistration(document.baseURI).catch(() => undefined));
  if (!found?.waiting) return false;
  await within(TAKE_OVER_MS, loaded());
  const changed = controllerChange();
  if (!await soleAndTaking(found.waiting)) return false;
  // Should it take longer, onUpdateWaiting offers the reload by the button.
  return await within(TAKE_OVER_MS, changed) ?? false;
}

// The browser asks for the icons, and for those in the manifest, of its own
// accord as soon as the page is loaded.
function holdBackIcons() {
  const links = [...document.querySelectorAll('link[rel=icon], link[rel=manifest]')].map((link) => [link, link.getAttribute('href')]);
  for (const [link] of links) {
    if (link.rel === 'icon') link.href = 'data:,'; // with none it would ask for /favicon.ico
    else link.removeAttribute('href');
  }
  return () => links.forEach(([link, href]) => link.setAttribute('href', href));
}

/**
 * Registers the worker; call it once the page stands, so that the installation
 * doesn't compete with the start. offer is called, perhaps more than once, when
 * a newer version is ready and the page should show its button; the button
 * calls applyUpdate. mayReload says whether a page out of sight may load itself
 * again for it. Resolves to true once the page works without a network, to
 * false where it can't; a first installation that fails leaves it open.
 */
export async function onUpdateWaiting(offer, mayReload = async () => true) {
  if (!workers) return false;
  try {
    registration = await workers.register(new URL('sw.js', document.baseURI), { updateViaCache: 'none' });
  } catch {
    return controlled;
  }
  offerOnNewWorker(offer);
  offerOnTakeover(offer, mayReload);
  checkWhenSeenAgain();
  const { active } = await workers.ready;
  // A page that was on its way while the worker claimed those that stood has none.
  if (!workers.controller) active.postMessage('claim');
  return true;
}

/** Brings the newer version in. Await the page's own writes first. */
export async function applyUpdate() {
  const waiting = registration?.waiting;
  if (waiting) {
    const changed = controllerChange();
    waiting.postMessage('take over');
    await within(TAKE_OVER_MS, changed);
  }
  reload();
}

// The page that a reload has ended may still be counted for a moment.
async function soleAndTaking(waiting) {
  for (let asked = 1; ; asked++) {
    if (await within(ANSWER_MS, soleNow(waiting))) return true;
    if (asked === ASKS) return false;
    await new Promise((resolve) => setTimeout(resolve, ASK_AGAIN_MS));
  }
}

function soleNow(waiting) {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = (event) => resolve(event.data);
    waiting.postMessage('take over if alone', [port2]);
  });
}

function loaded() {
  return new Promise((resolve) => {
    if (document.readyState === 'complete') resolve();
    else addEventListener('load', resolve, { once: true });
  });
}

function controllerChange() {
  return new Promise((resolve) => {
    workers.addEventListener('controllerchange', () => resolve(true), { once: true });
  });
}

/** Resolves as the promise does, or to undefined when that takes too long. */
function within(ms, promise) {
  return Promise.race([promise, new Promise((resolve) => setTimeout(resolve, ms))]);
}

function reload() {
  reloading = true;
  location.reload();
}

function offerOnNewWorker(offer) {
  const look = (worker) => worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && registration.active) offer();
  });
  if (registration.waiting && registration.active) offer();
  look(registration.installing);
  registration.addEventListener('updatefound', () => look(registration.installing));
}

// Another page's button has changed the worker under this one, or a take-over
// at the start took longer than the page waited for it. A page out of sight
// follows at once, where that loses nothing; the one in use is asked. The worker that comes to a page
// without one is no change.
function offerOnTakeover(offer, mayReload) {
  const first = controlled ? 0 : 1;
  const follow = async () => {
    if (reloading || changes <= first) return;
    if (document.hidden && await mayReload()) reload();
    else offer();
  };
  workers.addEventListener('controllerchange', follow);
  follow();
}

// An installed app may stay open for weeks, with no start to look for news at.
function checkWhenSeenAgain() {
  let checked = performance.now();
  document.addEventListener('visibilitychange', () => {
    if (document.hidden || performance.now() - checked < CHECK_MS) return;
    checked = performance.now();
    registration.update().catch(() => {});
  });
}
