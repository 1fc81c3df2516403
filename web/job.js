// The job on the bench: its form, its edits with undo, and the keeping of it.

// Edits that can be taken back: more than anyone will, and a bound on what a page holds.
const MOST_DONE = 1000;

// After so long without a word from the store the person is told.
const ANSWER_MS = 5000;

/** A key for a new job or a new row: never used again. */
export function newKey() {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return [...bytes].map((b) => (b % 36).toString(36)).join('');
}

export class Job {
  /**
   * store may be null: then nothing is kept. told is called with an error when
   * keeping fails, and with null when it goes well again; changed when another
   * tab's edits have come in, with what of them gave way to an edit here; parted
   * when the job has got an id of its own, since another is kept under the one it had.
   * answered promises when the answer to an edit shows, which goes before its keeping.
   */
  constructor({ store, record, told = () => {}, changed = () => {}, parted = () => {}, answered = async () => {} }) {
    this.store = store;
    this.id = record?.id ?? newKey();
    this.born = record?.id ? record.born : newKey();
    this.rev = record?.rev ?? 0;
    this.form = { ...(record?.form ?? {}) }; // another object after each change
    this.base = this.form; // as last kept, by any tab
    this.inFile = null; // as the person last said that a file holds it
    this.done = [];
    this.undone = [];
    Object.assign(this, { told, changed, parted, answered });
    this.keeping = null;
    this.writing = null; // the form that a write under way is to keep
    this.late = null; // what is told while a write has no answer
  }

  /** Whether what stands here is kept, or in a file for sure. */
  get safe() {
    return sameForm(this.form, this.base) || (this.inFile !== null && sameForm(this.form, this.inFile));
  }

  /**
   * Makes an edit: names and their new text. Edits of one run, a word of the
   * caller's, are one change to a person and undo as one; without a run each
   * edit is a change of its own. Gives the change.
   */
  edit(changes, run = '') {
    let change = this.done.at(-1);
    if (!run || change?.run !== run) {
      change = { run, texts: {} };
      this.done = [...this.done.slice(1 - MOST_DONE), change];
    }
    for (const [name, text] of Object.entries(changes)) {
      change.texts[name] = [change.texts[name]?.[0] ?? this.form[name] ?? '', text];
    }
    this.undone = [];
    this.#put(changes);
    return change;
  }

  /** Takes the last change back; gives it, or undefined where there is none. */
  undo() { return this.#shift(this.done, this.undone, 0); }

  redo() { return this.#shift(this.undone, this.done, 1); }

  // What another tab has typed over since is not this tab's to take back.
  #shift(from, to, side) {
    for (let change = from.pop(); change; change = from.pop()) {
      const ours = Object.entries(change.texts).filter(([name, pair]) => (this.form[name] ?? '') === pair[1 - side]);
      if (ours.length === 0) continue;
      change.texts = Object.fromEntries(ours);
      to.push(change);
      this.#put(Object.fromEntries(ours.map(([name, pair]) => [name, pair[side]])));
      return change;
    }
    return undefined;
  }

  #put(changes) {
    const form = { ...this.form, ...changes };
    for (const name of Object.keys(changes)) if (form[name] === '') delete form[name];
    this.form = form;
    this.keep();
  }

  /** Keeps the job; edits made while a write runs are kept by the next one. */
  keep() {
    if (!this.store) return Promise.resolve();
    if (this.late) this.told(this.late); // what is typed now isn't kept either
    this.keeping ??= this.#write();
    return this.keeping;
  }

  async #write() {
    const slow = setTimeout(() => {
      this.late = new Error('its store does not answer');
      this.told(this.late);
    }, ANSWER_MS);
    try {
      await this.answered();
      while (!sameForm(this.form, this.base)) {
        const { form } = this;
        this.writing = form;
        const { rev, newer, other, gone } = await this.store.put(this, form);
        this.writing = null;
        if (newer) this.adopt(newer);
        else if (other) this.#part();
        else if (gone) this.#bear();
        else {
          this.rev = rev;
          this.base = form;
        }
      }
      this.told(null);
    } catch (error) {
      this.told(error);
    } finally {
      clearTimeout(slow);
      this.keeping = null; // at once: what is typed from here on is for the next write
      this.writing = null;
      this.late = null;
    }
  }

  #part() {
    this.id = newKey();
    this.#bear();
    this.parted();
  }

  /** What is kept from here on is another job, whoever else keeps one under its id. */
  #bear() {
    this.born = newKey();
    this.rev = 0;
    this.base = {};
  }

  /** Takes up what was typed and not kept when a page went. */
  takeUp(form) {
    this.form = form;
    return this.keep();
  }

  /** Keeps the job anew, in a store that has lost it or has only now come. */
  keepAnew(store) {
    this.store = store;
    this.#bear(); // another tab may do the same, and count on from where it was
    return this.keep();
  }

  /** Takes in what another tab kept; a field edited here since then stays. */
  adopt(record) {
    if (record.id !== this.id || record.born !== this.born || record.rev <= this.rev) return;
    // Its own write, read before that was said to be done: what was taken back since must not come again.
    if (this.writing && record.rev === this.rev + 1 && sameForm(record.form, this.writing)) return;
    const mine = this.form;
    const merged = { ...record.form };
    const gaveWay = {};
    for (const name of new Set([...Object.keys(mine), ...Object.keys(this.base)])) {
      if (mine[name] === this.base[name]) continue;
      if (record.form[name] !== this.base[name] && record.form[name] !== mine[name]) gaveWay[name] = record.form[name] ?? '';
      if (mine[name] === undefined) delete merged[name];
      else merged[name] = mine[name];
    }
    this.form = merged;
    this.base = { ...record.form };
    this.rev = record.rev;
    this.changed(gaveWay);
  }
}

/** Tells whether two forms hold the same texts. */
export function sameForm(a, b) {
  if (a === b) return true;
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => a[name] === b[name]);
}
