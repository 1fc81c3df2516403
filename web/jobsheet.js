// The job sheet's own doings: print it, copy it as text, and hand the job on by
// a link, whose contents are shown before it goes.
import { addressOf, copied, handOn } from './link.js';

/** Longer addresses are cut by some messengers, and make a QR code too fine to read. */
const LONGEST = 700;

export class JobSheet {
  /** section is the step of the sheet; call asks the core; saveOne saves the job's file. */
  constructor(section, { call, saveOne }) {
    this.section = section;
    this.call = call;
    this.form = {};
    this.owner = section.querySelector('#with-owner');
    this.said = section.querySelector('#share-said');
    this.owner.addEventListener('input', () => this.hand());
    const press = (id, act) => section.querySelector(`#${id}`).addEventListener('click', act);
    press('print-sheet', () => print());
    press('copy-text', () => this.copyText());
    press('send-link', () => this.send());
    press('file-instead', saveOne);
  }

  /** Shows a job's link; guest: the job came by one, with what it carries. */
  show(form, guest) {
    this.form = form;
    this.guest = guest;
    this.section.querySelector('#text-out').hidden = true;
    this.section.querySelector('#text-said').hidden = true;
    this.hand();
  }

  /** What the link carries: all but what is nobody else's business. */
  carried() {
    const { archived, ...form } = this.form;
    if (!this.owner.checked && !this.guest) delete form.owner;
    return form;
  }

  hand() {
    this.said.textContent = ''; // it told of another link
    const form = this.carried();
    const { link, problem } = this.call('encode', form);
    this.url = problem ? '' : addressOf(link);
    this.problem = problem;
    const fits = Boolean(this.url) && this.url.length <= LONGEST;
    this.section.querySelector('#carries').replaceChildren(...contents(form).map((line) => {
      const item = document.createElement('li');
      item.textContent = line;
      return item;
    }));
    this.section.querySelector('#send-link').disabled = !this.url;
    this.section.querySelector('#link-length').textContent = problem || (fits
      ? `The link is ${this.url.length} characters long.`
      : `The link is ${this.url.length} characters long. Over ${LONGEST} some messengers cut it, and it is too fine for a QR code: send the file instead.`);
    const { svg } = fits ? this.call('qr', { text: this.url }) : { svg: '' };
    for (const [id, words] of [['screen-qr', 'Another phone opens the sheet by its camera.'], ['paper-qr', 'This sheet with all its figures.']]) {
      picture(this.section.querySelector(`#${id}`), svg, words);
    }
  }

  async send() {
    this.said.textContent = await handOn(this.url);
  }

  async copyText() {
    const text = this.text();
    const said = this.section.querySelector('#text-said');
    said.hidden = false;
    if (await copied(text)) {
      said.textContent = 'Copied: paste it into a message.';
      return;
    }
    said.textContent = 'Copy this text:';
    const out = this.section.querySelector('#text-out');
    out.hidden = false;
    out.value = text;
    out.select();
  }

  /** The sheet's words as they stand, without its pictures. */
  text() {
    const paper = this.section.querySelector('#paper');
    paper.classList.add('as-text');
    const text = paper.innerText;
    paper.classList.remove('as-text');
    return `${text.replace(/[ \t]+\n/g, '\n').replace(/\n{3,}/g, '\n\n').trim()}\n`;
  }
}

/** Whole pixels to a module, as many as the place allows, so that it reads sharply. */
function picture(figure, svg, words) {
  figure.hidden = !svg;
  figure.innerHTML = svg;
  if (!svg) return;
  const code = figure.firstElementChild;
  const modules = Number(code.dataset.modules);
  code.setAttribute('width', modules * Math.max(2, Math.min(5, Math.floor(300 / modules))));
  const caption = document.createElement('figcaption');
  caption.textContent = words;
  figure.append(caption);
}

/** What a job's fields tell of, by the first part of their names. */
const TELLS = {
  'how it hangs: sides, distances, dials, what is allowed': 'left seen units mount dials dial tolerance throw rim drive timing tilt feeler',
  'what was looked over as found': 'found',
  'the big end and the joints as measured': 'bigend joint duty',
  'the wheels and what is cut from them': 'wheel made cut swing lighten',
  'weights and balance': 'weight new after knife keep target balance frame cylinder rod hole plug drill zone plan',
  'the pressing up': 'press',
  'bearings, end float and run-out in the cases': 'main heat float cases',
  'ticks in the order of the work': 'order',
  'that it is a made-up crank': 'try',
};

function contents(form) {
  const lines = [];
  const words = { number: 'number', engine: 'engine', owner: 'owner', 'date.in': 'came in', 'date.out': 'went out', notes: 'notes' };
  for (const [name, what] of Object.entries(words)) {
    if (form[name]) lines.push(`${what}: ${form[name]}`);
  }
  const names = Object.keys(form);
  const passes = new Set(names.filter((name) => name.startsWith('pass.')).map((name) => name.split('.')[1])).size;
  if (passes) lines.push(passes === 1 ? 'one pass: its readings and what was done' : `${passes} passes: their readings, notes and what was done`);
  const firsts = new Set(names.map((name) => name.split('.')[0]));
  for (const [what, parts] of Object.entries(TELLS)) {
    if (parts.split(' ').some((part) => firsts.has(part))) lines.push(what);
  }
  return lines.length > 0 ? lines : ['nothing yet'];
}
