// A short clip of both needles and the crank turning, as found and as left side
// by side, recorded from a canvas where the browser can.
import { bitmap } from './bitmap.js';
import { turnPicture } from './spin.js';

const WIDE = 1080;
const SECONDS = 8;
const HOURS_PER_SECOND = 12 / SECONDS; // one turn
const TYPES = ['video/mp4', 'video/webm'];

/** The type of clip that this browser records, or ''. */
export function clipType() {
  if (!HTMLCanvasElement.prototype.captureStream || !globalThis.MediaRecorder) return '';
  return TYPES.find((type) => MediaRecorder.isTypeSupported(type)) ?? '';
}

/**
 * Records a turn of the pictures in a part's answers: those that there are of
 * "found" and "left", over a line of words. Gives the clip's bytes.
 */
export async function clip(answers, words) {
  const root = document.createElement('div');
  const sides = ['found', 'left'].filter((which) => answers[`picture.${which}`]);
  root.innerHTML = sides.map((which) => answers[`picture.${which}`]).join('');
  const svgs = [...root.children];
  const canvas = document.createElement('canvas');
  const wide = Math.floor(WIDE / sides.length);
  const high = Math.max(...svgs.map((svg) => { const [, , w, h] = svg.getAttribute('viewBox').split(' '); return (wide * h) / w; }));
  canvas.width = WIDE;
  canvas.height = 2 * Math.ceil((high + 150) / 2); // some recorders want it even
  const pen = canvas.getContext('2d');
  const frame = async (hours) => {
    turnPicture(root, hours);
    const images = await Promise.all(svgs.map((svg) => bitmap(svg, wide)));
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.fillStyle = '#000';
    pen.textAlign = 'center';
    images.forEach((image, i) => {
      pen.font = 'bold 40px system-ui, sans-serif';
      pen.fillText(sides[i] === 'found' ? 'As found' : 'As left', (i + 0.5) * wide, 54);
      pen.drawImage(image, i * wide, 76);
    });
    pen.font = '34px system-ui, sans-serif';
    pen.fillText(words, WIDE / 2, canvas.height - 28, WIDE - 40);
  };
  await frame(0);
  return recorded(canvas, frame);
}

async function recorded(canvas, frame) {
  const type = clipType();
  const recorder = new MediaRecorder(canvas.captureStream(25), { mimeType: type, videoBitsPerSecond: 2e6 });
  const parts = [];
  recorder.addEventListener('dataavailable', ({ data }) => parts.push(data));
  const stopped = new Promise((then, fail) => {
    recorder.addEventListener('stop', then);
    recorder.addEventListener('error', ({ error }) => fail(error ?? new Error('the recording broke off')));
  });
  recorder.start();
  const from = performance.now();
  for (let spent = 0; spent < SECONDS; spent = (performance.now() - from) / 1000) {
    await frame(spent * HOURS_PER_SECOND);
    await new Promise((then) => { setTimeout(then, 20); });
  }
  recorder.stop();
  await stopped;
  return new Blob(parts, { type });
}
