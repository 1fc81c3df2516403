// The bench of this phone: what stands the same from crank to crank, kept once
// outside the jobs. A new job takes it over; an edit of the job on the bench
// changes it too, where the two agreed before.
import { FOLDER } from './folder.js';
import { isMark } from './mark.js';

/** The fields of a job that the bench holds. */
const JOB_FIELDS = [
  'left', 'seen', 'units', 'mount', 'dials', 'tolerance', 'feeler',
  'drive.division', 'drive.sweep', 'timing.division', 'timing.sweep',
];

/** What the bench holds that is no field of a job, with the characters that it takes. */
const OWN_FIELDS = { 'shop.name': 60, 'shop.telephone': 30, 'shop.mark': 3, 'shop.shape': 10 };

/** The shop's mark as a picture: no text that the core could read, and too long for a link. */
const PICTURE = 'shop.picture';

const KEY = `pintwelve ${FOLDER} bench`;

export class Shop {
  /**
   * convert(form, to) gives a form's figures in other units; unfit(form) names what no control could have made; changed hears
   * of what another tab did.
   */
  constructor({ convert, unfit, changed = () => {} }) {
    Object.assign(this, { convert, unfit });
    this.form = this.checked(parsed(stored()));
    addEventListener('storage', ({ key, newValue }) => {
      if (key !== KEY) return;
      this.form = this.checked(parsed(newValue));
      changed();
    });
  }

  /** What of a file or of the phone's memory can stand on a bench. */
  checked(form) {
    const texts = Object.entries(form ?? {}).filter(([name, text]) => typeof text === 'string' && text !== ''
      && (JOB_FIELDS.includes(name) || text.length <= OWN_FIELDS[name]));
    const kept = Object.fromEntries(texts);
    for (const name of texts.length > 0 ? this.unfit(kept) : []) delete kept[name];
    return isMark(form?.[PICTURE]) ? { ...kept, [PICTURE]: form[PICTURE] } : kept;
  }

  /** The shop's mark as a picture's address, or ''. */
  get picture() { return this.form[PICTURE] ?? ''; }

  /** Keeps the mark's picture, '' to leave it; false where the browser keeps it no longer than the page is open. */
  setPicture(picture) { return this.put({ [PICTURE]: picture }); }

  /** The form that a new job begins with. */
  begin() { return ofAJob(this.form); }

  /** A form with the shop's own name on it, as its sheet carries it. */
  signed(form) {
    const own = Object.keys(OWN_FIELDS).filter((name) => this.form[name]).map((name) => [name, this.form[name]]);
    return { ...form, ...Object.fromEntries(own) };
  }

  /** Keeps texts on the bench; a blank one leaves it. False where the browser refuses to. */
  put(changes) {
    const form = { ...this.form, ...changes };
    for (const name of Object.keys(form)) if (form[name] === '' || form[name] === undefined) delete form[name];
    this.form = form;
    return store(JSON.stringify(form));
  }

  /**
   * Follows a change of the job on the bench, field by field where the bench
   * stood as the job did; of some fields where they are named. Gives the fields
   * in which it followed.
   */
  follow(before, after, names = JOB_FIELDS) {
    if (!same(this.form, before, 'units')) return []; // bare figures would mean something else
    const agreed = names.filter((name) => !same(before, after, name) && same(this.form, before, name));
    if (!agreed.length) return agreed;
    const base = agreed.includes('units') ? this.convert(this.form, unitsOf(after)) : {};
    this.put({ ...base, ...Object.fromEntries(agreed.map((name) => [name, after[name]])) });
    return agreed;
  }

  /** The fields in which a job stands otherwise than the bench. */
  differing(form) { return JOB_FIELDS.filter((name) => !same(this.form, form, name)); }

  /** The edit that sets a job as the bench stands. */
  onto(form) {
    const bench = Object.fromEntries(JOB_FIELDS.map((name) => [name, this.form[name] ?? '']));
    return same(this.form, form, 'units') ? bench : { ...this.convert(form, unitsOf(this.form)), ...bench };
  }

  /** Makes a job's set-up the bench. */
  take(form) { this.put(Object.fromEntries(JOB_FIELDS.map((name) => [name, form[name]]))); }
}

/** Tells the names that the bench alone holds. */
export function isOwn(name) { return name in OWN_FIELDS; }

/** A form without the name of a shop. */
export function unsigned(form) {
  return Object.fromEntries(Object.entries(form).filter(([name]) => !isOwn(name)));
}

function ofAJob(form) {
  return Object.fromEntries(JOB_FIELDS.filter((name) => form[name]).map((name) => [name, form[name]]));
}

// A blank choice stands at its first word.
const FIRST = { left: 'drive', seen: 'drive', units: 'inch', mount: 'centres', dials: 'two' };

function same(a, b, name) {
  return (a[name] || FIRST[name] || '') === (b[name] || FIRST[name] || '');
}

function unitsOf(form) { return form.units || FIRST.units; }

// A browser that keeps nothing has a bench until the page is closed.
function stored() {
  try { return localStorage.getItem(KEY); } catch { return null; }
}

function store(text) {
  try {
    localStorage.setItem(KEY, text);
    return true;
  } catch {
    return false; // full, or refused: the store of the jobs says so
  }
}

function parsed(text) {
  try { return JSON.parse(text); } catch { return null; }
}
