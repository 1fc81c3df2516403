// Tells whether the page works without its server: plain http, but for the
// machine itself, gives a page no worker that could keep it.
import { FOLDER } from './folder.js';

const TOLD = `pintwelve ${FOLDER} can't work offline`;

/**
 * Shows in a line what is known once works resolves. Where the page can't work
 * alone, say(words) is called too, once on a phone.
 */
export async function tellOffline(line, works, say) {
  if (await works) {
    line.textContent = 'Kept on this phone: it works without signal.';
    return;
  }
  line.textContent = isSecureContext
    ? 'This browser can’t keep the page: it can’t work without its server.'
    : 'This address can’t work without its server: it is plain http. What you type is kept on this phone.';
  if (!told()) say(line.textContent);
  remember();
}

// Where the browser keeps nothing it is said each time.
function told() {
  try {
    return localStorage.getItem(TOLD) !== null;
  } catch {
    return false;
  }
}

function remember() {
  try {
    localStorage.setItem(TOLD, 'yes');
  } catch { /* said again next time */ }
}
