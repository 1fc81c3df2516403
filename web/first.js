// The first screen stands in the page itself, so that its first paint waits for no
// script: but where that of a job is kept (lastscreen.js), it shows none but that, and
// where the worker serves the page the script is there as soon as the screen.
try {
  if (navigator.serviceWorker?.controller || localStorage.getItem(`pintwelve ${new URL('.', document.baseURI).pathname} screen`)) {
    // Evaluated once, with the page's own; only one that the parser meets comes after the whole page.
    document.write('<script type="module" src="main.js" blocking="render"></script>');
  }
} catch {
  // A browser that keeps nothing keeps no screen.
}
