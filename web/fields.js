// Controls and the names they stand for. A control's name attribute is a
// pattern of the form's table; its stars are filled with the data-keys of the
// elements around it, the last star with the innermost.

/** The name in the job that a pattern means at an element. */
export function nameOf(pattern, element) {
  const keys = [];
  for (let at = element.closest('[data-key]'); at; at = at.parentElement?.closest('[data-key]')) {
    keys.unshift(at.dataset.key);
  }
  const stars = pattern.split('*').length - 1;
  const own = keys.slice(keys.length - stars);
  return pattern.replaceAll('*', () => own.shift() ?? '');
}

/** What stands in a control, as the job keeps it. */
export function textOf(control) {
  return control.type === 'checkbox' ? (control.checked ? 'yes' : '') : control.value;
}

/** Puts a job's text into a control, if it isn't there already. */
export function putText(control, text = '') {
  if (control.type === 'checkbox') control.checked = text === 'yes';
  else if (control.tagName === 'SELECT') control.value = text || control.options[0].value;
  else if (control.value !== text) control.value = text;
}

/** The controls of the job under an element. */
export function controlsOf(root) {
  return [...root.querySelectorAll('input[name], select[name], textarea[name]')].filter((c) => c.type !== 'radio');
}
