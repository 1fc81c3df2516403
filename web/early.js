// What is typed while the page still loads: the fields are there before the
// core is, and on a slow line for long.
import { putText, textOf } from './fields.js';

/** Listens from now on; the function it gives ends that and types everything once more. */
export function hearEarly(body, typed) {
  const texts = new Map();
  const hear = ({ target }) => texts.set(target, textOf(target));
  body.addEventListener('input', hear);
  return () => {
    body.removeEventListener('input', hear);
    for (const [control, text] of texts) {
      putText(control, text);
      typed(control);
    }
  };
}
