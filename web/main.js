// Starts the page and wires its parts: the job, the core, the painter, the
// clock face, the link and the updates. Each part knows none of the others.
// In the worker that plans holes it does that instead: one script has both, so that
// what they share comes to a phone once.
import './wasm_exec.js';
import { Fault, startCore } from './bridge.js';
import { Controls } from './controls.js';
import { hearEarly } from './early.js';
import { land } from './focus.js';
import { FOLDER } from './folder.js';
import { afterFrame, frameOut } from './frame.js';
import { newKey, sameForm } from './job.js';
import { Jobs } from './jobs.js';
import { JobSheet } from './jobsheet.js';
import { told } from './label.js';
import { keepScreen, lastScreen } from './lastscreen.js';
import { linkIn } from './link.js';
import { Notice } from './notice.js';
import { tellOffline } from './offline.js';
import { Painter, unfold } from './paint.js';
import { Plan, printTemplate } from './plan.js';
import { planForPage } from './planner.js';
import { added, keysOf, matchRows, removed } from './rows.js';
import { Shop, unsigned } from './shop.js';
import { Spin } from './spin.js';
import { bring, stepAt, stepsIn } from './steps.js';
import { openStore, soon } from './store.js';
import { Tab } from './tab.js';
import { applyUpdate, onUpdateWaiting, takeWaitingAtStart } from './update.js';

const SCREEN_MS = 400; // after the last key
const page = globalThis.document;
const {
  title, notice, header, spin, steps, painters, trueStep, aloneSet, sheetStep, jobsStep, orderStep, balanceStep,
} = page ? partsOf(page) : {};

if (page) startPage();
else planForPage();

function partsOf(page) {
  const [trueStep, aloneSet, sheetStep, jobsStep, orderStep, balanceStep] = ['true', 'alone', 'sheet', 'jobs', 'order', 'balance'].map((id) => page.getElementById(id));
  return {
    title: page.title, // while the crank has no number
    notice: new Notice(page.getElementById('notice')),
    header: new Painter(page.querySelector('header')),
    spin: new Spin(page.getElementById('spin')),
    steps: stepsIn(page),
    painters: new Map(), // of the steps that have shown
    trueStep, aloneSet, sheetStep, jobsStep, orderStep, balanceStep,
  };
}

function startPage() {
  showLastScreen();
  start().catch((error) => {
    page.documentElement.dataset.ready = 'failed';
    notice.offer(`The page could not start: ${error.message}. What you typed before is kept.`, [{ label: 'Load it again', act: () => location.reload() }]);
  });
  addEventListener('error', (event) => {
    if (!(event.error instanceof Fault)) return;
    event.preventDefault();
    faulted(event.error);
  });
}

async function start() {
  let bench = null;
  bring(stepAt(document, location.hash)); // where something may have been typed before a reload
  const typeAgain = hearEarly(document.body, (control) => bench.controls.typed(control));
  if (await takeWaitingAtStart()) return; // the reload is under way
  const opening = openStore();
  const unkept = (error) => cannotKeep(error, () => bench?.saveOne());
  const [call, store] = await Promise.all([startCore(() => bench.answer(), frameOut), soon(opening).catch(unkept)]);
  bench = new Bench(call, store);
  await bench.open();
  if (!bench.tab.store) opening.then((late) => bench.comesLate(late), () => {});
  bench.wire();
  typeAgain();
  document.documentElement.dataset.ready = 'true';
  setTimeout(() => bench.jobs.readAgain().catch(() => {}), 500); // what goes wrong is told when the list is asked for
  const works = onUpdateWaiting(() => bench.offerUpdate(), () => bench.tab.mayReload());
  tellOffline(document.getElementById('offline'), works, (words) => notice.say(words, 'offline'));
}

/** Shows the job on the bench as it last stood, until the store and the core have come. */
function showLastScreen() {
  const screen = location.hash.length > 1 ? null : lastScreen(FOLDER, Tab.remembered(memoryOf('sessionStorage'), FOLDER));
  if (!screen) return;
  putKeys(screen.view, screen.form);
  for (const [when, painter] of Object.entries(paintersOf(trueStep))) {
    painter.rename();
    painter.fill(screen.form);
    painter.show(screen.form, screen[when]);
  }
  header.show(screen.form, screen.now);
}

/** The painters of a step that stands: of its first screen, and of what is answered later. */
function paintersOf(step) {
  if (!painters.has(step)) painters.set(step, { now: new Painter(step), later: new Painter(step, true) });
  return painters.get(step);
}

function faulted(fault) {
  notice.say(`The sum went wrong (${fault.message}). What you typed is kept; change the last figure, or load the page again.`, 'sum');
}

/** The pass that is looked at, and the pin that it is of alone, give their sections' keys; true if another now. */
function putKeys(pass, form) {
  const pin = form[`pass.${pass}.of`] || '1';
  if (trueStep.dataset.key === pass && aloneSet.dataset.key === pin) return false;
  trueStep.dataset.key = pass;
  aloneSet.dataset.key = pin;
  return true;
}

/** What this tab alone remembers, over a reload too, or the phone; null where the browser lets it not. */
function memoryOf(storage) {
  try {
    return globalThis[storage];
  } catch {
    return null;
  }
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

function cannotKeep(error, saveOne) {
  notice.offer(`This browser keeps nothing for the page (${error.message}). Save a file or send a link before you close it.`,
    [{ label: 'Save a file', act: saveOne }], 'no store');
  return null;
}

/** Whether anything that shows has the focus. */
function holdsFocus() {
  const { activeElement, body } = document;
  return activeElement !== body && activeElement.checkVisibility();
}

/** Keys for as many new rows as an advice has moves at most. */
const rowKeys = () => Array.from({ length: 12 }, newKey).join(' ');

/** The bench: the one job that is open, and what is done to it. */
class Bench {
  #jobs = null;
  #sheet = null;
  #plan = null;

  constructor(call, store) {
    this.call = call;
    this.answers = { now: {}, later: {} };
    this.view = ''; // the pass that is looked at: no figure, and so none of the job
    this.viewed = null; // the job that it is one of
    this.pin = ''; // the pin whose clock face is looked at, '' for the one that wants it
    this.typing = ''; // the field that is being typed in
    this.noRest = () => {}; // calls off the rest of the answer
    this.of = {}; // what the form was last made of, and that
    this.controls = new Controls(this, trueStep, notice);
    this.unfit = (form) => Object.keys(this.call('unfit', form));
    this.shop = new Shop({ unfit: this.unfit, convert: (form, to) => this.inUnits(form, to), changed: () => this.compare() });
    this.tab = new Tab({
      store,
      memory: memoryOf('sessionStorage'),
      left: memoryOf('localStorage'),
      folder: FOLDER,
      notice,
      file: () => this.saveOne(),
      shown: () => this.refresh(),
      differs: told,
      answered: frameOut,
      // Asked once there is something to keep: some browsers ask the person.
      kept: () => { this.promised ??= navigator.storage?.persist?.().catch(() => false); },
    });
  }

  // What other steps do is wired as it is wanted first.

  get jobs() {
    bring(jobsStep);
    bring(orderStep); // which lists the last ones
    this.#jobs ??= new Jobs(jobsStep, notice, {
      bench: () => ({ job: this.tab.mine, store: this.tab.store, shop: this.shop }),
      open: (record) => this.tab.leave(() => {
        this.tab.take(this.tab.jobOf(record));
        location.hash = '#true';
      }),
      changed: () => this.tab.reread(),
      left: (id) => { if (id === this.tab.mine.id) this.tab.take(this.fresh()); },
      unfit: this.unfit,
      differs: told,
      stands: (form) => this.stands(form),
    });
    return this.#jobs;
  }

  get sheet() {
    this.#sheet ??= new JobSheet(sheetStep, { call: this.call, saveOne: () => this.saveOne(), shop: this.shop });
    return this.#sheet;
  }

  get plan() {
    this.#plan ??= new Plan(balanceStep);
    return this.#plan;
  }

  /** Saves the job on the bench in a file. */
  saveOne() { this.jobs.run(() => this.jobs.saveOne()); }

  /** The job on the bench, a link's too. */
  get job() { return this.tab.job; }

  /** Whether a link's job is looked at. */
  get guest() { return this.tab.own !== null; }

  /** Opens the user's last job, then the link's over it if there is one. */
  async open() {
    this.step = stepAt(document, location.hash);
    const { tab } = this;
    const record = await soon(tab.takeUp().then(() => tab.read())).catch((error) => { tab.store = cannotKeep(error, () => this.saveOne()); });
    tab.take(record ? tab.jobOf(record) : this.fresh());
    this.listen();
    this.arrive();
  }

  listen() {
    const { store } = this.tab;
    store?.listen((message) => this.heard(message));
    store?.onLost(() => this.tab.lost());
  }

  /** The store answers after the page has gone on without. */
  async comesLate(store) {
    await this.tab.found(store);
    this.listen();
  }

  wake() {
    this.tab.stays();
    setTimeout(() => this.refresh()); // WebKit has emptied every field that isn't to be filled in by itself
    this.tab.reread();
    if (this.step === jobsStep) this.jobs.show().catch((error) => this.tab.told(error));
  }

  offerUpdate() {
    notice.offer('A new version is here.', [{ label: 'Change to it now', act: () => this.update() }], 'update');
  }

  async update() {
    this.offerUpdate(); // for when it may not come yet
    if (await this.tab.mayReload()) await applyUpdate();
  }

  /** Goes where the address leads: to a link's job, or to a step of the work. */
  arrive() {
    if (linkIn(location)) this.openLink();
    else {
      if (this.guest) this.leaveGuest();
      this.show();
    }
  }

  /** A new job, which takes over what stands on the bench of this phone. */
  fresh() { return this.tab.jobOf({ form: this.shop.begin() }); }

  /** Shows the step of the work that the address names. */
  show() {
    const was = this.step;
    this.step = this.guest ? sheetStep : stepAt(document, location.hash);
    bring(this.step);
    for (const step of steps) step.hidden = step !== this.step;
    this.refresh();
    if (this.step === jobsStep) this.jobs.show().catch((error) => this.tab.told(error));
    if (this.step === orderStep) {
      this.jobs.late();
      this.jobs.readAgain().catch((error) => this.tab.told(error));
    }
    const named = document.getElementById(location.hash.slice(1));
    if (this.step !== was && !holdsFocus()) land(named ?? this.step);
    this.unfold(named);
  }

  /** Brings what is named into sight, whatever it is folded away in. */
  unfold(named) {
    if (named) unfold(named);
    named?.scrollIntoView();
  }

  refresh() {
    const moved = this.putPassOnBench();
    const changed = matchRows(this.step, this.job.form);
    for (const painter of Object.values(paintersOf(this.step))) {
      if (changed) painter.look();
      else if (moved) painter.rename();
      painter.fill(this.form);
    }
    this.answer();
  }

  /** How far a job's crank is, in a few words; '' where the sum goes wrong, which is told when it is opened. */
  stands(form) {
    try {
      const { bench, ...last } = form;
      const answers = this.call('answer', last, { part: 'state' });
      return `pass ${keysOf(form, 'pass').length || 1} · ${answers['say.state']}`;
    } catch (error) {
      if (!(error instanceof Fault)) throw error;
      return '';
    }
  }

  /** Keeps what the shop is called, for every sheet from this phone. */
  sign(changes) {
    this.shop.put(changes);
    this.answer();
  }

  /** Puts the pass that is looked at on the bench; true if it, or the pin that it is of, is another now. */
  putPassOnBench() {
    const keys = keysOf(this.job.form, 'pass');
    if (this.viewed !== this.job) {
      this.viewed = this.job;
      this.pin = '';
      this.view = this.job.form.bench ?? '';
    }
    if (!keys.includes(this.view)) this.view = keys.at(-1) ?? '1';
    if (!putKeys(this.view, this.job.form)) return false;
    this.pin = '';
    this.controls.passChanged();
    return true;
  }

  /** What the step that shows is of, for the core: the job with the pass and the pin that are looked at. */
  get form() {
    const { job: { form }, view, pin } = this;
    if (this.of.form !== form || this.of.view !== view || this.of.pin !== pin) {
      this.of = { form, view, pin, whole: { ...form, bench: view, look: pin } };
    }
    return this.signed(this.of.whole);
  }

  /** A form on its sheet carries the shop's own name. */
  signed(form) { return this.step === sheetStep && !this.guest ? this.shop.signed(form) : form; }

  /** Looks at a pass. */
  lookAt(key) {
    this.view = key;
    this.refresh();
  }

  /** Looks at a pin: at its clock face, or at its throw. */
  lookAtPin(pin) {
    this.pin = pin;
    this.answer();
  }

  /** Looks at the pass after the one that is looked at. */
  lookOn() {
    const keys = keysOf(this.job.form, 'pass');
    const next = keys[keys.indexOf(this.view) + 1];
    if (next !== undefined && !this.controls.deaf) this.lookAt(next);
  }

  /** Answers the step that shows: the first screen at once, the rest when that stands. */
  answer() {
    const answers = this.paint('now', this.step.id);
    if (this.step === sheetStep) tried(() => this.sheet.show(this.signed(this.job.form), this.guest, answers));
    for (const button of this.step.querySelectorAll('.pins button')) button.setAttribute('aria-pressed', String(button.dataset.pin === answers?.looked));
    if (this.step !== trueStep || !answers) return;
    this.controls.asked(answers.tap);
    this.controls.lathe?.answered();
    this.restSoon();
  }

  /** Answers the rest; of what is typed, once the frame that shows the first is out. */
  restSoon() {
    this.noRest();
    clearTimeout(this.screen); // what shows is of two forms until the rest has come
    const go = () => this.answerRest();
    if (this.typing) this.noRest = afterFrame(go);
    else {
      const rest = setTimeout(go);
      this.noRest = () => clearTimeout(rest);
    }
  }

  answerRest() {
    this.noRest();
    this.compare();
    const answers = this.paint('later', 'true.more');
    if (answers) this.showPasses(answers);
    this.screen = setTimeout(() => this.keepScreen(), SCREEN_MS);
  }

  /** Keeps what shows for the next start; a link's job doesn't come again. */
  keepScreen() {
    if (this.guest || !this.tab.store || this.step !== trueStep) return;
    keepScreen(FOLDER, { id: this.job.id, view: this.view, form: this.form, ...this.answers });
  }

  paint(when, part) {
    const { form } = this;
    const answers = tried(() => this.judged(form, part));
    if (!answers) return null;
    notice.clear('sum');
    this.answers[when] = answers;
    paintersOf(this.step)[when].show(form, answers);
    if (answers['say.block.seen']) header.show(form, answers);
    document.title = form.number ? `${form.number} · Pintwelve` : title;
    return answers;
  }

  /** The answers to a form; what is typed and isn't a figure yet is judged when its field is left. */
  judged(form, part) {
    const answers = this.call('answer', form, { part });
    if (!answers[`error.${this.typing}`]) return answers;
    return this.call('answer', { ...form, [this.typing]: '' }, { part });
  }

  /** A field was left. */
  left(control) {
    if (!this.typing || !control.name) return;
    const wrong = this.call('answer', this.form, { part: this.step.id })[`error.${this.typing}`];
    this.typing = '';
    if (wrong) this.answer();
  }

  showPasses(answers) {
    const shown = trueStep.querySelector('.pass.on-bench')?.dataset.key === answers.bench;
    for (const row of shown ? [] : trueStep.querySelectorAll('.pass')) {
      const here = row.dataset.key === answers.bench;
      row.classList.toggle('on-bench', here);
      row.querySelector('[data-look]').hidden = here;
    }
    spin.show();
  }

  /** Logs what is advised as done, or the first move of it alone, and begins the next pass. */
  did(all) {
    const changes = this.call('done', this.form, { rows: all ? rowKeys() : newKey(), pass: newKey() });
    if (this.grow(changes, all ? 'All of it is logged as done.' : 'Logged as done.')) this.controls.toReadings();
  }

  /** Logs what is advised, to be changed to what was done. */
  didElse() {
    if (this.grow(this.call('done', this.form, { rows: rowKeys() }))) this.changeDone();
  }

  changeDone() {
    const list = document.getElementById('done-list');
    this.unfold(list);
    list.querySelector('select').focus({ preventScroll: true });
  }

  /** Adds a place close to each centre, to be read. */
  nearCentres() {
    this.put(this.call('near', this.form, { first: newKey(), second: newKey() }));
    const places = document.getElementById('more-dials');
    places.open = true;
    places.scrollIntoView();
  }

  /** Answers what was asked, in the field that the answers name for it. */
  replied(asked, reply) {
    const field = this.answers.now[asked] ?? this.answers.later[asked];
    if (!field) return;
    // At the lathe there is no room for a row: that it isn't logged is noted.
    if (asked === 'ask.since' && reply === 'else' && !this.controls.lathe.open) this.saySince(field);
    else this.put({ [field]: reply });
  }

  /** Opens a row on the pass before, blank, for what was done and isn't logged: left blank it counts as not known. */
  saySince(field) {
    const { form } = this.job;
    const [, pass] = field.split('.');
    const keys = keysOf(form, 'pass').filter((key) => (form[`pass.${key}.of`] ?? '') === (form[`pass.${pass}.of`] ?? ''));
    const before = keys[keys.indexOf(pass) - 1];
    const words = 'Say here what was done. If it was no blow and no squeeze, take the row out.';
    if (!this.grow({ [field]: 'else', ...added(form, `pass.${before}.done`) }, words)) return;
    this.lookAt(before);
    this.changeDone();
  }

  again() {
    if (this.grow(this.call('again', this.form, { pass: newKey() }))) this.controls.toReadings();
  }

  /** Begins the readings of a pin alone, counted from the left, or with '' of the whole crank; since says what came before them. */
  readStage(of, since = '') {
    const pass = newKey();
    const changes = { ...this.call('again', this.form, { pass }), [`pass.${pass}.of`]: of, [`pass.${pass}.since`]: since };
    if (!this.grow(changes)) return false;
    this.controls.toReadings();
    return true;
  }

  /** Begins the readings of a crank that was since pressed apart and up again, or had its nuts drawn up. */
  readAnew(since) {
    if (this.readStage('', since)) location.hash = '#true';
  }

  /** Adds a row at the end of a group; a further place is of what the pass on the bench is of. */
  addRow(group) {
    const key = newKey();
    const of = this.job.form[`pass.${this.view}.of`];
    this.grow({ ...added(this.job.form, group, key), ...(of && group === 'dial' && { [`dial.${key}.of`]: of }) });
  }

  /** Makes an edit that brings rows; false where there is none, or, and says why, where the job would hold too many. */
  grow(changes, words) {
    if (Object.keys(changes).length === 0) return false;
    const { problem } = this.call('crowd', { ...this.job.form, ...changes });
    if (problem) notice.say(`Nothing was added: that would be ${problem}.`);
    else this.put(changes, '', words);
    return !problem;
  }

  /** Has the holes planned; they come in as an edit, if the job still stands as they were planned for. */
  planHoles() {
    const { job } = this;
    const asked = { ...job.form };
    this.plan.start(this.form, newKey(), (changes) => {
      if (this.job !== job || !sameForm(job.form, asked)) return 'A figure was changed meanwhile: plan again. The holes are as they were.';
      this.put(changes);
      return '';
    });
  }

  drilled() {
    this.grow(this.call('drilled', this.form, { key: newKey() }), 'Logged as drilled.');
    scrollTo(0, 0);
  }

  /** Makes the crank one of so many throws, its pins so far apart. */
  setPins() {
    const [throws, apart] = ['pins-throws', 'pins-apart'].map((id) => document.getElementById(id).value);
    const keys = Array.from({ length: 15 }, newKey).join(' ');
    this.grow(this.call('pins', this.job.form, { throws, apart, keys }), 'The pins are set: measure where each stands.');
  }

  tryOut() {
    const seed = document.getElementById('try-seed').value.trim() || newKey();
    const [throws, apart] = document.getElementById('try-throws').value.split(' ');
    const form = this.call('tryout', {}, { seed, start: document.getElementById('try-start').value, throws, apart });
    this.startAfresh(() => {
      this.job.edit(form);
      this.refresh();
      scrollTo(0, 0);
    }, this.tab.jobOf()); // it is read with dials of its own
  }

  /** The job becomes another: what told of the action before, and of a plan for other figures, leaves. */
  moved() {
    notice.edited();
    this.#plan?.say('');
  }

  /** Makes an edit that was typed into its control. */
  edit(changes, run) {
    this.moved();
    this.change(changes, run);
    // A further place's readings have controls of their own among the dials' too, and what a pass is of changes others' names.
    if (Object.keys(changes).some((name) => name.includes('.dial.') || name.endsWith('.of'))) this.refresh();
    else this.answer();
  }

  /** Makes an edit that no control shows yet; with words, says so and how to take it back. */
  put(changes, run = '', words = '') {
    this.moved();
    this.change(changes, run);
    this.refresh();
    if (words) notice.did(words, 'Undo', () => this.undo());
  }

  /** Changes the job; the bench of this phone follows where the two agreed. */
  change(changes, run) {
    const before = this.job.form;
    const change = this.job.edit(changes, run);
    this.seeNewPass(before, Object.keys(changes));
    change.followed = [...change.followed ?? [], ...this.shop.follow(before, this.job.form)];
  }

  /** Looks at a pass that was begun here; one begun in another tab waits to be looked at. */
  seeNewPass(before, names) {
    if (names.every((name) => name in before && name in this.job.form && !name.endsWith('.order'))) return; // which bring and move no row
    const last = keysOf(this.job.form, 'pass').at(-1);
    if (last !== keysOf(before, 'pass').at(-1)) this.view = last ?? '';
  }

  /** Says whether the next crank begins as this one stands. */
  compare() {
    const differing = this.shop.differing(this.job.form);
    const labels = differing.map((name) => trueStep.querySelector(`[name="${name}"]`).labels[0].textContent.trim());
    document.getElementById('bench-said').textContent = differing.length === 0
      ? 'This is the bench of this phone: the next crank begins with it, and a change here changes it.'
      : `On the bench of this phone these stand otherwise: ${labels.join('; ')}.`;
    document.getElementById('bench-unlike').hidden = differing.length === 0;
  }

  /** Another tab has kept or deleted jobs. */
  heard(message) {
    this.tab.heard(message);
    if (this.step === jobsStep) this.jobs.show().catch((error) => this.tab.told(error));
  }

  // Links

  /** Shows a link's job as its sheet, to be looked at; the own job waits. */
  openLink() {
    const decoded = tried(() => this.call('decode', {}, { link: linkIn(location) })) ?? { problem: 'The link could not be read.' };
    if (decoded.problem) {
      this.show();
      notice.say(`${decoded.problem} Your own job is on the bench, untouched.`, 'link');
      return;
    }
    notice.clear('link');
    document.documentElement.classList.add('guest');
    this.tab.lookAt(decoded);
    this.show();
    scrollTo(0, 0);
  }

  keepCopy() {
    this.tab.keepCopy(() => {
      this.leaveLink();
      document.documentElement.classList.remove('guest');
      this.viewed = null; // the copy came to its job after that was shown
      this.show();
    }, unsigned(this.job.form));
  }

  backToOwn() {
    this.leaveLink();
    this.leaveGuest();
    this.show();
  }

  /** Puts the own job back, after a link's. */
  leaveGuest() {
    document.documentElement.classList.remove('guest');
    this.tab.backToOwn();
  }

  leaveLink() {
    history.replaceState(null, '', location.pathname + location.search);
  }

  /** Puts a fresh crank on the bench, then goes on. */
  startAfresh(then = () => {}, job = this.fresh()) {
    const { tab } = this;
    tab.leave(() => {
      const before = tab.mine;
      tab.take(job);
      notice.did(before.safe ? 'A fresh crank is on the bench; the other is kept.' : 'A fresh crank is on the bench; the other is not kept.',
        'Back to the other', () => tab.leave(() => tab.take(before)));
      then();
    });
  }

  /** Changing the units rewrites bare figures, so that no answer changes; those of the fields named keep their figures. */
  changeUnits(to, kept = []) {
    const changes = this.inUnits(this.job.form, to);
    for (const name of kept) delete changes[name];
    this.put(changes, '', 'The units are changed, and the figures with them.');
  }

  /** Switches the units at a field: its figures were meant in the others, and so were those whose unit is in doubt. */
  switchUnits(to, name) {
    if (to === (this.job.form.units || 'inch')) return;
    const doubted = [this.answers.now, this.answers.later].flatMap((answers) => Object.keys(answers)).filter((each) => each.startsWith('doubt.'));
    this.changeUnits(to, [name, ...doubted.map((each) => each.slice('doubt.'.length))]);
  }

  inUnits(form, to) { return { ...this.call('units', form, { to }), units: to }; }

  /** Takes a row out, with a way to put just that back. */
  remove(group, key) {
    const { job } = this;
    const gone = removed(job.form, group, key);
    // The pass after the first is not the crank as found: the first stays, empty.
    const [first, ...others] = keysOf(job.form, 'pass');
    const asFound = group === 'pass' && key === first && others.length > 0;
    if (asFound) gone[`pass.${key}.order`] = job.form[`pass.${key}.order`] ?? '0';
    const before = Object.fromEntries(Object.keys(gone).map((name) => [name, job.form[name]]));
    const said = [asFound ? 'The readings as found are taken out. Their place stays: the pass after them is not the crank as found.' : 'Taken out.'];
    if (group === 'pass' && keysOf(job.form, `pass.${key}.done`).length > 0) said.push('What was done after it is gone with it.');
    this.put(gone);
    notice.did(said.join(' '), 'Put it back', () => { if (this.job === job) this.put(before); });
  }

  undo() { this.goBack(() => this.job.undo()); }

  redo() { this.goBack(() => this.job.redo()); }

  /** Takes a change back or makes it again; the bench goes with it where it went with the change. */
  goBack(act) {
    const before = this.job.form;
    const change = act();
    if (!change) return;
    this.moved();
    this.seeNewPass(before, Object.keys(change.texts));
    this.shop.follow(before, this.job.form, change.followed);
    this.refresh();
  }

  stepBy(name, by, run) {
    this.put(this.call('step', this.job.form, { name, by }), run);
  }

  /** Goes on in a list by one reading: the text up to the next, the whole text, and whether it has all. */
  next(name) { return this.call('next', this.job.form, { name }); }

  /** Gives the buttons of the page their work. */
  wire() {
    const buttons = {
      'plan-holes': () => this.planHoles(),
      'plan-stop': () => this.plan.giveUp(),
      'print-template': printTemplate,
      drilled: () => this.drilled(),
      share: () => { location.hash = '#hand-on'; },
      afresh: () => this.startAfresh(),
      'bench-onto': () => this.put(this.shop.onto(this.job.form)),
      'bench-take': () => { this.shop.take(this.job.form); this.compare(); },
      'near-centres': () => this.nearCentres(),
      did: () => this.did(false),
      'did-both': () => this.did(true),
      'did-else': () => this.didElse(),
      'read-logged': () => this.again(),
      'change-logged': () => this.changeDone(),
      'next-alone': () => this.readStage(this.answers.now['next.alone']),
      joined: () => this.readStage(''),
      'next-pass': () => this.lookOn(),
      'try-one': () => this.jobs.run(() => this.jobs.openExample()),
      'jobs-afresh': () => this.startAfresh(() => { location.hash = '#true'; }),
      again: () => this.again(),
      'pressed-up': () => this.readAnew('apart'),
      'nuts-drawn': () => this.readAnew('nuts'),
      undo: () => this.undo(),
      redo: () => this.redo(),
      'set-pins': () => this.setPins(),
      'try-out': () => this.tryOut(),
      'keep-copy': () => this.keepCopy(),
      'back-to-mine': () => this.backToOwn(),
    };
    document.body.addEventListener('click', ({ target }) => buttons[target.closest('button')?.id]?.());
    addEventListener('hashchange', () => this.arrive());
    // A page that comes back from the browser's cache has slept through what other tabs kept.
    addEventListener('pageshow', ({ persisted }) => { if (persisted) this.wake(); });
    addEventListener('pagehide', () => this.tab.goes());
    addEventListener('beforeunload', (event) => { if (!this.tab.mine.safe && !this.tab.mine.keeping) event.preventDefault(); });
    this.controls.wire();
  }
}
