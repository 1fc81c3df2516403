// The one place where the page speaks up: a line, sometimes with a thing to do.

export class Notice {
  constructor(box) {
    this.box = box;
    this.line = box.querySelector('#notice-text');
    this.act = box.querySelector('#notice-do');
    this.shut = box.querySelector('#notice-close');
    this.topic = '';
    this.act.addEventListener('click', () => this.#end(this.onAct));
    this.shut.addEventListener('click', () => this.#end(this.onClose));
  }

  say(text, topic = '') { this.#show(text, topic, '', undefined, undefined); }

  /** Offers something to do; onClose runs when it is declined. */
  offer(text, label, onAct, onClose, topic = '') { this.#show(text, topic, label, onAct, onClose); }

  /** Takes back what was said on a topic. */
  clear(topic) {
    if (this.topic === topic && !this.box.hidden) this.box.hidden = true;
  }

  #show(text, topic, label, onAct, onClose) {
    this.topic = topic;
    this.onAct = onAct;
    this.onClose = onClose;
    this.line.textContent = text;
    this.act.textContent = label;
    this.act.hidden = !label;
    this.box.hidden = false;
  }

  #end(then) {
    this.box.hidden = true;
    then?.();
  }
}
