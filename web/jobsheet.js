// The job sheet's own doings: print it, copy it as text, and send it: as a
// picture, a clip, or a link, whose contents are shown before it goes.
import { clip, clipType } from './clip.js';
import { fileName } from './hand.js';
import { addressOf, copied, handOn, handOver } from './link.js';
import { markOf } from './mark.js';
import { sheetPicture } from './sheetpicture.js';

/** Longer addresses are cut by some messengers, and make a QR code too fine to read. */
const LONGEST = 700;

export class JobSheet {
  /** section is the step of the sheet; call asks the core; saveOne saves the job's file; shop keeps the mark's picture. */
  constructor(section, { call, saveOne, shop }) {
    this.section = section;
    this.call = call;
    this.shop = shop;
    this.form = {};
    this.owner = section.querySelector('#with-owner');
    this.said = section.querySelector('#share-said');
    this.owner.addEventListener('input', () => {
      this.picture = null;
      this.hand();
    });
    const press = (id, act) => section.querySelector(`#${id}`).addEventListener('click', act);
    press('print-sheet', () => print());
    press('copy-text', () => this.copyText());
    press('send-link', () => this.send());
    press('send-picture', () => this.sendPicture());
    press('send-clip', () => this.sendClip());
    press('file-instead', saveOne);
    press('no-mark-picture', () => this.keepMark('', 'The picture is taken out.'));
    section.querySelector('#mark-file').addEventListener('change', ({ target }) => this.takeMark(target));
  }

  /** Takes a file's picture for the mark, or says why not. */
  async takeMark(input) {
    const [file] = input.files;
    if (!file) return;
    const line = this.section.querySelector('#mark-refused');
    try {
      this.keepMark(await markOf(file), 'It stands on every sheet from this phone.');
      line.hidden = true;
    } catch (error) {
      line.textContent = `“${file.name}” was not taken: ${error.message}.`;
      line.hidden = false;
    }
    input.value = '';
  }

  keepMark(picture, words) {
    const kept = this.shop.setPicture(picture);
    this.section.querySelector('#mark-said').textContent = kept ? words : 'This browser keeps it only until the page is closed.';
    this.mark();
  }

  /** Shows the mark's picture in the place of its letters; a sheet that came by a link has its own letters. */
  mark() {
    const { picture } = this.shop;
    const image = this.section.querySelector('#mark-picture');
    const shown = picture !== '' && !this.guest;
    if (shown && image.src !== picture) image.src = picture;
    image.hidden = !shown;
    image.closest('.letterhead').hidden = !shown && !this.signedBy;
    image.closest('.letterhead').classList.toggle('with-picture', shown);
    this.section.querySelector('#no-mark-picture').hidden = picture === '';
    this.picture = null;
  }

  /** Shows a job's link; guest: the job came by one, with what it carries. answers are the sheet's. */
  show(form, guest, answers) {
    this.form = form;
    this.guest = guest;
    this.signedBy = Boolean(answers?.['say.sheet.shop']);
    this.words = answers?.['say.sheet.line'] ?? 'Job sheet';
    this.mark();
    this.clip = null;
    clearTimeout(this.soon);
    // Made beforehand: a phone's share sheet opens only at once after a tap.
    if (!guest) this.soon = setTimeout(() => this.pictured().catch(() => {}), 400);
    this.section.querySelector('#sent-said').textContent = '';
    this.clipButton('Make a clip', !clipType() || !answers?.['say.sheet.found']);
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
    const { svg } = fits ? this.call('qr', {}, { text: this.url }) : { svg: '' };
    for (const [id, words] of [['screen-qr', 'Another phone opens the sheet by its camera.'], ['paper-qr', 'This sheet with all its figures.']]) {
      picture(this.section.querySelector(`#${id}`), svg, words);
    }
  }

  async send() {
    this.said.textContent = await handOn(this.url, this.words);
  }

  /** The sheet as a picture, made once for what it says. */
  pictured() {
    this.picture ??= sheetPicture(this.section.querySelector('#paper'), { owner: this.owner.checked || this.guest });
    return this.picture;
  }

  sendPicture() {
    return this.sent(async () => handOver(this.file(await this.pictured(), 'png'), this.words));
  }

  /** The first press records the clip; the next, when it is there, sends it. */
  sendClip() {
    return this.sent(async () => {
      if (this.clip) return handOver(this.file(this.clip, this.clip.type.slice(6)), this.words);
      const { form } = this;
      this.tell('The clip is recorded: 8 seconds.');
      this.clipButton('Recording …', false, true);
      const { bench, ...last } = form;
      const made = await clip(this.call('answer', last, { part: 'true.more' }), this.words).finally(() => this.clipButton('Make a clip', false));
      if (form !== this.form) return '';
      this.clip = made;
      this.clipButton('Send the clip', false);
      return 'The clip is there: send it.';
    });
  }

  clipButton(words, hidden, busy = false) {
    Object.assign(this.section.querySelector('#send-clip'), { textContent: words, hidden, disabled: busy });
  }

  file(bytes, kind) {
    return new File([bytes], fileName(this.words).replace(/json$/, kind), { type: bytes.type });
  }

  tell(words) { this.section.querySelector('#sent-said').textContent = words; }

  async sent(send) {
    try {
      this.tell(await send());
    } catch (error) {
      this.tell(`It could not be made: ${error.message}. Print the sheet, or copy it as text.`);
    }
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
  'how it hangs: sides, distances, dials, what is allowed': 'left seen units mount centres clamp dials dial pin alone index tolerance throw rim drive timing tilt feeler',
  'what was looked over as found': 'found',
  'the big end and the joints as measured': 'bigend joint duty',
  'the wheels and what is cut from them': 'wheel made cut swing lighten',
  'weights and balance': 'weight new after knife keep target balance frame cylinder rod hole plug drill zone plan',
  'the pressing up': 'press',
  'bearings, end float and run-out in the cases': 'main heat float cases',
  'ticks in the order of the work': 'order',
  'that it is a made-up crank': 'try',
  'the shop’s name, telephone and mark': 'shop',
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
