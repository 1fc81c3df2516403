// The view at the lathe: what to do and one reading at a time, large enough to
// read from two metres, with the screen kept awake, and said aloud if he likes.
import { Voice } from './voice.js';

export class Lathe {
  /**
   * bench is the dials' section. onStep(control, by) and onNext(control) change
   * the reading; onNext says whether it is done with; onTurn(control) hears which is wanted;
   * onMove() that all stands elsewhere now.
   */
  constructor(bench, { onStep, onNext, onTurn, onMove }) {
    this.bench = bench;
    this.onNext = onNext;
    this.onTurn = onTurn;
    this.onMove = onMove;
    this.awake = null;
    const bar = bench.querySelector('.lathe-bar');
    this.what = bar.querySelector('.lathe-what');
    const press = (name, act) => bar.querySelector(`[data-lathe="${name}"]`).addEventListener('click', act);
    press('less', () => onStep(this.control, '-1'));
    press('more', () => onStep(this.control, '1'));
    press('next', () => this.next());
    this.voice = new Voice(bar.querySelector('[data-lathe="say"]'), () => spoken(bench.querySelector('.answer')));
    press('leave', () => history.back()); // as the phone's own way back does
    addEventListener('popstate', () => { if (this.open) this.leave(); });
    for (const button of bench.querySelectorAll('[data-lathe-open]')) button.addEventListener('click', () => this.enter());
    document.addEventListener('visibilitychange', () => this.stayAwake());
  }

  get open() { return document.documentElement.classList.contains('at-lathe'); }

  enter() {
    document.documentElement.classList.add('at-lathe');
    history.pushState('at the lathe', '');
    this.onMove();
    this.stayAwake();
    this.begin();
    this.bench.querySelector('[data-lathe="next"]').focus({ preventScroll: true }); // the button that was pressed is gone
  }

  /** Turns to the first reading that is wanted yet. */
  begin() {
    const fields = this.fields();
    this.turnTo(fields.find(({ value }) => value === '') ?? fields[0]);
    scrollTo(0, 0);
  }

  leave() {
    document.documentElement.classList.remove('at-lathe');
    this.bench.querySelector('.now')?.classList.remove('now');
    this.letSleep();
    this.voice.hush();
    this.onMove();
    [...this.bench.querySelectorAll('[data-lathe-open]')].find((button) => !button.hidden).focus();
  }

  /** The sentence has been answered anew. */
  answered() { this.voice.changed(); }

  // The lock is lost whenever the page is hidden; a phone that has none stays
  // as it is.
  async stayAwake() {
    if (!this.open || document.hidden || !navigator.wakeLock) return;
    this.awake = await navigator.wakeLock.request('screen').catch(() => null);
    if (!this.open) this.letSleep(); // left before the lock came
  }

  letSleep() {
    this.awake?.release();
    this.awake = null;
  }

  fields() {
    return [...this.bench.querySelectorAll('.readings input:not([type="radio"], [type="hidden"]), .readings select')].filter((c) => !c.closest('[hidden]'));
  }

  next() {
    if (!this.onNext(this.control)) return;
    const fields = this.fields();
    this.turnTo(fields[(fields.indexOf(this.control) + 1) % fields.length]);
  }

  turnTo(control) {
    this.bench.querySelector('.now')?.classList.remove('now');
    this.control = control;
    control.closest('.field').classList.add('now');
    this.what.textContent = control.labels[0].textContent.trim();
    this.onTurn(control);
  }
}

/** What an answer says, as a voice is to read it: what to do, and what then. */
function spoken(answer) {
  const lines = [...answer.querySelectorAll('.headline, .then')].filter((line) => !line.hidden);
  return lines.map((line) => line.innerText.trim()).filter(Boolean).join(' ');
}
