// A dimension on a drawing, as the way to the field that it is typed in.
import { controlsOf, nameOf } from './fields.js';
import { unfold } from './paint.js';

/** Leads from what is tapped, or pressed by a key, on any drawing under page. */
export function watchDimensions(page) {
  const lead = (event) => {
    const tapped = event.target.closest('[data-field]');
    if (!tapped) return;
    event.preventDefault();
    goTo(tapped.closest('.step'), tapped.dataset.field);
  };
  page.addEventListener('click', lead);
  page.addEventListener('keydown', (event) => { if (event.key === 'Enter' || event.key === ' ') lead(event); });
}

function goTo(step, name) {
  const control = controlsOf(step).find((each) => nameOf(each.name, each) === name);
  if (!control) return;
  unfold(control);
  control.focus({ preventScroll: true });
  control.scrollIntoView({ block: 'center' });
}
