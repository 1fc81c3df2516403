// What is typed while the page still loads: the fields are there before the
// core is, and on a slow line for long. A reload meanwhile, as for a newer
// version, hands it on to the next start.
import { FOLDER } from './folder.js';
import { putText, textOf } from './fields.js';

const KEY = `pintwelve ${FOLDER} typed early`;

/** Listens from now on; the function it gives ends that and types everything once more. */
export function hearEarly(body, typed) {
  const texts = new Map(handedOn(body));
  for (const [control, text] of texts) putText(control, text);
  const hear = ({ target }) => texts.set(target, textOf(target));
  const handOn = () => {
    const named = [...texts].filter(([{ id }]) => id).map(([{ id }, text]) => [id, text]);
    if (named.length > 0) remember(JSON.stringify(named));
  };
  body.addEventListener('input', hear);
  addEventListener('pagehide', handOn);
  return () => {
    body.removeEventListener('input', hear);
    removeEventListener('pagehide', handOn);
    for (const [control, text] of texts) {
      putText(control, text);
      typed(control);
    }
  };
}

function remember(text) {
  try {
    sessionStorage.setItem(KEY, text);
  } catch {
    // A browser that keeps nothing takes no newer version over either.
  }
}

function handedOn(body) {
  try {
    const named = JSON.parse(sessionStorage.getItem(KEY) ?? '[]');
    sessionStorage.removeItem(KEY);
    return named.map(([id, text]) => [body.querySelector(`#${CSS.escape(id)}`), text]).filter(([control]) => control);
  } catch {
    return [];
  }
}
