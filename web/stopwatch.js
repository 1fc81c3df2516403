// A stopwatch that writes into a list: each tap of a button with data-tap adds
// the seconds since the first tap to the field of that name. It goes by the
// time of the touch itself, not by when the page gets round to it.

/** A pause after which the watch has stopped, ms: no wheel swings so slowly. */
const PAUSE = 20000;

export class Stopwatch {
  constructor() {
    this.running = new Map(); // name → when it was first and last tapped
  }

  /** The list with one more tap; undefined where the watch has stopped on it. */
  tap(name, list, at) {
    if (!list.trim()) {
      this.running.set(name, { first: at, last: at });
      return '0';
    }
    const watch = this.running.get(name);
    if (!watch || at - watch.last > PAUSE) return undefined;
    watch.last = at;
    return `${list} ${((at - watch.first) / 1000).toFixed(2)}`;
  }
}

/** Calls onTap(button, time) for every tap on a button with data-tap under root. */
export function watchTaps(root, onTap) {
  const tap = (event) => {
    const button = event.target.closest('[data-tap]');
    if (button) onTap(button, event.timeStamp);
  };
  root.addEventListener('pointerdown', (event) => {
    if (event.isPrimary && event.button === 0) tap(event);
  });
  // A key or a screen reader presses without a pointer.
  root.addEventListener('click', (event) => {
    if (event.detail === 0) tap(event);
  });
}
