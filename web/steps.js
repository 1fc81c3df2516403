// The steps of the work: one section of the page each, named by its id in the
// address.

export function stepsIn(page) {
  return [...page.querySelectorAll('.step')];
}

/** The step that an address names, or holds what it names; else the dials. */
export function stepAt(page, hash) {
  const named = hash.length > 1 && page.getElementById(hash.slice(1));
  return (named && named.closest('.step')) || page.getElementById('true');
}
