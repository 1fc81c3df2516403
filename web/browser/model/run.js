// A run: two phones, up to three tabs on each, and what people and phones do to
// them, by the page's own modules. Against them stands a simple model: each text
// that is typed is one of its kind, and must stand somewhere for as long as
// nobody has replaced it knowingly, or its loss has been said.
import { copyOf } from '../descent.js';
import { gatheredAll, gatheredOne, merged, noted } from '../exchange.js';
import { read, written } from '../file.js';
import { sameForm } from '../job.js';
import { Notice } from '../notice.js';
import { openStore } from '../store.js';
import { Tab } from '../tab.js';
import { Disk, World } from './idb.js';

const NAMES = ['number', 'owner', 'notes', 'throw', 'rim'];
const DAY = 24 * 60 * 60 * 1000;

/** Runs a seed; gives {problem, log, writes}, problem '' when nothing was lost unsaid. */
export async function run(seed, { steps = 60, faults = new Map(), calm = false } = {}) {
  const world = new World(seed);
  const scene = new Scene(world, { faults, calm });
  const { setTimeout, clearTimeout } = globalThis;
  crypto.getRandomValues = (bytes) => bytes.map(() => Math.floor(world.dice() * 256)); // a run comes out as it did
  globalThis.setTimeout = (act) => world.setTimeout(act);
  globalThis.clearTimeout = (timer) => world.clearTimeout(timer);
  try {
    await scene.play(steps);
  } catch (error) {
    scene.problem ||= `${error.message} ${error.stack}`;
  } finally {
    Object.assign(globalThis, { setTimeout, clearTimeout });
    delete crypto.getRandomValues;
  }
  return { problem: scene.problem, log: scene.log, writes: scene.phones.map(({ disk }) => disk.writes), texts: scene.texts.size };
}

/** An element as far as a notice needs one. */
function element() {
  const heard = [];
  const parts = {};
  return {
    hidden: true,
    textContent: '',
    addEventListener: (_, act) => heard.push(act),
    click: () => heard.forEach((act) => act()),
    querySelector: (selector) => (parts[selector] ??= element()),
  };
}

/** What a phone remembers, as far as a tab asks for it. */
function storage() {
  const texts = new Map();
  return {
    texts,
    get length() { return texts.size; },
    key: (i) => [...texts.keys()][i],
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, text) => texts.set(key, text),
    removeItem: (key) => texts.delete(key),
  };
}

class Scene {
  constructor(world, { faults, calm }) {
    Object.assign(this, { world, calm, log: [], problem: '', texts: new Map(), files: [], links: [], tabs: [], made: 0 });
    this.phones = ['A', 'B'].map((name) => ({ name, disk: new Disk(world), clock: 1.7e12, left: storage() }));
    this.phones[0].disk.faults = faults;
  }

  note(words) { this.log.push(words); }

  /** What the model knows of a text, or of one that a copy's number holds. */
  known(text) { return this.texts.get(text?.split(' ')[0]); }

  /** A text is typed over, or its loss is said. */
  settle(text, change) { Object.assign(this.known(text) ?? {}, change); }

  replace(text, tab) {
    this.known(text)?.over.add(tab);
    this.settle(text, { wanted: false });
  }

  /** A text comes back by undo: as it was before where that was never kept, else as if typed anew. */
  restore(text, tab, anew) {
    const known = this.known(text);
    if (!known) return;
    if (anew) known.over.clear();
    else known.over.delete(tab);
    Object.assign(known, { wanted: known.over.size === 0, said: false, fresh: true, by: tab, undone: true });
  }

  async play(steps) {
    await this.openTab(this.phones[0]);
    await this.openTab(this.phones[1]);
    for (let i = 0; i < steps && !this.problem; i++) {
      await this.act();
      await this.world.go(this.world.dice() < 0.5 ? Infinity : Math.floor(this.world.dice() * 12));
      if (this.world.dice() < 0.2) await this.check('after some time');
    }
    for (const { disk } of this.phones) disk.failing = false;
    if (!this.problem) await this.check('at the end');
    for (const tab of [...this.tabs]) if (!this.problem) await this.leaveTab(tab, 'closed at the end');
    if (!this.problem) await this.check('with every tab closed');
  }

  // What may happen

  async act() {
    const { world } = this;
    const acts = [
      [30, () => this.withTab((tab) => this.type(tab))], [4, () => this.withTab((tab) => this.undo(tab))],
      [4, () => this.openTab(world.pick(this.phones))], [4, () => this.withTab((tab) => this.leaveTab(tab, 'closed'))],
      [4, () => this.withTab((tab) => this.update(tab))], [5, () => this.withTab((tab) => this.afresh(tab))],
      [9, () => this.withTab((tab) => this.open(tab))], [4, () => this.withTab((tab) => this.remove(tab))],
      [3, () => this.withTab((tab) => this.copy(tab))],
      [4, () => this.withTab((tab) => this.putBack(tab))], [1, () => this.withTab((tab) => this.emptyBin(tab))],
      [14, () => this.withTab((tab) => this.save(tab))], [14, () => this.withTab((tab) => this.readFile(tab))],
      [3, () => this.withTab((tab) => this.sendLink(tab))], [3, () => this.withTab((tab) => this.openLink(tab))],
      [4, () => this.withTab((tab) => this.answerLink(tab))], [12, () => this.withTab((tab) => this.answerNotice(tab))],
      [2, () => this.jumpClock()], [3, () => this.withTab((tab) => this.until(tab.tab.reread()))],
    ];
    if (!this.calm) {
      acts.push([4, () => this.withTab((tab) => this.kill(tab))], [4, () => this.armFault()], [2, () => this.fillDisk()], [1, () => this.clear()]);
    }
    // Each run leaves some of it undone and does some more often, so that runs differ.
    this.often ??= acts.map(() => (world.dice() < 0.3 ? 0 : 3 * world.dice()));
    this.often[0] = 1;
    let at = world.dice() * acts.reduce((sum, [weight], i) => sum + weight * this.often[i], 0);
    const [, act] = acts.find(([weight], i) => (at -= weight * this.often[i]) < 0);
    await act();
  }

  async withTab(act) {
    while (this.tabs.length === 0) await this.openTab(this.world.pick(this.phones)); // it may end as it takes up what another left
    await act(this.world.pick(this.tabs));
  }

  /** Lets the world go on until a promise is kept, or nothing happens any more. */
  async until(promise) {
    let over = false;
    let failed;
    promise.catch((error) => { failed = error; }).finally(() => { over = true; });
    while (!over && await this.world.go(1));
    return !failed && over;
  }

  async openTab(phone, memory = new Map()) {
    if (this.tabs.filter((tab) => tab.phone === phone && !tab.dead).length >= 3) return;
    const tab = { name: `${phone.name}${++this.made}`, phone, dead: false, memory, saidUnkept: false };
    tab.kill = () => {
      phone.disk.kill(tab);
      this.gone(tab);
    };
    const box = element();
    box.hidden = true;
    tab.box = box;
    tab.notice = new Notice(box);
    this.hearNotices(tab);
    tab.tab = new Tab({
      store: null,
      memory: { getItem: (key) => memory.get(key) ?? null, setItem: (key, value) => memory.set(key, value) },
      left: phone.left,
      folder: '/',
      answered: () => new Promise((then) => { this.world.later(tab, 'frame', then); }),
      notice: tab.notice,
      file: () => { tab.saving = this.save(tab, true); },
      shown: () => {},
      differs: (fields) => fields.flat().join(' '),
    });
    this.tabs.push(tab);
    const { notice } = tab;
    const opening = openStore({ idb: phone.disk.idbFor(tab), Channel: phone.disk.channelFor(tab), folder: '/' });
    const without = !this.calm && this.world.dice() < 0.08;
    let record;
    if (!without && await this.until(opening.then(async (store) => { tab.tab.store = store; await tab.tab.takeUp(); record = await tab.tab.read(); }))) {
      tab.tab.take(tab.tab.jobOf(record));
      this.listen(tab);
    } else {
      if (tab.dead) return;
      tab.tab.store = null;
      notice.offer('keeps nothing', [{ label: 'Save a file', act: () => { tab.saving = this.save(tab, true); } }], 'no store');
      tab.tab.take(tab.tab.jobOf());
      if (this.world.dice() < 0.5) tab.late = opening;
    }
    this.note(`${tab.name} opened${tab.tab.store ? '' : ' without a store'}: ${tab.tab.job.id}`);
  }

  listen(tab) {
    tab.tab.store.listen((message) => tab.tab.heard(message));
    tab.tab.store.onLost(() => tab.tab.lost());
  }

  hearNotices(tab) {
    const { notice } = tab;
    for (const name of ['say', 'offer', 'did']) {
      const say = notice[name].bind(notice);
      notice[name] = (text, ...more) => {
        if (tab.dead) return;
        const topic = name === 'offer' ? more[1] : '';
        if (topic === 'keeping' || topic === 'no store') tab.saidUnkept = true;
        if (topic === 'lost') this.excuseLost(tab.phone);
        for (const word of text.split(/[ ;:,.“”]+/)) this.settle(word, { said: true });
        say(text, ...more);
      };
    }
    const clear = notice.clear.bind(notice);
    notice.clear = (topic) => {
      if (topic === 'keeping' && tab.tab.store) tab.saidUnkept = false;
      clear(topic);
    };
  }

  type(tab) {
    const { job } = tab.tab;
    if (tab.tab.own) return; // a link's job is to be looked at
    const name = this.world.pick(NAMES);
    const text = this.world.dice() < 0.1 ? '' : `t${this.texts.size}`;
    const was = job.form[name];
    this.replace(was, tab); // by one who saw it
    if (text) this.texts.set(text, { wanted: true, said: false, fresh: true, by: tab, over: new Set() });
    this.note(`${tab.name} types ${name}=${text} over ${was ?? ''} in ${job.id}`);
    tab.notice.edited();
    job.edit({ [name]: text });
  }

  undo(tab) {
    if (tab.tab.own) return;
    const { job } = tab.tab;
    const before = { ...job.form };
    const way = this.world.pick(['undo', 'redo']);
    job[way]();
    for (const name of NAMES) {
      if (before[name] === job.form[name]) continue;
      // Only what this tab has put there is its user's to take back.
      if (this.known(before[name])?.by === tab) this.replace(before[name], tab);
      this.restore(job.form[name], tab, job.form[name] !== job.base[name]);
    }
    if (job.inFile && sameForm(job.form, job.inFile)) this.excuse(job.form); // as it stands in a file, as its user said
    this.note(`${tab.name} takes back (${way})`);
  }

  /** A tab is closed by its user, whom the page asks before where text stands unkept and no write runs. */
  async leaveTab(tab, how) {
    const { mine } = tab.tab;
    this.note(`${tab.name} ${how}`);
    if (!mine.safe && !mine.keeping) this.excuse(mine.form);
    tab.tab.goes();
    tab.kill();
  }

  kill(tab) {
    this.note(`${tab.name} killed`);
    tab.kill();
  }

  /** A tab has ended: what was typed last may go with it, and what it said that it can't keep. */
  gone(tab) {
    this.tabs = this.tabs.filter((each) => each !== tab);
    const { mine } = tab.tab;
    if (!mine) return;
    this.excuseLost(tab.phone); // it may have ended before it was told
    const maybeKept = [mine.base, mine.writing ?? mine.base];
    for (const [name, text] of Object.entries(mine.form)) {
      const known = this.known(text);
      if (known && maybeKept.some((kept) => kept[name] !== text) && (known.fresh || tab.saidUnkept)) known.said = true;
    }
  }

  /** A newer version: the page loads itself again if it finds that it may. */
  async update(tab) {
    let may;
    if (!await this.until(tab.tab.mayReload().then((answer) => { may = answer; })) || tab.dead || !may) return;
    this.note(`${tab.name} loads itself again`);
    for (const text of Object.values(tab.tab.mine.form)) this.settle(text, { fresh: false });
    const { phone, memory } = tab;
    tab.saidUnkept = false; // that it was said is no excuse for a reload by the page
    tab.kill();
    await this.openTab(phone, memory);
  }

  afresh(tab) {
    this.note(`${tab.name} starts another`);
    tab.tab.leave(() => {
      const before = tab.tab.mine;
      tab.tab.own = null;
      tab.tab.take(tab.tab.jobOf());
      tab.notice.did('afresh', 'Back to the other', () => tab.tab.leave(() => tab.tab.take(before)));
    });
  }

  async open(tab) {
    if (!tab.tab.store || tab.tab.own) return;
    const lines = await this.asked(tab, () => tab.tab.store.lines());
    if (!lines?.length || tab.dead) return;
    const record = await this.asked(tab, () => tab.tab.store.get(this.world.pick(lines).id));
    if (!record || tab.dead) return;
    this.note(`${tab.name} opens ${record.id}`);
    tab.tab.leave(() => tab.tab.take(tab.tab.jobOf(record)));
  }

  async asked(tab, ask) {
    let answer;
    await this.until(ask().then((result) => { answer = result; }));
    return answer;
  }

  async remove(tab) {
    const { store, mine } = tab.tab;
    if (!store || tab.tab.own) return;
    const lines = await this.asked(tab, () => store.lines());
    if (!lines?.length || tab.dead) return;
    const record = await this.asked(tab, () => store.get(this.world.pick(lines).id));
    if (!record || tab.dead) return;
    if (record.id === mine.id) {
      await this.until(mine.keep());
      if (tab.dead || !mine.safe) return;
    }
    const key = await this.asked(tab, () => store.remove(record, tab.phone.clock));
    this.note(`${tab.name} deletes ${record.id}: ${key}`);
    if (key && !tab.dead && record.id === tab.tab.mine.id && tab.tab.mine.safe) tab.tab.take(tab.tab.jobOf());
  }

  async copy(tab) {
    const { store } = tab.tab;
    const [record] = (store && await this.asked(tab, () => store.all())) || [];
    if (!record || tab.dead) return;
    const copy = copyOf(record, 'copy');
    this.note(`${tab.name} copies ${record.id} as ${copy.id}`);
    await this.until(store.settle([copy.id], ([kept], keep) => { if (!kept) keep(copy); }));
  }

  async putBack(tab) {
    const { store } = tab.tab;
    const lying = store && await this.asked(tab, () => store.bin(tab.phone.clock));
    if (!lying?.length || tab.dead) return;
    const { key, record } = this.world.pick(lying);
    this.note(`${tab.name} puts ${record.id} back`);
    await this.until(store.putBack(key));
    if (!tab.dead) await this.until(tab.tab.reread());
  }

  async emptyBin(tab) {
    const { store } = tab.tab;
    const lying = store && await this.asked(tab, () => store.bin(tab.phone.clock));
    if (!lying?.length || tab.dead) return;
    this.note(`${tab.name} empties the bin`);
    for (const { record } of lying) this.excuse(record.form);
    await this.until(store.emptyBin(lying.map(({ key }) => key)));
  }

  async save(tab, one = this.world.dice() < 0.4) {
    const { store, mine: job } = tab.tab;
    const bench = { job, store };
    let records;
    await this.until((one ? gatheredOne(bench).then((each) => [each]) : gatheredAll(bench)).then((each) => { records = each; }));
    if (!records || tab.dead) return;
    if (this.world.dice() < 0.2) {
      this.note(`${tab.name} gives a save up`);
      return;
    }
    const [text] = written(records);
    this.files.push(text);
    this.note(`${tab.name} saves ${records.map(({ id }) => id).join(' ')} as file ${this.files.length}`);
    if (this.world.dice() > 0.8) return; // nobody has said that it is there
    await this.until(noted(bench, records));
    if (!sameForm(job.form, job.base)) this.excuse(job.inFile ?? {}); // it stands in a file alone, as its user said
  }

  async readFile(tab) {
    const { store, mine: job } = tab.tab;
    if (!store || this.files.length === 0) return;
    const at = this.world.dice() < 0.6 ? this.files.length - 1 : Math.floor(this.world.dice() * this.files.length);
    let text = this.files[at];
    const how = this.world.dice();
    if (how < 0.1) text = text.slice(0, Math.floor(text.length * this.world.dice())); // its end is missing
    else if (how < 0.2) text = text.replaceAll('"past"', '"before"'); // as older pages wrote it
    let records;
    await this.until(read({ size: text.length, text: async () => text }, () => []).then((each) => { records = each.records; }));
    if (!records?.length || tab.dead) return;
    let counts;
    const done = await this.until(merged({ job, store }, records).then((came) => { counts = came.counts; }));
    if (done) {
      this.note(`${tab.name} reads file ${at + 1}: ${JSON.stringify(counts)}`);
      this.brought(tab.phone, records, counts);
    }
    if (done && !tab.dead) await this.until(tab.tab.reread());
    if (!done || tab.dead || tab.tab.own || this.world.dice() < 0.3) return;
    // Mostly one goes on with what the file brought.
    const record = await this.asked(tab, () => store.get(this.world.pick(records).id));
    if (record && !tab.dead) tab.tab.leave(() => tab.tab.take(tab.tab.jobOf(record)));
  }

  /**
   * What a file has brought stands on the phone that read it, wherever else it does: but for what
   * was typed over and came back by undo elsewhere, where the phone has the state over it and says
   * that the file is older.
   */
  brought(phone, records, { older }) {
    const standing = this.standing([phone]);
    for (const text of records.flatMap(({ form }) => Object.values(form))) {
      const known = this.known(text);
      if (known?.wanted && !known.said && !(older && known.undone) && !standing.has(text.split(' ')[0])) this.problem ||= `${phone.name} read ${text}, and has it nowhere`;
    }
  }

  sendLink(tab) { this.links.push({ ...tab.tab.job.form }); }

  openLink(tab) {
    if (this.links.length === 0) return;
    this.note(`${tab.name} looks at a link`);
    tab.tab.lookAt(this.world.pick(this.links));
  }

  answerLink(tab) {
    if (!tab.tab.own) return;
    const way = this.world.pick(['keepCopy', 'backToOwn']);
    this.note(`${tab.name} ${way}`);
    tab.tab[way](() => {});
  }

  async answerNotice(tab) {
    if (tab.late && this.world.dice() < 0.5) {
      const { late } = tab;
      tab.late = null;
      await this.until(late.then(async (store) => {
        this.note(`${tab.name}: the store answers after all`);
        await tab.tab.found(store);
        this.listen(tab);
      }));
      return;
    }
    if (tab.box.hidden) return;
    const button = this.world.pick(['#notice-do', '#notice-or', '#notice-close'].map((id) => tab.box.querySelector(id)).filter((each) => !each.hidden || each.textContent === ''));
    if (button.hidden && button !== tab.box.querySelector('#notice-close')) return;
    this.note(`${tab.name} presses ${button.textContent || 'Close'}`);
    if (button.textContent === 'Go on without it') this.excuse(tab.tab.mine.form);
    button.click();
    if (tab.saving) await tab.saving;
    tab.saving = null;
  }

  jumpClock() {
    const phone = this.world.pick(this.phones);
    phone.clock += (this.world.dice() - 0.4) * 4000 * DAY;
  }

  armFault() {
    const { disk, name } = this.world.pick(this.phones);
    const what = this.world.pick(['fails', 'fails', 'hangs', 'killed before', 'killed after']);
    disk.faults.set(disk.writes + 1 + Math.floor(this.world.dice() * 3), what);
    this.note(`on ${name} a write is to end so: ${what}`);
  }

  fillDisk() {
    const { disk, name } = this.world.pick(this.phones);
    disk.failing = !disk.failing;
    this.note(`${name} is ${disk.failing ? 'full' : 'no longer full'}`);
  }

  /** The browser clears a phone's store, which it says to the tabs that are open. */
  clear() {
    const phone = this.world.pick(this.phones);
    this.note(`${phone.name} is cleared`);
    phone.cleared = [...phone.cleared ?? [], ...phone.disk.rows('jobs'), ...phone.disk.rows('bin').map(({ record }) => record)];
    // Where no page with a store is open, nobody is there to be told.
    if (!this.tabs.some((tab) => tab.phone === phone && tab.tab.store)) this.excuseLost(phone);
    phone.disk.clear();
  }

  excuseLost(phone) {
    for (const { form } of phone.cleared ?? []) this.excuse(form);
  }

  excuse(form) {
    for (const text of Object.values(form)) this.settle(text, { said: true });
  }

  // The model

  /** The texts that stand on some phones: kept, in the bin, or on the bench of a tab. */
  standing(phones) {
    const kept = phones.flatMap(({ disk }) => [...disk.rows('jobs'), ...disk.rows('bin').map(({ record }) => record)]);
    const benches = this.tabs.filter(({ phone }) => phones.includes(phone)).flatMap(({ tab }) => [tab.job, tab.mine]);
    return new Set([...kept, ...benches].flatMap(({ form }) => Object.values(form)).map((text) => text.split(' ')[0]));
  }

  async check(when) {
    await this.world.go();
    const standing = this.standing(this.phones);
    for (const tab of this.tabs) {
      if (!tab.tab.mine.safe && !tab.saidUnkept) this.problem ||= `${when}: ${tab.name} holds what is not kept and says nothing`;
      for (const text of Object.values(tab.tab.mine.form)) this.settle(text, { fresh: false });
    }
    for (const [text, { wanted, said }] of this.texts) {
      if (wanted && !said && !standing.has(text)) this.problem ||= `${when}: ${text} is gone, and nobody said so`;
    }
  }
}

/** Runs seeds one after the other; gives those that lost something, each with its log. */
export async function runs(from, to, how) {
  const failed = [];
  let writes = 0;
  let texts = 0;
  for (let seed = from; seed < to; seed++) {
    const outcome = await run(seed, how);
    writes += outcome.writes[0] + outcome.writes[1];
    texts += outcome.texts;
    if (outcome.problem) failed.push(`seed ${seed}: ${outcome.problem}\n${outcome.log.join('\n')}`);
  }
  return { failed, writes, texts };
}

/** Runs a seed once for each write of the first phone, which fails; gives as runs does. */
export async function eachWriteFails(seed, what) {
  const { writes: [count] } = await run(seed, { calm: true });
  const failed = [];
  for (let n = 1; n <= count; n++) {
    const { problem, log } = await run(seed, { calm: true, faults: new Map([[n, what]]) });
    if (problem) failed.push(`seed ${seed}, write ${n} ${what}: ${problem}\n${log.join('\n')}`);
  }
  return { failed, writes: count, texts: 0 };
}
