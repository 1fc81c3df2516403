// The steps of the work: one section of the page each, named by its id in the
// address. What doesn't show at the start waits as text in its section, so that a
// start has no more to make, to lay out and to search than it shows.

export function stepsIn(page) {
  return [...page.querySelectorAll('.step')];
}

/** The step that an address names, or holds what it names; else the dials. */
export function stepAt(page, hash) {
  return (hash.length > 1 && stepWith(page, hash.slice(1))) || page.getElementById('true');
}

/** The step that is named so or holds what is, whether it waits or not; undefined where none does. */
export function stepWith(page, id) {
  const named = page.getElementById(id);
  if (named) return named.closest('.step') ?? undefined;
  return stepsIn(page).find((step) => waiting(step)?.text.includes(id) && contentOf(step).getElementById(id));
}

/** Has a step's content take its place. */
export function bring(step) { waiting(step)?.replaceWith(contentOf(step)); }

/** What waits of the steps of a page, a fragment each. */
export function waitingIn(page) { return stepsIn(page).filter(waiting).map(contentOf); }

function contentOf(step) {
  const template = document.createElement('template');
  template.innerHTML = waiting(step).text;
  return template.content;
}

function waiting(step) { return step.querySelector(':scope > script[type="text/html"]'); }
