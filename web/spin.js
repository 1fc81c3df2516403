// Turns the pictures of the dials and the crank: by the slider, or by itself
// where the person has not asked for less motion.

const HOURS_PER_SECOND = 1.5;

export class Spin {
  constructor(section) {
    this.section = section;
    this.slider = section.querySelector('#turned');
    this.button = section.querySelector('#turn-itself');
    this.still = matchMedia('(prefers-reduced-motion: reduce)');
    this.slider.addEventListener('input', () => { this.stop(); this.turn(); });
    this.button.addEventListener('click', () => (this.frame ? this.stop() : this.start()));
    this.still.addEventListener('change', () => { this.stop(); this.show(); });
  }

  /** The pictures have been drawn anew. */
  show() {
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

  turn() { turnPicture(this.section, Number(this.slider.value)); }
}

/** Turns the pictures under an element to an hour; each part carries how it moves. */
export function turnPicture(root, hours) {
  const angle = (Math.PI / 6) * hours;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  for (const part of root.querySelectorAll('.turns')) {
    const { swing, lie } = part.dataset;
    part.setAttribute('transform', swing ? needle(swing, angle) : lie ? pose(lie, cos, sin) : `rotate(${30 * hours})`);
  }
}

function needle(swing, angle) {
  const [e, high, step] = numbers(swing);
  return `rotate(${e * Math.cos((Math.PI / 6) * high + angle) * step})`;
}

/** Of the crank from the side: what is out rises and falls, a pin goes round. */
function pose(lie, cos, sin) {
  const [t, n, slopeT, slopeN] = numbers(lie);
  return `translate(0 ${n * sin - t * cos}) rotate(${Math.atan(slopeN * sin - slopeT * cos) * 180 / Math.PI})`;
}

function numbers(text) { return text.split(' ').map(Number); }
