// Puts a job and its answers on the page. Every element says for itself what
// it shows:
//   name="…"          a control of the job
//   data-say="x"      the words under say.x; hidden while there are none
//   data-if="x"       shown while there are words under say.x
//   data-picture="x"  the picture under picture.x
//   data-when="n=v"   shown while field n of the job stands at v, or w of "n=v|w"
//   data-unit="x"     the unit under unit.x
// A control also shows what is wrong with its text, and what that may mean.
// What stands under data-later has answers of its own and is painted apart.
import { boxOf, offer } from './choices.js';
import { controlsOf, nameOf, putText } from './fields.js';
import { Picture } from './picture.js';

/**
 * A painter of everything under root, or with later of what there stands under
 * data-later; call look() again when rows came or went.
 */
export class Painter {
  constructor(root, later = false) {
    this.root = root;
    this.later = later;
    this.pictures = new WeakMap();
    this.look();
  }

  look() {
    const mine = (element) => Boolean(element.closest('[data-later]')) === this.later;
    const all = (selector) => [...this.root.querySelectorAll(selector)].filter(mine);
    const under = (selector, key) => all(selector).map((element) => ({ element, pattern: element.dataset[key] }));
    this.controls = controlsOf(this.root).filter(mine).map((element) => ({
      element,
      pattern: element.name,
      field: element.closest('.field'),
      line: element.closest('.field')?.querySelector('.error'),
      hint: (element.dataset.hint ??= element.getAttribute('placeholder') ?? ''), // a stand-in may have taken its place
    }));
    this.says = under('[data-say]', 'say');
    this.ifs = under('[data-if]', 'if');
    this.pictured = under('[data-picture]', 'picture');
    this.units = under('[data-unit]', 'unit');
    this.whens = all('[data-when]').map((element) => {
      const [pattern, value] = element.dataset.when.split('=');
      return { element, pattern, values: value.split('|'), first: firstChoice(this.root, pattern) };
    });
    this.rename();
  }

  /** Finds the names anew that patterns mean, after a data-key has changed. */
  rename() {
    for (const each of [...this.controls, ...this.says, ...this.ifs, ...this.pictured, ...this.whens]) {
      each.name = nameOf(each.pattern, each.element);
    }
  }

  /** Shows the job's own text in its controls. */
  fill(form) {
    for (const { element, name } of this.controls) putText(element, form[name]);
  }

  /** Shows the answers. */
  show(form, answers) {
    for (const { element, name } of this.says) say(element, answers[`say.${name}`] ?? '');
    for (const { element, name } of this.ifs) hide(element, !answers[`say.${name}`]);
    for (const { element, name } of this.pictured) this.picture(element, answers[`picture.${name}`] ?? '');
    for (const { element, pattern } of this.units) say(element, answers[`unit.${pattern}`] ?? '');
    for (const { element, name, values, first } of this.whens) hide(element, !values.includes(form[name] || first));
    for (const each of this.controls) control(each, answers);
  }

  picture(element, svg) {
    if (!this.pictures.has(element)) this.pictures.set(element, new Picture(element));
    this.pictures.get(element).show(svg);
  }
}

// A text with a unit of its own: the one beside its field would belie it.
const OWN_UNIT = /[a-zµ″”"′’']/i;

/** Shows what is wrong with a control, or what stands in for its blank. */
function control({ element, name, field, line, hint }, answers) {
  const error = answers[`error.${name}`] ?? '';
  if ((element.getAttribute('aria-invalid') === 'true') !== (error !== '')) {
    element.setAttribute('aria-invalid', String(error !== ''));
    if (error) unfold(element);
    if (line) {
      line.id ||= `error-${element.id || name}`;
      if (error) element.setAttribute('aria-describedby', line.id);
      else element.removeAttribute('aria-describedby');
    }
  }
  if (line) say(line, error);
  const doubt = answers[`doubt.${name}`];
  if (doubt || (field && boxOf(field)?.dataset.doubt === name)) doubted(field, name, doubt ?? '');
  if (element.tagName !== 'INPUT') return;
  element.parentElement.classList.toggle('own-unit', OWN_UNIT.test(element.value));
  const assumed = answers[`assumed.${name}`];
  const found = answers[`found.${name}`];
  const text = assumed ? `${assumed} assumed` : found ? `${found} found` : hint;
  if (element.placeholder !== text) element.placeholder = text;
}

/** Opens what an element is folded away in. */
export function unfold(element) {
  for (let fold = element.closest('details'); fold; fold = fold.parentElement.closest('details')) fold.open = true;
}

/** Asks in place what a text means: by turns in few words, and as it is then typed. */
function doubted(field, name, text) {
  const lines = text ? text.split('\n') : [];
  const choices = [];
  for (let i = 0; i + 1 < lines.length; i += 2) choices.push([lines[i], { means: lines[i + 1] }]);
  offer(field, 'What is meant?', choices);
  if (text) boxOf(field).dataset.doubt = name;
}

// A blank choice stands at its first word.
function firstChoice(root, pattern) {
  return root.querySelector(`select[name="${pattern}"]`)?.options[0].value ?? '';
}

function say(element, text) {
  if (element.textContent !== text) {
    const [words, ...more] = element.childNodes;
    // A text changed in place costs less than a new one.
    if (words?.nodeType === Node.TEXT_NODE && !more.length) words.data = text;
    else element.textContent = text;
  }
  hide(element, text === '');
}

function hide(element, hidden) {
  if (element.hidden !== hidden) element.hidden = hidden;
}
