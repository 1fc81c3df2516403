// What a person calls a field of the job, by its label on the page.
import { waitingIn } from './steps.js';

/** Fields, as [name, text here] or [name, text here, text in a file], in words: the first most of them. */
export function told(fields, most = fields.length) {
  const roots = [document, ...waitingIn(document)];
  const words = fields.slice(0, most).map(([name, here, ...there]) => {
    const what = labelOf(roots, name) || name;
    return there.length > 0 ? `${what} ${here ?? 'blank'} here, ${there[0] ?? 'blank'} in the file` : `${what} ${here || 'blank'}`;
  });
  if (fields.length > most) words.push(`and ${fields.length - most} more`);
  return words.join('; ');
}

function labelOf(roots, name) {
  for (const root of roots) {
    for (const control of root.querySelectorAll('[name]')) {
      if (means(control.getAttribute('name'), name)) {
        const label = control.getAttribute('aria-label') ?? (control.id && root.querySelector(`label[for="${control.id}"]`) || control.closest('label'))?.textContent;
        if (label) return label.trim();
      }
    }
    const label = labelOf([...root.querySelectorAll('template')].map(({ content }) => content), name);
    if (label) return label;
  }
  return '';
}

/** Whether a pattern, a star for each row's key, means a name. */
function means(pattern, name) {
  const [parts, words] = [pattern.split('.'), name.split('.')];
  return parts.length === words.length && parts.every((part, i) => part === '*' || part === words[i]);
}
