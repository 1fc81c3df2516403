// Where the focus goes when what had it is gone: a keyboard and a screen reader go on from there.

/** Gives the focus to a part of the page that no key leads to: the Tab key goes on into it. */
export function land(part) {
  part.tabIndex = -1;
  part.addEventListener('blur', () => part.removeAttribute('tabindex'), { once: true });
  part.focus({ preventScroll: true });
}

/** What is nearest to a row that is to go: the next of its group, what adds one, or the one before. */
export function nearest(row) {
  const { row: group } = row.dataset;
  const alike = (other) => (other?.dataset.row === group ? other : null);
  return alike(row.nextElementSibling) ?? row.closest('.step').querySelector(`[data-add="${group}"]`) ?? alike(row.previousElementSibling);
}
