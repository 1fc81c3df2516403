// A shop's mark from a picture file: decoded, bounded and encoded anew, so that
// what is kept is small and holds nothing but its points.
import { bytesOf } from './bitmap.js';

const MOST_FILE = 10e6; // bytes
const MOST_POINTS = 50e6;
const SIDES = [240, 160, 120]; // of the longer side kept, the largest that is small enough
const HEAD = 'data:image/png;base64,';

/** Letters of a mark as it is kept. */
const MOST_LETTERS = 90e3;

/** Gives a mark's picture as a text, or throws an Error that says what was given and what would do. */
export async function markOf(file) {
  if (file.size > MOST_FILE) throw new Error(`it has ${Math.ceil(file.size / 1e6)} MB, and up to ${MOST_FILE / 1e6} MB will do`);
  const image = await decoded(file);
  const [wide, high] = [image.naturalWidth, image.naturalHeight];
  if (!wide || !high) throw new Error('it has no size of its own: save it as a PNG or a JPEG');
  if (wide * high > MOST_POINTS) throw new Error(`it has ${wide} × ${high} points, and up to ${MOST_POINTS / 1e6} million will do`);
  for (const side of SIDES) {
    const text = await encoded(image, Math.min(1, side / Math.max(wide, high)));
    if (text.length <= MOST_LETTERS) return text;
  }
  throw new Error('it can’t be made small enough');
}

async function decoded(file) {
  const image = new Image();
  image.src = URL.createObjectURL(file);
  try {
    await image.decode();
  } catch {
    throw new Error('it can’t be read as a picture: a PNG, JPEG, WebP or SVG will do');
  } finally {
    URL.revokeObjectURL(image.src);
  }
  return image;
}

/** On paper: what is clear in it is white. */
async function encoded(image, scale) {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(image.naturalHeight * scale));
  const pen = canvas.getContext('2d');
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  const bytes = new Uint8Array(await (await bytesOf(canvas, 'image/png')).arrayBuffer());
  return HEAD + btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}

/** Tells whether a text, as from a file, is a mark as it is kept here: a PNG no larger than that. */
export function isMark(text) {
  if (typeof text !== 'string' || text.length > MOST_LETTERS || !/^data:image\/png;base64,[A-Za-z0-9+/]{40,}={0,2}$/.test(text)) return false;
  const head = atob(text.slice(HEAD.length, HEAD.length + 32));
  const number = (at) => [0, 1, 2, 3].reduce((sum, i) => 256 * sum + head.charCodeAt(at + i), 0);
  return head.startsWith('\x89PNG\r\n\x1a\n') && [16, 20].every((at) => number(at) >= 1 && number(at) <= SIDES[0]); // width and height, of the first chunk
}
