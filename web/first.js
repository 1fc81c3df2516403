// The first screen stands in the page itself, so that its first paint waits for no
// script: but where that of a job is kept (lastscreen.js), it shows none but that, and
// where the worker serves the page the script is there as soon as the screen. The core
// then comes straight from the worker's cache (bridge.js). Where it comes by the network
// it is asked for as soon as the screen is painted, which it must not hold up.
{
  const served = Boolean(navigator.serviceWorker?.controller);
  if (!served) requestAnimationFrame(() => setTimeout(preload));
  // Evaluated once, with the page's own; only one that the parser meets comes after the whole page.
  if (served || keptScreen()) document.write('<script type="module" src="main.js" blocking="render"></script>');
}

function preload() {
  document.head.append(Object.assign(document.createElement('link'), { rel: 'preload', as: 'fetch', type: 'application/wasm', crossOrigin: '', href: 'core.wasm' }));
}

function keptScreen() {
  try {
    return localStorage.getItem(`pintwelve ${new URL('.', document.baseURI).pathname} screen`);
  } catch {
    return null; // a browser that keeps nothing keeps no screen
  }
}
