// Puts a job and its answers on the page. Every element says for itself what
// it shows:
//   name="…"          a control of the job
//   data-say="x"      the words under say.x; hidden while there are none
//   data-if="x"       shown while there are words under say.x
//   data-picture="x"  the picture under picture.x
//   data-when="n=v"   shown while field n of the job stands at v, or w of "n=v|w"
//   data-unit="x"     the unit under unit.x
import { controlsOf, nameOf, putText } from './fields.js';

/** A painter of everything under root; call look() again when templates were cloned. */
export class Painter {
  constructor(root) {
    this.root = root;
    this.pictures = new Map();
    this.look();
  }

  look() {
    const all = (selector) => [...this.root.querySelectorAll(selector)];
    this.controls = controlsOf(this.root).map((control) => ({
      control,
      field: control.closest('.field'),
      hint: control.getAttribute('placeholder') ?? '',
    }));
    this.says = all('[data-say]');
    this.ifs = all('[data-if]');
    this.pictured = all('[data-picture]');
    this.whens = all('[data-when]').map((element) => {
      const [pattern, value] = element.dataset.when.split('=');
      return { element, pattern, values: value.split('|'), first: firstChoice(this.root, pattern) };
    });
    this.units = all('[data-unit]');
  }

  /** Shows the job's own text in its controls. */
  fill(form) {
    for (const { control } of this.controls) putText(control, form[nameOf(control.name, control)]);
  }

  /** Shows the answers. */
  show(form, answers) {
    for (const element of this.says) say(element, answers[`say.${nameOf(element.dataset.say, element)}`] ?? '');
    for (const element of this.ifs) element.hidden = !answers[`say.${nameOf(element.dataset.if, element)}`];
    for (const element of this.pictured) this.picture(element, answers[`picture.${element.dataset.picture}`] ?? '');
    for (const element of this.units) say(element, answers[`unit.${element.dataset.unit}`] ?? '');
    for (const { element, pattern, values, first } of this.whens) {
      element.hidden = !values.includes(form[nameOf(pattern, element)] || first);
    }
    for (const each of this.controls) this.field(each, answers);
  }

  picture(element, svg) {
    if (this.pictures.get(element) === svg) return;
    this.pictures.set(element, svg);
    element.innerHTML = svg;
    element.hidden = !svg;
  }

  field({ control, field, hint }, answers) {
    const name = nameOf(control.name, control);
    const error = answers[`error.${name}`] ?? '';
    if ((control.getAttribute('aria-invalid') === 'true') !== !!error) control.setAttribute('aria-invalid', String(!!error));
    const line = field?.querySelector('.error');
    if (line) {
      line.id ||= `error-${control.id || name}`;
      say(line, error);
      if (error) control.setAttribute('aria-describedby', line.id);
      else control.removeAttribute('aria-describedby');
    }
    if (control.tagName !== 'INPUT') return;
    const assumed = answers[`assumed.${name}`];
    const found = answers[`found.${name}`];
    const text = assumed ? `${assumed} assumed` : found ? `${found} found` : hint;
    if (control.placeholder !== text) control.placeholder = text;
  }
}

// A blank choice stands at its first word.
function firstChoice(root, pattern) {
  return root.querySelector(`select[name="${pattern}"]`)?.options[0].value ?? '';
}

function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
  if (element.hidden !== (text === '')) element.hidden = text === '';
}
