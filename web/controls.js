// What hands do to the controls, as edits of the job on the bench: typing, keys,
// buttons of a row or a stepper, taps on the clock face and by a stopwatch.
import { nameOf, textOf } from './fields.js';
import { watchFace } from './face.js';
import { Lathe } from './lathe.js';
import { added } from './rows.js';
import { Stopwatch, watchTaps } from './stopwatch.js';

export class Controls {
  constructor(bench, trueStep, notice) {
    this.bench = bench;
    this.trueStep = trueStep;
    this.notice = notice;
    this.hourField = {}; // the hour field last touched, a dial
    this.runs = 0;
    this.run = {}; // what the hands are at: edits that go on with it are one change
    this.stopwatch = new Stopwatch();
  }

  wire() {
    const { body } = document;
    body.addEventListener('input', ({ target }) => this.typed(target));
    body.addEventListener('focusin', ({ target }) => { this.run = {}; this.touched(target); });
    body.addEventListener('click', ({ target }) => this.pressed(target.closest('button')));
    watchTaps(body, (button, at) => this.timed(nameOf(button.dataset.tap, button), at));
    body.addEventListener('keydown', (event) => this.key(event));
    body.addEventListener('submit', (event) => event.preventDefault());
    watchFace(this.trueStep.querySelector('[data-picture="face"]'), (x, y, first) => this.tapped(x, y, first));
    this.lathe = new Lathe(this.trueStep, {
      onStep: (control, by) => this.step(nameOf(control.name, control), by),
      onNext: (control) => this.goOn(control),
    });
  }

  /** Begins a round of readings at the first dial. */
  toReadings() {
    scrollTo(0, 0);
    this.hourField = {};
    this.aim('drive');
    if (this.lathe.open) this.lathe.begin();
  }

  typed(control) {
    if (!control.name || control.type === 'radio') return;
    const name = nameOf(control.name, control);
    if (name === 'units') this.bench.changeUnits(control.value);
    else this.bench.edit({ [name]: textOf(control) }, this.typing(name, textOf(control)));
  }

  /**
   * The run that a typed text goes on with: the same until the field is left,
   * or until something is taken away after something was added. What is then
   * typed in its place is the same correction.
   */
  typing(name, text) {
    const was = this.bench.job.form[name] ?? '';
    const grows = text.length > was.length;
    const { run } = this;
    const on = run.name === name && run.by === undefined && (grows || !run.grows);
    return this.runOf(on, { name, grows });
  }

  /** The run of a step: the same while one field is stepped one way. */
  stepping(name, by) {
    return this.runOf(this.run.name === name && this.run.by === by, { name, by });
  }

  runOf(on, run) {
    if (!on) this.runs++;
    this.run = run;
    return `run ${this.runs}`;
  }

  step(name, by) { this.bench.stepBy(name, by, this.stepping(name, by)); }

  touched(control) {
    const dial = control.dataset?.hour;
    if (!dial) return;
    this.hourField[dial] = control;
    this.aim(dial);
  }

  aim(dial) {
    document.querySelector(`input[name="aim"][value="${dial}"]`).checked = true;
  }

  pressed(button) {
    const { step, add, remove, look, clear, reply } = button?.dataset ?? {};
    const { bench } = this;
    if (step) this.step(nameOf(button.dataset.for, button), step);
    if (add) bench.grow(added(bench.job.form, nameOf(add, button)));
    if (look !== undefined) bench.put({ bench: button.closest('.pass').dataset.key });
    if (reply) bench.replied(...reply.split('='));
    if (clear) bench.put({ [nameOf(clear, button)]: '' });
    if (remove === undefined) return;
    const row = button.closest('[data-row]');
    bench.remove(nameOf(row.dataset.row, row.parentElement), row.dataset.key);
  }

  timed(name, at) {
    const list = this.stopwatch.tap(name, this.bench.job.form[name] ?? '', at);
    if (list) this.bench.put({ [name]: list });
    else this.notice.say('The watch has stopped. “Start again” clears it for a new swing.', 'stopwatch');
  }

  key(event) {
    const { target, key } = event;
    if (target.tagName !== 'INPUT' || !target.name) return;
    const arrow = { ArrowUp: '1', ArrowDown: '-1' }[key];
    if (key === 'Enter') {
      event.preventDefault();
      if (this.goOn(target)) focusAfter(target);
    } else if (arrow && ('hour' in target.dataset || target.closest('.stepper'))) {
      event.preventDefault();
      this.step(nameOf(target.name, target), arrow);
    }
  }

  /**
   * Goes on to the next reading, as a dial with a keyboard output does by Enter:
   * within a turn that wants more, to its next point. True when the field has
   * all that it wants.
   */
  goOn(control) {
    if (!('goesOn' in control.dataset)) return true;
    const name = nameOf(control.name, control);
    if (this.bench.left(name) <= 0) return true;
    const text = control.value;
    const last = text.trim().split(/[\s;]+/).at(-1) || '0';
    // A point passed over reads as the one before it.
    this.bench.put({ [name]: /\S$/.test(text) ? `${text} ` : `${text}${last} ` });
    this.bench.answerRest();
    control.setSelectionRange(control.value.length, control.value.length);
    return this.bench.left(name) <= 0;
  }

  tapped(x, y, first) {
    const dial = document.querySelector('input[name="aim"]:checked').value;
    const control = this.hourControl(dial);
    if (!control) return;
    const { hour } = this.bench.call('tap', { x, y });
    if (!hour) return;
    const name = nameOf(control.name, control);
    this.bench.put({ [name]: hour }, this.runOf(!first, { name, by: 'tap' }));
  }

  /** The hour field that a tap sets for a dial: the one last touched, else the first that shows. */
  hourControl(dial) {
    const shown = (control) => control && !control.closest('[hidden]');
    const last = this.hourField[dial];
    return shown(last) ? last : [...document.querySelectorAll(`[data-hour="${dial}"]`)].find(shown);
  }
}

function focusAfter(control) {
  const all = [...document.querySelectorAll('input:not([type="radio"], [type="hidden"]), select')].filter((other) => !other.closest('[hidden], details:not([open])'));
  all[all.indexOf(control) + 1]?.focus();
}
