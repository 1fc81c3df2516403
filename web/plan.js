// The planning of holes, which can take long: in a worker, with a button that
// stops it.

export class Plan {
  /** section is the step's. */
  constructor(section) {
    this.startButton = section.querySelector('#plan-holes');
    this.stopButton = section.querySelector('#plan-stop');
    this.line = section.querySelector('#plan-said');
  }

  /**
   * Plans for a form; done(changes) is called with the fields that hold the
   * holes, unless it is stopped, and gives what there is to say against them.
   */
  start(form, key, done) {
    this.stop('Planning …');
    const worker = new Worker('main.js', { type: 'module' });
    this.worker = worker;
    this.#busy(true);
    worker.addEventListener('message', ({ data }) => {
      const { fault, 'say.plan.said': said = '', ...changes } = data;
      this.stop(fault ? wrong(fault) : done(changes) || said);
    });
    worker.addEventListener('error', ({ message }) => this.stop(wrong(message || 'the planner did not load')));
    worker.postMessage({ form, key });
  }

  /** Ends what runs, and says why. */
  stop(why = '') {
    this.worker?.terminate();
    this.worker = null;
    this.#busy(false);
    this.say(why);
  }

  /** Ends what runs, as the person wants it. */
  giveUp() { this.stop('Stopped; the holes are as they were.'); }

  say(words) { this.line.textContent = words; }

  #busy(busy) {
    this.startButton.hidden = busy;
    this.stopButton.hidden = !busy;
  }
}

function wrong(why) {
  return `The planning went wrong (${why}). The holes are as they were.`;
}

/** Prints the template of the holes alone. */
export function printTemplate() {
  const page = document.documentElement;
  page.classList.add('print-template');
  addEventListener('afterprint', () => page.classList.remove('print-template'), { once: true });
  print();
}
