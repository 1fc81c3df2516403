// Turns the pictures of both dials and the crank: by the slider, or by itself
// where the person has not asked for less motion.

const HOURS_PER_SECOND = 1.5;

export class Spin {
  constructor(section) {
    this.section = section;
    this.slider = section.querySelector('#turned');
    this.button = section.querySelector('#turn-itself');
    this.still = matchMedia('(prefers-reduced-motion: reduce)');
    this.swings = {};
    this.slider.addEventListener('input', () => { this.stop(); this.turn(); });
    this.button.addEventListener('click', () => (this.frame ? this.stop() : this.start()));
    this.still.addEventListener('change', () => { this.stop(); this.show(this.swings); });
  }

  /** Takes the swing and the high hour of each dial: "spin.found.drive" → "1.5 3.2". */
  show(answers) {
    this.swings = answers;
    this.button.hidden = this.still.matches;
    this.turn();
  }

  start() {
    let last = performance.now();
    const go = (now) => {
      if (this.section.closest('[hidden]')) {
        this.stop(); // another step shows
        return;
      }
      this.slider.value = (Number(this.slider.value) + ((now - last) / 1000) * HOURS_PER_SECOND) % 12;
      last = now;
      this.turn();
      this.frame = requestAnimationFrame(go);
    };
    this.frame = requestAnimationFrame(go);
    this.button.setAttribute('aria-pressed', 'true');
  }

  stop() {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.button.setAttribute('aria-pressed', 'false');
  }

  turn() {
    const hours = Number(this.slider.value);
    for (const which of ['found', 'left']) {
      this.section.querySelector(`#${which}-crank`)?.setAttribute('transform', `rotate(${30 * hours})`);
      for (const [side, needle] of [['drive', 'd'], ['timing', 't']]) this.needle(which, side, needle, hours);
    }
  }

  needle(which, side, letter, hours) {
    const needle = this.section.querySelector(`#${which}-needle-${letter}`);
    const swing = this.swings[`spin.${which}.${side}`];
    if (!needle || !swing) return;
    const [e, high] = swing.split(' ').map(Number);
    const reading = e * Math.cos((Math.PI / 6) * (high + hours));
    needle.setAttribute('transform', `rotate(${reading * needle.dataset.step})`);
  }
}
