// What is asked beside a field: a few large buttons that lie over what is below,
// so that nothing moves. Each carries what it does as data, for the hands.

// A tap meant for what the buttons lie over, ms.
const DEAF = 600;

const shownAt = new WeakMap();

/** Shows choices under a field, or takes them away where there are none; a choice is [label, data]. */
export function offer(field, question, choices) {
  const said = JSON.stringify(choices);
  let box = boxOf(field);
  if (!choices.length) {
    box?.remove();
    return;
  }
  if (box?.dataset.said === said) return;
  box?.remove();
  box = document.createElement('div');
  box.className = 'choices';
  box.dataset.said = said;
  box.setAttribute('role', 'group');
  box.setAttribute('aria-label', question);
  box.append(...choices.map(([label, data]) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = label;
    Object.assign(button.dataset, data);
    return button;
  }));
  shownAt.set(box, performance.now());
  field.append(box);
}

/** Whether a button of the choices was pressed before it could be seen. */
export function tooSoon(button) {
  return performance.now() < shownAt.get(button.closest('.choices')) + DEAF;
}

export function boxOf(field) { return field.querySelector(':scope > .choices'); }
