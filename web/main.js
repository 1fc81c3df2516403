// Starts the page and wires its parts: the job, the core, the painter, the
// clock face, the link and the updates. Each part knows none of the others.
import { Fault, startCore } from './bridge.js';
import { Controls } from './controls.js';
import { hearEarly } from './early.js';
import { Job, newKey, sameForm } from './job.js';
import { Jobs } from './jobs.js';
import { JobSheet } from './jobsheet.js';
import { linkIn } from './link.js';
import { Notice } from './notice.js';
import { Painter } from './paint.js';
import { Plan } from './plan.js';
import { keysOf, matchRows, removed } from './rows.js';
import { Shop } from './shop.js';
import { Spin } from './spin.js';
import { stepAt, stepsIn } from './steps.js';
import { openStore } from './store.js';
import { applyUpdate, onUpdateWaiting, takeWaitingAtStart } from './update.js';

const notice = new Notice(document.getElementById('notice'));
const header = new Painter(document.querySelector('header'));
const trueStep = document.getElementById('true');
const sheetStep = document.getElementById('sheet');
const spin = new Spin(document.getElementById('spin'));
const painters = new Map(stepsIn(document).map((step) => [step, { now: new Painter(step), later: new Painter(step, true) }]));

start().catch((error) => {
  document.documentElement.dataset.ready = 'failed';
  notice.offer(`The page could not start: ${error.message}. What you typed before is kept.`, 'Load it again', () => location.reload());
});
addEventListener('error', (event) => {
  if (!(event.error instanceof Fault)) return;
  event.preventDefault();
  faulted(event.error);
});

async function start() {
  const typeAgain = hearEarly(document.body, (control) => bench.controls.typed(control));
  if (await takeWaitingAtStart()) return; // the reload is under way
  const [call, store] = await Promise.all([startCore(() => bench.answer()), openStore().catch(cannotKeep)]);
  const bench = new Bench(call, store);
  await bench.open();
  bench.wire();
  typeAgain();
  document.documentElement.dataset.ready = 'true';
  setTimeout(() => bench.jobs.readAgain().catch(() => {}), 500); // what goes wrong is told when the list is asked for
  onUpdateWaiting(() => notice.offer('A new version is here.', 'Change to it now', () => bench.job.keep().then(applyUpdate)));
}

function faulted(fault) {
  notice.say(`The sum went wrong (${fault.message}). What you typed is kept; change the last figure, or load the page again.`, 'sum');
}

/** Gives what a sum gives; null, and says so, when it goes wrong. */
function tried(sum) {
  try {
    return sum();
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    faulted(error);
    return null;
  }
}

function cannotKeep(error) {
  notice.offer(`This browser keeps nothing for the page (${error.message}). Save a file or send a link before you close it.`, 'Save a file', () => document.getElementById('save-one').click());
  return null;
}

/** The bench: the one job that is open, and what is done to it. */
class Bench {
  constructor(call, store) {
    this.call = call;
    this.store = store;
    this.own = null; // the user's job, while a link's job is looked at
    this.answers = { now: {}, later: {} };
    this.controls = new Controls(this, trueStep, notice);
    const unfit = (form) => Object.keys(this.call('unfit', form));
    this.shop = new Shop({ unfit, convert: (form, to) => this.inUnits(form, to), changed: () => this.compare() });
    this.plan = new Plan(document.getElementById('balance'), { onStart: () => this.planHoles() });
    this.jobs = new Jobs(document.getElementById('jobs'), notice, {
      bench: () => ({ job: this.own ?? this.job, store: this.store, shop: this.shop }),
      open: (record) => this.take(this.jobOf(record)),
      changed: (id) => this.reread(id),
      left: (id) => { if (id === this.job.id) this.take(this.fresh()); },
      unfit,
    });
    this.sheet = new JobSheet(sheetStep, { call, saveOne: () => this.jobs.saveOne() });
  }

  /** Opens the user's last job, then the link's over it if there is one. */
  async open() {
    this.step = stepAt(document, location.hash);
    const record = this.store && await this.store.current().catch(cannotKeep);
    this.take(record ? this.jobOf(record) : this.fresh());
    this.store?.listen((message) => this.heard(message));
    this.store?.onLost(() => this.told(new Error('the browser has cleared what the page kept')));
    this.arrive();
  }

  /** Goes where the address leads: to a link's job, or to a step of the work. */
  arrive() {
    if (linkIn(location)) this.openLink();
    else {
      if (this.own) this.leaveGuest();
      this.show();
    }
  }

  jobOf(record, store = this.store) {
    return new Job({
      store,
      record,
      told: (error) => this.told(error),
      changed: () => this.refresh(),
    });
  }

  /** A new job, which takes over what stands on the bench of this phone. */
  fresh() { return this.jobOf({ form: this.shop.begin() }); }

  /** Puts a job on the bench. */
  take(job) {
    this.job = job;
    if (job.store) job.store.setCurrent(job.id).catch((error) => this.told(error));
    this.refresh();
  }

  /** Shows the step of the work that the address names. */
  show() {
    this.step = this.own ? sheetStep : stepAt(document, location.hash);
    for (const step of painters.keys()) step.hidden = step !== this.step;
    this.refresh();
    if (this.step.id === 'jobs') this.jobs.show().catch((error) => this.told(error));
    if (this.step.id === 'order') this.jobs.readAgain().catch((error) => this.told(error));
    document.getElementById(location.hash.slice(1))?.scrollIntoView();
  }

  refresh() {
    const moved = this.putPassOnBench();
    const changed = matchRows(this.step, this.job.form);
    for (const painter of Object.values(painters.get(this.step))) {
      if (changed) painter.look();
      else if (moved) painter.rename();
      painter.fill(this.job.form);
    }
    this.answer();
  }

  /** The pass on the bench gives the dials' section its key; true if it is another now. */
  putPassOnBench() {
    const keys = keysOf(this.job.form, 'pass');
    const { bench } = this.job.form;
    const was = trueStep.dataset.key;
    trueStep.dataset.key = keys.includes(bench) ? bench : keys.at(-1) ?? '1';
    return trueStep.dataset.key !== was;
  }

  /** Answers the step that shows: the first screen at once, the rest when that stands. */
  answer() {
    const answers = this.paint('now', this.step.id);
    if (this.step === sheetStep) tried(() => this.sheet.show(this.job.form, Boolean(this.own)));
    if (this.step !== trueStep || !answers) return;
    clearTimeout(this.rest);
    this.rest = setTimeout(() => this.answerRest());
  }

  answerRest() {
    clearTimeout(this.rest);
    this.compare();
    const answers = this.paint('later', 'true.more');
    if (answers) this.showPasses(answers);
  }

  paint(when, part) {
    const { form } = this.job;
    const answers = tried(() => this.call('answer', { ...form, part }));
    if (!answers) return null;
    notice.clear('sum');
    this.answers[when] = answers;
    painters.get(this.step)[when].show(form, answers);
    if (answers['say.block.seen']) header.show(form, answers);
    return answers;
  }

  showPasses(answers) {
    for (const row of trueStep.querySelectorAll('.pass')) {
      const here = row.dataset.key === answers.bench;
      row.classList.toggle('on-bench', here);
      row.querySelector('[data-look]').hidden = here;
    }
    spin.show(answers);
  }

  /** Logs what is advised as done, or the first move of it alone, and begins the next pass. */
  did(both) {
    if (this.grow(this.call('done', { ...this.job.form, 'key.0': newKey(), 'key.1': both ? newKey() : '', 'key.pass': newKey() }))) this.controls.toReadings();
  }

  /** Logs what is advised, to be changed to what was done. */
  didElse() {
    if (this.grow(this.call('done', { ...this.job.form, 'key.0': newKey(), 'key.1': newKey() }))) this.changeDone();
  }

  changeDone() {
    const list = document.getElementById('done-list');
    list.scrollIntoView();
    list.querySelector('select').focus({ preventScroll: true });
  }

  /** Adds a place close to each centre, to be read. */
  nearCentres() {
    this.put(this.call('near', { ...this.job.form, 'key.0': newKey(), 'key.1': newKey() }));
    const places = document.getElementById('more-dials');
    places.open = true;
    places.scrollIntoView();
  }

  /** Answers what was asked, in the field that the answers name for it. */
  replied(asked, reply) {
    const field = this.answers.now[asked] ?? this.answers.later[asked];
    if (field) this.put({ [field]: reply });
  }

  again() {
    if (this.grow(this.call('again', { ...this.job.form, 'key.pass': newKey() }))) this.controls.toReadings();
  }

  /** Makes an edit that brings rows; false, and says why, where the job would hold too many. */
  grow(changes) {
    const { problem } = this.call('crowd', { ...this.job.form, ...changes });
    if (problem) notice.say(`Nothing was added: that would be ${problem}.`);
    else this.put(changes);
    return !problem;
  }

  /** Has the holes planned; they come in as an edit, if the job still stands as they were planned for. */
  planHoles() {
    const { job } = this;
    const asked = { ...job.form };
    this.plan.start(asked, newKey(), (changes) => {
      if (this.job !== job || !sameForm(job.form, asked)) return 'A figure was changed meanwhile: plan again. The holes are as they were.';
      this.put(changes);
      return '';
    });
  }

  drilled() {
    this.grow(this.call('drilled', { ...this.job.form, key: newKey() }));
    scrollTo(0, 0);
  }

  tryOut() {
    const seed = document.getElementById('try-seed').value.trim() || newKey();
    const form = this.call('tryout', { seed, start: document.getElementById('try-start').value });
    this.startAfresh(this.jobOf()); // it is read with dials of its own
    this.put(form);
    scrollTo(0, 0);
  }

  /** Makes an edit that was typed into its control. */
  edit(changes, run) {
    this.plan.say('');
    this.change(changes, run);
    this.answer();
  }

  /** Makes an edit that no control shows yet. */
  put(changes, run) {
    this.change(changes, run);
    this.refresh();
  }

  /** Changes the job; the bench of this phone follows where the two agreed. */
  change(changes, run) {
    const before = { ...this.job.form };
    const change = this.job.edit(changes, run);
    change.followed = [...change.followed ?? [], ...this.shop.follow(before, this.job.form)];
  }

  /** Says whether the next crank begins as this one stands. */
  compare() {
    const unlike = this.shop.unlike(this.job.form);
    const labels = unlike.map((name) => trueStep.querySelector(`[name="${name}"]`).labels[0].textContent.trim());
    document.getElementById('bench-said').textContent = unlike.length === 0
      ? 'This is the bench of this phone: the next crank begins with it, and a change here changes it.'
      : `On the bench of this phone these stand otherwise: ${labels.join('; ')}.`;
    document.getElementById('bench-unlike').hidden = unlike.length === 0;
  }

  told(error) {
    if (error) {
      notice.offer(`This could not be kept on the phone: ${error.message}. Save a file or send a link before you close the page.`,
        'Save a file', () => document.getElementById('save-one').click(), undefined, 'keeping');
    } else {
      notice.clear('keeping');
      // Asked once there is something to keep: some browsers ask the person.
      this.promised ??= navigator.storage?.persist?.().catch(() => false);
    }
  }

  /** Another tab has kept or deleted a job. */
  heard({ id, rev }) {
    if (id === this.job.id && rev === 0) notice.say('This crank was deleted in another tab. It stands here until you open another; the next figure you type keeps it again.');
    else this.reread(id);
    if (this.step.id === 'jobs') this.jobs.show().catch((error) => this.told(error));
  }

  async reread(id) {
    if (id !== this.job.id || !this.job.store) return;
    const record = await this.store.get(id).catch((error) => this.told(error));
    if (record) this.job.adopt(record);
  }

  // Links

  /** Shows a link's job as its sheet, to be looked at; the own job waits. */
  openLink() {
    const decoded = tried(() => this.call('decode', { link: linkIn(location) })) ?? { problem: 'The link could not be read.' };
    if (decoded.problem) {
      this.show();
      notice.say(`${decoded.problem} Your own job is on the bench, untouched.`);
      return;
    }
    this.own ??= this.job;
    document.documentElement.classList.add('guest');
    this.take(this.jobOf({ form: decoded }, null));
    this.show();
    notice.offer('This crank came by a link, to be looked at. Your own job is untouched.', 'Keep a copy', () => this.keepCopy(), () => this.backToOwn());
  }

  keepCopy() {
    const { form } = this.job;
    this.leaveLink();
    this.leaveGuest();
    this.take(this.jobOf());
    this.put(form);
    this.show();
  }

  backToOwn() {
    this.leaveLink();
    this.leaveGuest();
    this.show();
  }

  /** Puts the own job back, after a link's. */
  leaveGuest() {
    document.documentElement.classList.remove('guest');
    const { own } = this;
    this.own = null;
    this.take(own);
  }

  leaveLink() {
    history.replaceState(null, '', location.pathname + location.search);
  }

  startAfresh(job = this.fresh()) {
    const before = this.job;
    this.own = null;
    this.take(job);
    notice.offer('A fresh crank is on the bench; the other is kept.', 'Back to the other', () => this.take(before));
  }

  /** Changing the units rewrites bare figures, so that no answer changes. */
  changeUnits(to) { this.put(this.inUnits(this.job.form, to)); }

  inUnits(form, to) { return { ...this.call('units', { ...form, 'units.to': to }), units: to }; }

  /** Takes a row out, with a way to put just that back. */
  remove(group, key) {
    const { job } = this;
    const gone = removed(job.form, group, key);
    const before = Object.fromEntries(Object.keys(gone).map((name) => [name, job.form[name]]));
    this.put(gone);
    notice.offer('Taken out.', 'Put it back', () => { if (this.job === job) this.put(before); });
  }

  undo() { this.goBack(() => this.job.undo()); }

  redo() { this.goBack(() => this.job.redo()); }

  /** Takes a change back or makes it again; the bench goes with it where it went with the change. */
  goBack(act) {
    const before = { ...this.job.form };
    const change = act();
    if (!change) return;
    this.shop.follow(before, this.job.form, change.followed);
    this.refresh();
  }

  stepBy(name, by, run) {
    this.put(this.call('step', { ...this.job.form, 'step.name': name, 'step.by': by }), run);
  }

  /** How many readings a field wants yet. */
  left(name) {
    return Number(this.answers.now[`left.${name}`] ?? this.answers.later[`left.${name}`] ?? 0);
  }

  /** Gives the buttons of the page their work. */
  wire() {
    const buttons = {
      drilled: () => this.drilled(),
      share: () => { location.hash = '#hand-on'; },
      afresh: () => this.startAfresh(),
      'bench-onto': () => this.put(this.shop.onto(this.job.form)),
      'bench-take': () => { this.shop.take(this.job.form); this.compare(); },
      'jobs-afresh': () => { this.startAfresh(); location.hash = '#true'; },
      'near-centres': () => this.nearCentres(),
      did: () => this.did(false),
      'did-both': () => this.did(true),
      'did-else': () => this.didElse(),
      'read-logged': () => this.again(),
      'change-logged': () => this.changeDone(),
      again: () => this.again(),
      undo: () => this.undo(),
      redo: () => this.redo(),
      'try-out': () => this.tryOut(),
    };
    for (const [id, act] of Object.entries(buttons)) document.getElementById(id).addEventListener('click', act);
    addEventListener('hashchange', () => this.arrive());
    this.controls.wire();
  }
}
