// The one place where the page speaks up, at the bottom edge: a line, sometimes
// with things to do. What was said last shows; what else waits comes after it, so
// that no way back is lost under another. What tells of the last action, and how
// to take it back, leaves at the next edit; the rest stays until it is closed.

const RING = 6; // px that show round what has the focus

export class Notice {
  #waiting = [];

  constructor(box) {
    this.box = box;
    this.line = box.querySelector('#notice-text');
    this.buttons = [box.querySelector('#notice-do'), box.querySelector('#notice-or')];
    this.more = box.querySelector('#notice-more');
    this.buttons.forEach((button, i) => button.addEventListener('click', () => this.#end(this.#waiting.at(-1)?.ways[i]?.act)));
    box.querySelector('#notice-close').addEventListener('click', () => this.#end());
    // By the Tab key alone: a field that is typed in must not move.
    document.addEventListener('keyup', ({ key, target }) => { if (key === 'Tab') this.uncover(target); });
  }

  /** Scrolls what has the focus out from under it; at the lathe, where it lies at the top, nothing scrolls. */
  uncover(focused) {
    const { top } = this.box.getBoundingClientRect();
    if (top <= 0 || this.box.contains(focused)) return;
    const at = focused.getBoundingClientRect();
    const under = at.bottom + RING - top;
    if (under > 0) scrollBy({ top: Math.min(under, at.top), behavior: 'instant' });
  }

  /** Says a line, in the place of what was said before on its topic. */
  say(text, topic = '') { this.#add({ text, topic, ways: [], passing: true }); }

  /** Offers up to two things to do, as {label, act}; with a topic, until it is cleared. */
  offer(text, ways, topic = '') { this.#add({ text, topic, ways, passing: false }); }

  /** Tells of what was just done, with the way to take it back. */
  did(text, label, act) { this.#add({ text, topic: 'did', ways: [{ label, act }], passing: true }); }

  /** Takes back what was said on a topic. */
  clear(topic) {
    this.#keep((each) => each.topic !== topic);
  }

  /** An edit was made: what told of the action before it leaves. */
  edited() {
    this.#keep((each) => !each.passing);
  }

  #keep(stays) {
    const left = this.#waiting.filter(stays);
    if (left.length === this.#waiting.length) return;
    this.#waiting = left;
    this.#show();
  }

  #add(entry) {
    this.#waiting = [...this.#waiting.filter(({ topic, text }) => (entry.topic ? topic !== entry.topic : text !== entry.text)), entry];
    this.#show();
  }

  #show() {
    const entry = this.#waiting.at(-1);
    if (entry) {
      this.line.textContent = entry.text;
      this.buttons.forEach((button, i) => {
        button.textContent = entry.ways[i]?.label ?? '';
        button.hidden = !entry.ways[i];
      });
      const more = this.#waiting.length - 1;
      this.more.textContent = more === 0 ? '' : more === 1 ? 'one more waits' : `${more} more wait`;
    }
    this.box.hidden = !entry;
  }

  #end(then) {
    this.#waiting.pop();
    this.#show();
    then?.();
  }
}
