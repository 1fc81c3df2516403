// What hands do to the controls, as edits of the job on the bench: typing, keys,
// buttons of a row or a stepper, taps on the clock face and by a stopwatch.
import { boxOf, offer, tooSoon } from './choices.js';
import { watchDimensions } from './dimension.js';
import { nameOf, textOf } from './fields.js';
import { watchFace } from './face.js';
import { land, nearest } from './focus.js';
import { Lathe } from './lathe.js';
import { isOwn } from './shop.js';
import { Stopwatch, watchTaps } from './stopwatch.js';

// A second tap meant for what was there before, ms.
const DEAF = 600;

// A field of words takes at least so many letters; marks and classes, fewer, hide nothing.
const PROSE = 30;

export class Controls {
  constructor(bench, trueStep, notice) {
    this.bench = bench;
    this.trueStep = trueStep;
    this.notice = notice;
    this.picked = null; // the hour field that was touched for the next tap on the face
    this.tapped = null; // the hour field that the finger on the face sets
    this.deafUntil = 0;
    this.runs = 0;
    this.run = {}; // what the hands are at: edits that go on with it are one change
    this.stopwatch = new Stopwatch();
  }

  wire() {
    const { body } = document;
    body.addEventListener('input', ({ target }) => this.typed(target));
    body.addEventListener('focusin', ({ target }) => { this.run = {}; this.touched(target); });
    // What is touched again has the focus already.
    this.trueStep.addEventListener('pointerdown', ({ target }) => { if (target === document.activeElement) this.touched(target); });
    body.addEventListener('focusout', ({ target }) => this.bench.left(target));
    body.addEventListener('click', ({ target }) => this.pressed(target.closest('button, [data-pin]')));
    watchDimensions(body);
    watchTaps(body, (button, at) => this.timed(nameOf(button.dataset.tap, button), at));
    body.addEventListener('keydown', (event) => this.key(event));
    body.addEventListener('submit', (event) => event.preventDefault());
    watchFace(this.trueStep.querySelector('[data-picture="face"]'), (x, y, first) => this.point(x, y, first));
    this.lathe = new Lathe(this.trueStep, {
      onStep: (control, by) => { if (!this.deaf) this.step(nameOf(control.name, control), by); },
      onNext: (control) => !this.deaf && this.goOn(control),
      onTurn: (control) => this.touched(control),
      onMove: () => this.deafen(),
    });
  }

  /** Whether a tap may have been meant for what stood there before. */
  get deaf() { return performance.now() < this.deafUntil; }

  deafen() { this.deafUntil = performance.now() + DEAF; }

  /** Another pass is on the bench: what was touched in the one before says nothing of it. */
  passChanged() {
    this.deafen();
    this.picked = null;
    this.stepsHour(null);
  }

  /** Begins a round of readings at the first dial. */
  toReadings() {
    scrollTo(0, 0);
    this.aim('drive');
    if (this.lathe.open) this.lathe.begin();
  }

  typed(control) {
    if (!control.name || control.type === 'radio') return;
    const name = nameOf(control.name, control);
    if (control === this.picked) this.picked = null;
    this.bench.typing = control === document.activeElement ? name : '';
    if (name === 'units') this.bench.changeUnits(control.value);
    else if (isOwn(name)) this.bench.sign({ [name]: textOf(control) });
    else this.bench.edit({ [name]: textOf(control) }, this.typing(name, textOf(control)));
    // The browser cuts off what is too long without a word.
    if (control.maxLength >= PROSE && control.value.length >= control.maxLength) this.notice.say(`Full: ${control.maxLength} letters. What goes past them is cut off.`);
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
    const { dial } = control.closest('.dial')?.dataset ?? {};
    if (!dial) {
      const hour = 'hour' in control.dataset ? control : null; // of a further place among the readings
      if (hour) this.picked = hour;
      if (!control.dataset.step) this.stepsHour(hour);
      return;
    }
    this.aim(dial);
    if (control.name === 'aim') this.picked = this.hours(dial).find(blank) ?? this.hours(dial)[0];
    else if ('hour' in control.dataset) this.picked = control;
    if (!control.dataset.step) this.stepsHour('hour' in control.dataset ? control : null);
  }

  aim(dial) {
    document.querySelector(`input[name="aim"][value="${dial}"]`).checked = true;
  }

  /** The question that stands now asks for an hour: the face is for that one. */
  asked(name) {
    const control = this.controlOf(name);
    const { dial } = control?.closest('.dial').dataset ?? {};
    if (dial) this.aim(dial);
  }

  controlOf(name) {
    return name && [...this.trueStep.querySelectorAll('[data-hour]')].find((control) => nameOf(control.name, control) === name && !control.closest('[hidden]'));
  }

  /** The hour fields of a dial that show. */
  hours(dial) {
    return [...this.trueStep.querySelectorAll(`[data-hour="${dial}"]`)].filter((control) => !control.closest('[hidden]'));
  }

  /**
   * The steppers of a dial go by quarters of an hour, and say so, while one of
   * its hour fields is at hand: a keypad of figures has no colon.
   */
  stepsHour(hour) {
    const row = hour?.closest('.dial');
    for (const button of this.trueStep.querySelectorAll('.dial [data-step]')) {
      const quarter = row === button.closest('.dial');
      button.dataset.reading ??= button.getAttribute('aria-label');
      const sign = button.dataset.step === '1' ? '+' : '−';
      button.classList.toggle('quarter', quarter);
      button.textContent = quarter ? `${sign}¼` : sign;
      const label = quarter && `${hour.labels[0].textContent.trim()}, a quarter of an hour ${sign === '+' ? 'more' : 'less'}`;
      button.setAttribute('aria-label', label || button.dataset.reading);
    }
    this.stepped = hour;
  }

  pressed(button) {
    const { step, add, remove, look, pin, clear, reply } = button?.dataset ?? {};
    const { bench } = this;
    if (step && !this.deaf) this.press(button, step);
    this.choose(button);
    if (add) bench.addRow(nameOf(add, button));
    if (look !== undefined) {
      bench.lookAt(button.closest('.pass').dataset.key);
      land(button.closest('.pass')); // the button is of no use there and goes
    }
    if (pin) bench.lookAtPin(pin);
    if (reply) bench.replied(...reply.split('='));
    if (clear) bench.put({ [nameOf(clear, button)]: '' });
    if (remove !== undefined) this.remove(button.closest('[data-row]'));
  }

  remove(row) {
    const near = nearest(row);
    this.bench.remove(nameOf(row.dataset.row, row.parentElement), row.dataset.key);
    if (!near || row.isConnected) return;
    land(near);
    this.notice.uncover(near);
  }

  /** The unit beside a field is its switch; it asks before it switches, since a thumb goes there for the field. */
  choose(button) {
    const { means, units } = button?.dataset ?? {};
    if ((means || units) && tooSoon(button)) return;
    const field = button?.closest('.field');
    const control = field?.querySelector('input');
    if (means) this.bench.put({ [nameOf(control.name, control)]: means });
    if (units) this.bench.switchUnits(units, nameOf(control.name, control));
    for (const box of document.querySelectorAll('.choices[data-switch]')) box.remove();
    if (!button?.classList.contains('unit') || boxOf(field)) return;
    const metric = this.bench.job.form.units === 'metric';
    offer(field, 'The dials read in', [[metric ? 'stay in mm' : 'stay in thou', { units: metric ? 'metric' : 'inch' }], [metric ? 'read in thou' : 'read in mm', { units: metric ? 'inch' : 'metric' }]]);
    boxOf(field).dataset.switch = '';
  }

  press(button, by) {
    const hour = this.stepped?.closest('.dial') === button.closest('.dial') && this.stepped;
    this.step(hour ? nameOf(hour.name, hour) : nameOf(button.dataset.for, button), by);
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
      if (this.goOn(target)) this.goFrom(target);
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
    const { before, text, done } = this.bench.next(name);
    // What only closes a reading belongs to it; the next is a change of its own.
    if (text !== control.value) this.bench.put({ [name]: text }, this.runOf(this.run.name === name && !this.run.by, { name }));
    this.run = {};
    this.bench.typing = '';
    this.bench.answerRest();
    if (!done) control.setSelectionRange(before.length, before.length);
    return Boolean(done);
  }

  /** Enter in a field that has all: to the next reading that is wanted, or to the next field; from the last to the sentence. */
  goFrom(control) {
    const readings = control.closest('.readings');
    const all = fieldsIn(readings ?? control.closest('fieldset, .sheet, .step'));
    const at = all.indexOf(control);
    const next = readings ? [...all.slice(at + 1), ...all.slice(0, at)].find(blank) : all[at + 1];
    if (next) {
      next.focus();
      return;
    }
    control.blur();
    if (readings) scrollTo(0, 0);
  }

  /** A finger on the face: it sets the hour that it came down for, however far it is drawn. */
  point(x, y, first) {
    if (this.bench.answers.now.looked > 1) {
      if (first) this.notice.say('These hours are this pin’s own. To set a reading’s hour here, go to pin 1.', 'tap');
      return;
    }
    if (first) this.tapped = this.deaf ? null : this.meant();
    const control = this.tapped;
    if (!control) {
      const way = this.lathe.open ? 'go to it by “Next”' : 'touch D, T or the hour';
      if (first && !this.deaf) this.notice.say(`Both hours stand. To change one ${way} first, then the face.`, 'tap');
      return;
    }
    const { hour } = this.bench.call('tap', {}, { x, y });
    if (!hour) return;
    const name = nameOf(control.name, control);
    this.notice.clear('tap');
    this.picked = null;
    this.bench.put({ [name]: hour }, this.runOf(!first, { name, by: 'tap' }));
  }

  /**
   * The hour field that a tap is for: what was touched for it; else what is
   * asked; else what is still blank, the dial at hand before the other.
   */
  meant() {
    const at = this.lathe.open ? this.lathe.control : null;
    if (at) {
      if ('hour' in at.dataset) return at;
      return this.hours(at.closest('.dial').dataset.dial).find(blank);
    }
    if (this.picked && !this.picked.closest('[hidden]')) return this.picked;
    const dial = document.querySelector('input[name="aim"]:checked').value;
    return this.controlOf(this.bench.answers.now.tap) ?? [...this.hours(dial), ...this.hours(dial === 'drive' ? 'timing' : 'drive')].find(blank);
  }
}

function blank(control) { return control.value === ''; }

function fieldsIn(part) {
  return [...part.querySelectorAll('input:not([type="radio"], [type="hidden"]), select, textarea')].filter((field) => field.checkVisibility());
}
