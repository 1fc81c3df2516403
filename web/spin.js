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

  turn() { turnPicture(this.section, this.swings, Number(this.slider.value)); }
}

/** Turns the pictures under an element, "found" and "left", to an hour; answers tell how each dial swings. */
export function turnPicture(root, answers, hours) {
  for (const which of ['found', 'left']) {
    const part = (name) => root.querySelector(`#${which}-${name}`);
    part('crank')?.setAttribute('transform', `rotate(${30 * hours})`);
    if (part('crankpin')) bend(part, (Math.PI / 6) * hours);
    for (const [side, letter] of [['drive', 'd'], ['timing', 't']]) needle(part(`needle-${letter}`), answers[`spin.${which}.${side}`], hours);
  }
}

/** Turns the crank from the side: halves that are out rise and fall, the pin goes round. */
function bend(part, angle) {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const ups = ['half-a', 'half-b'].map((name) => {
    const [t, n, slopeT, slopeN] = numbers(part(name).dataset.lie);
    const up = t * cos - n * sin;
    pose(part(name), up, slopeT * cos - slopeN * sin);
    return up;
  });
  const [throws, between] = numbers(part('crankpin').dataset.lie);
  pose(part('crankpin'), throws * cos + (ups[0] + ups[1]) / 2, (ups[1] - ups[0]) / between);
}

function needle(hand, swing, hours) {
  if (!hand || !swing) return;
  const [e, high] = numbers(swing);
  hand.setAttribute('transform', `rotate(${e * Math.cos((Math.PI / 6) * (high + hours)) * hand.dataset.step})`);
}

function numbers(text) { return text.split(' ').map(Number); }

function pose(part, up, rise) {
  part.setAttribute('transform', `translate(0 ${-up}) rotate(${-Math.atan(rise) * 180 / Math.PI})`);
}
