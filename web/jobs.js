// The list of jobs: search, sort, open, copy, archive, delete, and the file
// that holds them; and those last worked on, above the order of the work. It knows
// the store and the page's sections, not the bench.
import { Bin } from './bin.js';
import { copyOf } from './descent.js';
import { example } from './example.js';
import { gatheredAll, gatheredOne, merged, noted } from './exchange.js';
import { read, written } from './file.js';
import { fileName, save } from './hand.js';
import { newKey } from './job.js';

const AT_ONCE = 20; // rows made before "more" is asked for
const LATELY = 2; // jobs above the order of the work

/** How the list may be sorted; a blank stands last. */
const SORTS = {
  number: byText('number'),
  engine: byText('engine'),
  owner: byText('owner'),
  date: (a, b) => byText('date.in')(b, a),
};

function byText(name) {
  let order = null; // made as it is asked for: that takes a browser longer than all else here
  return (a, b) => {
    order ??= new Intl.Collator('en-GB', { numeric: true, sensitivity: 'base' });
    const [one, two] = [a.form[name] ?? '', b.form[name] ?? ''];
    return (one === '') - (two === '') || order.compare(one, two);
  };
}

function lastFirst(a, b) { return (b.turn ?? 0) - (a.turn ?? 0); }

function stateOf({ born, rev }) { return `${born} ${rev}`; }

/** How far a crank is and when it was worked on, in a line that holds its place before that is known. */
function stands(words, day) { return [words || '…', dayWords(day)].filter(Boolean).join(' · '); }

/** A day as people say it; '' where it isn't known. */
function dayWords(day) {
  if (!day) return '';
  const midnight = (time) => new Date(time).setHours(0, 0, 0, 0);
  const ago = Math.round((midnight(Date.now()) - midnight(day)) / 864e5);
  if (ago === 0) return 'today';
  if (ago === 1) return 'yesterday';
  return new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: ago > 300 || ago < 0 ? 'numeric' : undefined }).format(day);
}

/** What a job is called in a line. */
export function title(form) {
  return form.number || form.engine || 'Without a number';
}

export class Jobs {
  /**
   * section is the step of the jobs. bench gives {job, store, shop} as they are now;
   * open(record) puts a job on the bench; changed() and left(id) hear that jobs
   * were kept otherwise, and that one is no more; unfit(form) names what no
   * control could have made; differs tells of fields, as [name, text, …], in words;
   * stands(form) says how far a crank is.
   */
  constructor(section, notice, { bench, open, changed, left, unfit, differs, stands }) {
    Object.assign(this, { section, notice, bench, open, changed, left, unfit, differs, stands });
    this.find = section.querySelector('#jobs-find');
    this.sort = section.querySelector('#jobs-sort');
    this.archived = section.querySelector('#jobs-archived');
    this.rows = section.querySelector('#jobs-rows');
    this.lately = document.getElementById('lately');
    this.known = new Map(); // how far a crank is, by its id, and the revision that this was said of
    this.rest = section.querySelector('#jobs-more');
    this.template = section.querySelector('#jobs-row');
    this.shown = AT_ONCE;
    this.records = [];
    for (const control of [this.find, this.sort, this.archived]) {
      control.addEventListener('input', () => { this.shown = AT_ONCE; this.list(); });
    }
    this.rest.addEventListener('click', () => { this.shown += 4 * AT_ONCE; this.list(); });
    // The keyboard leaves half a screen: the found are to stand in it.
    this.find.addEventListener('focus', () => section.querySelector('#jobs-found').scrollIntoView());
    for (const rows of [this.rows, this.lately]) rows.addEventListener('click', ({ target }) => this.pressed(target.closest('button')));
    this.press('jobs-example', () => this.openExample());
    this.press('save-all', () => this.saveAll());
    this.press('save-one', () => this.saveOne());
    section.querySelector('#read-file').addEventListener('change', ({ target }) => this.readFile(target));
    this.bin = new Bin(section.querySelector('#jobs-bin'), {
      store: () => this.bench().store,
      told: (back) => this.backFromBin(back),
      failed: (error) => this.failed(error),
    });
    this.listing = null;
    this.stale = false;
  }

  press(id, act) {
    this.section.querySelector(`#${id}`).addEventListener('click', () => this.run(act));
  }

  /** Does what may fail, and says so. */
  run(act) { act().catch((error) => this.failed(error)); }

  failed(error) {
    this.notice.say(`This could not be done: ${error.message}`);
  }

  /** Lists the jobs at once as they were last read, then as they are. */
  async show() {
    this.list();
    this.promise();
    await this.readAgain();
    await this.bin.show(title);
  }

  /** Reads the list; asked for while it is being read, it is read once more and no more. */
  async readAgain() {
    this.stale = true;
    this.listing ??= this.#readWhileStale().finally(() => { this.listing = null; });
    await this.listing;
  }

  async #readWhileStale() {
    while (this.stale) {
      this.stale = false;
      await this.#readOnce();
    }
  }

  async #readOnce() {
    const { store, job } = this.bench();
    await job.keeping; // what was typed just now is to be in the list
    const records = store ? await store.lines() : [];
    const same = records.length === this.records.length && records.every(({ id, turn, filed }, i) => {
      const was = this.records[i];
      return was.id === id && was.turn === turn && was.filed === filed;
    });
    this.records = records;
    if (!same && !this.section.hidden) this.list();
    if (!same) this.late();
    this.remind();
  }

  /** Shows the jobs last worked on but for the one on the bench: yesterday's is two taps away. */
  late() {
    const { id } = this.bench().job;
    const others = this.records.filter((record) => record.id !== id && !record.form.archived);
    this.showRows(this.lately, others.sort(lastFirst).slice(0, LATELY));
    this.lately.closest('section').hidden = others.length === 0;
  }

  list() {
    const words = this.find.value.toLowerCase().split(/\s+/).filter(Boolean);
    const text = ({ form }) => ['number', 'engine', 'owner', 'date.in', 'date.out', 'notes'].map((name) => form[name] ?? '').join('\n').toLowerCase();
    const fits = (record) => {
      if (record.form.archived && !this.archived.checked) return false;
      if (words.length === 0) return true;
      const all = text(record);
      return words.every((word) => all.includes(word));
    };
    const found = this.records.filter(fits).sort(SORTS[this.sort.value] ?? lastFirst);
    this.showRows(this.rows, found.slice(0, this.shown));
    this.rest.hidden = found.length <= this.shown;
    this.rest.textContent = `Show more of ${found.length}`;
    const count = this.section.querySelector('#jobs-count');
    if (found.length === 0) count.textContent = this.records.length === 0 ? 'Nothing is kept yet: it begins with the first figure you type.' : 'None fits.';
    else count.textContent = found.length === 1 ? '1 job' : `${found.length} jobs`;
  }

  /** Shows records; a row that says the same stays, since a finger may be on it. */
  showRows(list, records) {
    const held = [...list.children].findIndex((row) => row.contains(document.activeElement));
    const id = list.children[held]?.dataset.id;
    const was = new Map([...list.children].map((row) => [row.dataset.id, row]));
    const rows = records.map((record) => {
      const row = this.row(record);
      const before = was.get(record.id);
      return before?.querySelector('.job-open').textContent === row.querySelector('.job-open').textContent ? before : row;
    });
    for (const row of was.values()) if (!rows.includes(row)) row.remove();
    rows.forEach((row, i) => { if (list.children[i] !== row) list.insertBefore(row, list.children[i] ?? null); });
    if (held >= 0 && !list.contains(document.activeElement)) this.goOn(list, id, held);
    this.sayHowFar(list, records).catch((error) => this.failed(error));
  }

  /** Gives the focus back to the row of a job, or to the one that took its place. */
  goOn(list, id, place) {
    const row = [...list.children].find(({ dataset }) => dataset.id === id) ?? list.children[place] ?? list.lastElementChild;
    (row?.querySelector('.job-open') ?? this.section.querySelector('#jobs-afresh')).focus({ preventScroll: true });
  }

  /** Says in each row how far its crank is, one after the other: to reckon a job takes a while. */
  async sayHowFar(list, records) {
    for (const record of records.filter((each) => !this.howFar(each))) {
      const kept = await this.bench().store.get(record.id);
      if (!kept) continue;
      this.known.set(record.id, { state: stateOf(kept), words: this.stands(kept.form) });
      const row = [...list.children].find(({ dataset }) => dataset.id === record.id);
      if (row) row.querySelector('.job-stands').textContent = stands(this.howFar(record), record.day);
      await new Promise((then) => { setTimeout(then); });
    }
  }

  /** How far a crank is, where that was said of it as it is kept. */
  howFar(record) {
    const known = this.known.get(record.id);
    return known?.state === stateOf(record) ? known.words : '';
  }

  row(record) {
    const { form } = record;
    const row = this.template.content.firstElementChild.cloneNode(true);
    const name = title(form);
    row.dataset.id = record.id;
    row.querySelector('.job-name').textContent = name;
    row.querySelector('.job-about').textContent = [
      form.number ? form.engine : '', form.owner, form['date.in'] && `in ${form['date.in']}`, form['date.out'] && `out ${form['date.out']}`,
      form.archived && 'archived', record.id === this.bench().job.id && 'on the bench',
    ].filter(Boolean).join(' · ');
    row.querySelector('.job-stands').textContent = stands(this.howFar(record), record.day);
    row.querySelector('[data-job="archive"]').textContent = form.archived ? 'Out of the archive' : 'Archive';
    for (const button of row.querySelectorAll('[data-job]:not(.job-open)')) button.setAttribute('aria-label', `${button.dataset.label ?? button.textContent}: ${name}`);
    return row;
  }

  pressed(button) {
    if (button) this.does(button).catch((error) => this.failed(error));
  }

  async does(button) {
    const { job } = button.dataset;
    if (job === 'menu') {
      this.menu(button);
      return;
    }
    const record = await this.bench().store.get(button.closest('li').dataset.id);
    if (record) await this[job](record);
    else await this.show();
  }

  menu(button) {
    const more = button.closest('li').querySelector('.job-does');
    more.hidden = !more.hidden;
    button.setAttribute('aria-expanded', String(!more.hidden));
  }

  async choose(record) {
    this.open(record);
    location.hash = '#true';
  }

  async copy(record) {
    const copy = copyOf(record, 'copy');
    delete copy.form.archived;
    await this.settle([copy]);
    this.notice.say(`“${title(record.form)}” is copied.`);
  }

  async archive(record) {
    const form = { ...record.form, archived: 'yes' };
    if (record.form.archived) delete form.archived;
    const { rev } = await this.bench().store.put(record, form);
    if (!rev) this.notice.say('It was worked on in another tab just now: look at it, and try again.');
    else this.changed();
    await this.show();
  }

  async delete(record) {
    const { job } = this.bench();
    if (record.id === job.id) await job.keep();
    if (record.id === job.id && !job.safe) this.notice.say('It holds what could not be kept: save a file first.');
    else await this.#toBin(record);
    await this.show();
  }

  async #toBin(record) {
    const key = await this.bench().store.remove(record, Date.now());
    if (!key) this.notice.say('It was worked on in another tab just now, so that it stays.');
    else {
      this.left(record.id);
      this.notice.did(`“${title(record.form)}” is deleted: it lies in the bin below the list for 30 days.`, 'Put it back', () => this.putBack(key));
    }
  }

  putBack(key) {
    this.bench().store.putBack(key).then((back) => this.backFromBin(back)).catch((error) => this.failed(error)).finally(() => this.show());
  }

  backFromBin({ job, copied }) {
    this.notice.say(copied ? `“${title(job.form)}” is back as a copy, since it is kept otherwise by now.` : `“${title(job.form)}” is back.`);
    this.changed();
    return this.readAgain();
  }

  /** Keeps records as they stand, where none is kept under their ids, and lists them. */
  async settle(records) {
    await this.bench().store.settle(records.map(({ id }) => id), (kept, keep) => {
      records.forEach((record, i) => { if (!kept[i]) keep(record); });
    });
    await this.show();
  }

  /** Opens the example as a new job, which is kept from its first edit on. */
  async openExample() {
    await this.choose({ id: newKey(), born: newKey(), rev: 0, form: example() });
  }

  // Files

  /** Counts the jobs whose latest figures no file holds. */
  remind() {
    const loose = this.records.filter(({ rev, filed }) => rev !== filed).length;
    const words = loose === 1 ? 'One job has figures that no file holds yet.' : `${loose} jobs have figures that no file holds yet.`;
    for (const line of document.querySelectorAll('.loose')) {
      line.hidden = loose === 0;
      line.textContent = `${words} If the phone is lost, so are they: save a file.`;
    }
  }

  /** Says whether the browser has promised to keep the jobs. */
  async promise() {
    const line = this.section.querySelector('#jobs-promise');
    const { store } = this.bench();
    const kept = store && await navigator.storage?.persisted?.().catch(() => false);
    if (!store) line.textContent = 'This browser keeps nothing for the page: what you type lasts until you close it, unless you save a file.';
    else if (kept) line.textContent = 'The browser has promised to keep the jobs until you clear them.';
    else line.textContent = 'The browser keeps the jobs, but may clear them when the phone runs full: save a file now and then.';
  }

  /** Saves every job in one file; without a store, the one on the bench. */
  async saveAll() {
    await this.hand(await gatheredAll(this.bench()), 'all jobs', this.bench().shop.form);
  }

  async saveOne() {
    await this.hand([await gatheredOne(this.bench())], title(this.bench().job.form));
  }

  /** Hands jobs out, and notes that a file holds them once that is sure. */
  async hand(records, name, bench) {
    const texts = written(records, bench);
    const sure = [];
    for (const [i, text] of texts.entries()) {
      sure.push(await save(fileName(name, texts.length > 1 ? `-${i + 1}-of-${texts.length}` : ''), text));
    }
    if (sure.includes(false)) this.notice.say('It was not saved: nothing has left the page.', 'file');
    else if (sure.every(Boolean)) await this.noted(records);
    else {
      this.notice.offer(texts.length > 1 ? `Are the ${texts.length} files where the browser saves files?` : 'Is the file where the browser saves files?',
        [{ label: 'Yes, it is saved', act: () => this.noted(records).catch((error) => this.failed(error)) }], 'file');
    }
  }

  async noted(records) {
    this.notice.clear('file');
    // The file is out all the same where the store can't note it.
    const known = await noted(this.bench(), records);
    if (this.bench().job.safe) this.notice.clear('leaving');
    if (known) await this.show();
  }

  async readFile(input) {
    const [file] = input.files;
    if (!file) return;
    try {
      const { records, dropped, lost, bench } = await read(file, this.unfit);
      const said = this.took(await merged(this.bench(), records), dropped, lost);
      this.changed();
      this.tookBench(bench, said);
    } catch (error) {
      this.notice.offer(`“${file.name}” was not read: ${error.message}. Nothing was changed.`, []);
    }
    input.value = '';
    await this.show();
  }

  /** Says what a file brought; its bench is taken over by a phone that has none, and else offered. */
  tookBench(bench, { text, weighty }) {
    const { shop } = this.bench();
    const theirs = shop.checked(bench);
    const other = Object.keys(theirs).some((name) => theirs[name] !== shop.form[name]);
    const ways = [];
    let said = text;
    if (other && Object.keys(shop.form).length === 0) {
      shop.put(theirs);
      said += ' This phone’s bench is now as in the file.';
    } else if (other) {
      said += ' Its bench stands otherwise than this phone’s, which stays.';
      ways.push({ label: 'Take over the file’s bench', act: () => shop.put(theirs) });
    }
    if (weighty || ways.length > 0) this.notice.offer(said, ways);
    else this.notice.say(said);
  }

  took({ counts, parted }, dropped, lost) {
    const words = {
      added: 'new', renewed: 'brought up to date', same: 'already here', older: 'older than here and left alone',
      parted: 'worked on in both places: both are kept, the file’s as a copy',
    };
    const said = Object.entries(words).filter(([count]) => counts[count]).map(([count, text]) => `${counts[count]} ${text}`);
    const text = [`From the file: ${said.join(', ') || 'no jobs'}.`];
    for (const { names, forms: [here, there] } of parted.slice(0, 3)) {
      text.push(`“${title(here)}”: ${this.differs(names.map((name) => [name, here[name], there[name]]), 3)}.`);
    }
    if (lost.length > 0) text.push(`Not read: ${lost.slice(0, 5).join('; ')}${lost.length > 5 ? `; and ${lost.length - 5} more` : ''}.`);
    if (dropped) text.push(`${dropped} of its fields can’t stand in a job and were left out.`);
    return { text: text.join(' '), weighty: parted.length > 0 || lost.length > 0 || dropped > 0 };
  }
}
