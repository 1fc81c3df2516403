// The list of jobs: search, sort, open, copy, archive, delete, and the file
// that holds them. It knows the store and the page's section, not the bench.
import { copyOf, fileName, read, save, settled, written } from './file.js';
import { EXAMPLE, example } from './example.js';

const AT_ONCE = 20; // rows made before "more" is asked for

/** How the list may be sorted; a blank stands last. */
const SORTS = {
  number: byText('number'),
  engine: byText('engine'),
  owner: byText('owner'),
  date: (a, b) => byText('date.in')(b, a),
};

function byText(name) {
  const order = new Intl.Collator('en-GB', { numeric: true, sensitivity: 'base' });
  return (a, b) => {
    const [one, two] = [a.form[name] ?? '', b.form[name] ?? ''];
    return (one === '') - (two === '') || order.compare(one, two);
  };
}

/** What a job is called in a line. */
export function title(form) {
  return form.number || form.engine || 'Without a number';
}

export class Jobs {
  /**
   * section is the step of the jobs. bench gives {job, store, shop} as they are now;
   * open(record) puts a job on the bench; changed(id) and left(id) hear that the
   * job with that id was kept otherwise, and is no more; unfit(form) names what no control could have made.
   */
  constructor(section, notice, { bench, open, changed, left, unfit }) {
    Object.assign(this, { section, notice, bench, open, changed, left, unfit });
    this.find = section.querySelector('#jobs-find');
    this.sort = section.querySelector('#jobs-sort');
    this.archived = section.querySelector('#jobs-archived');
    this.rows = section.querySelector('#jobs-rows');
    this.rest = section.querySelector('#jobs-more');
    this.template = section.querySelector('#jobs-row');
    this.shown = AT_ONCE;
    this.records = [];
    for (const control of [this.find, this.sort, this.archived]) {
      control.addEventListener('input', () => { this.shown = AT_ONCE; this.list(); });
    }
    this.rest.addEventListener('click', () => { this.shown += 4 * AT_ONCE; this.list(); });
    this.rows.addEventListener('click', ({ target }) => this.pressed(target.closest('button')));
    this.press('jobs-example', () => this.openExample());
    this.press('save-all', () => this.saveAll());
    this.press('save-one', () => this.saveOne());
    section.querySelector('#read-file').addEventListener('change', ({ target }) => this.readFile(target));
  }

  press(id, act) {
    document.getElementById(id).addEventListener('click', () => act().catch((error) => this.failed(error)));
  }

  failed(error) {
    this.notice.say(`This could not be done: ${error.message}`);
  }

  /** Lists the jobs at once as they were last read, then as they are. */
  async show() {
    this.list();
    await this.readAgain();
    this.promise();
  }

  async readAgain() {
    const { store } = this.bench();
    const records = store ? await store.lines() : [];
    const same = records.length === this.records.length && records.every(({ id, turn, filed }, i) => {
      const was = this.records[i];
      return was.id === id && was.turn === turn && was.filed === filed;
    });
    this.records = records;
    if (!same && !this.section.hidden) this.list();
    this.remind();
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
    const lastFirst = (a, b) => (b.turn ?? 0) - (a.turn ?? 0);
    const found = this.records.filter(fits).sort(SORTS[this.sort.value] ?? lastFirst);
    this.rows.replaceChildren(...found.slice(0, this.shown).map((record) => this.row(record)));
    this.rest.hidden = found.length <= this.shown;
    this.rest.textContent = `Show more of ${found.length}`;
    const count = this.section.querySelector('#jobs-count');
    if (found.length === 0) count.textContent = this.records.length === 0 ? 'Nothing is kept yet: it begins with the first figure you type.' : 'None fits.';
    else count.textContent = found.length === 1 ? '1 job' : `${found.length} jobs`;
    this.section.querySelector('#jobs-example').hidden = this.records.some(({ id }) => id === EXAMPLE);
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
    const { newer } = await this.bench().store.put(record.id, record.rev, form);
    if (newer) this.notice.say('It was worked on in another tab just now: look at it, and try again.');
    else this.changed(record.id);
    await this.show();
  }

  async delete(record) {
    const { store } = this.bench();
    if (!await store.remove(record.id, record.rev)) {
      this.notice.say('It was worked on in another tab just now, so that it stays.');
    } else {
      this.left(record.id);
      this.notice.offer(`“${title(record.form)}” is deleted.`, 'Put it back', () => this.settle([record]).catch((error) => this.failed(error)));
    }
    await this.show();
  }

  /** Keeps records as they stand, where none is kept under their ids, and lists them. */
  async settle(records) {
    await this.bench().store.settle(records.map(({ id }) => id), (kept, keep) => {
      records.forEach((record, i) => { if (!kept[i]) keep(record); });
    });
    await this.show();
  }

  async openExample() {
    const record = { id: EXAMPLE, rev: 1, filed: 1, form: example() };
    if (this.bench().store) await this.settle([record]);
    await this.choose(record);
  }

  // Files

  /** Counts the jobs whose latest figures no file holds. */
  remind() {
    const loose = this.records.filter(({ id, rev, filed }) => rev !== filed && id !== EXAMPLE).length;
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
    const { job, store, shop } = this.bench();
    await job.keep();
    await this.hand(store ? await store.all() : [recordOf(job)], 'all jobs', shop.form);
  }

  async saveOne() {
    const { job } = this.bench();
    await job.keep();
    await this.hand([recordOf(job)], title(job.form));
  }

  async hand(records, name, bench) {
    save(fileName(name), written(records, bench));
    const { store } = this.bench();
    // The file is out all the same where the store can't note it.
    if (store && await store.filed(records).then(() => true, () => false)) await this.show();
  }

  async readFile(input) {
    const [file] = input.files;
    if (!file) return;
    try {
      const { records, dropped, bench } = await read(file, this.unfit);
      this.tookBench(bench, this.took(await this.merge(records), dropped));
    } catch (error) {
      this.notice.say(`“${file.name}” was not read: ${error.message}. Nothing was changed.`);
    }
    input.value = '';
    await this.show();
  }

  /** Merges jobs into those kept, all or none; gives how each fared. */
  async merge(records) {
    const { job, store } = this.bench();
    if (!store) throw new Error('this browser keeps nothing for the page');
    await job.keep();
    const counts = {};
    await store.settle(records.map(({ id }) => id), (kept, keep) => {
      records.forEach((record, i) => {
        const { count, keep: these } = settled(kept[i], record);
        counts[count] = (counts[count] ?? 0) + 1;
        for (const each of these) keep(each);
      });
    });
    this.changed(job.id);
    return counts;
  }

  /** Says what a file brought; its bench is taken over by a phone that has none, and else offered. */
  tookBench(bench, said) {
    const { shop } = this.bench();
    const theirs = shop.checked(bench);
    const other = Object.keys(theirs).some((name) => theirs[name] !== shop.form[name]);
    if (!other) this.notice.say(said);
    else if (Object.keys(shop.form).length === 0) {
      shop.put(theirs);
      this.notice.say(`${said} This phone’s bench is now as in the file.`);
    } else this.notice.offer(`${said} Its bench stands otherwise than this phone’s, which stays.`, 'Take over the file’s bench', () => shop.put(theirs));
  }

  took(counts, dropped) {
    const words = {
      added: 'new', renewed: 'brought up to date', same: 'already here', older: 'older than here and left alone',
      parted: 'worked on in both places: both are kept, one as a copy',
    };
    const said = Object.entries(words).filter(([count]) => counts[count]).map(([count, text]) => `${counts[count]} ${text}`);
    const left = dropped ? ` ${dropped} of its fields can’t stand in a job and were left out.` : '';
    return `From the file: ${said.join(', ') || 'no jobs'}.${left}`;
  }
}

function recordOf({ id, rev, form }) {
  return { id, rev: Math.max(rev, 1), form };
}
