// The job sheet as one picture: its words and the core's pictures laid out on a
// canvas as they stand on the page, black on white.
import { bitmap, bytesOf } from './bitmap.js';

const WIDE = 1080;
const EDGE = 48;
const MOST_HIGH = 12000; // beyond that some phones make no picture
const FAMILY = 'system-ui, sans-serif';

/** The sheet's paper as a PNG; the owner stands in it only where that is wanted. */
export async function sheetPicture(paper, { owner }) {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  const blocks = (await Promise.all([...paper.children].map((child) => blocksOf(child, owner)))).flat();
  let y = EDGE;
  const laid = blocks.map((block) => {
    const at = y + block.above;
    const { lines, high } = block.image ? { high: block.high } : wrapped(pen, block);
    y = block.beside ? y : at + high;
    return { ...block, at, lines };
  });
  canvas.width = WIDE;
  canvas.height = Math.min(y + EDGE, MOST_HIGH);
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.strokeRect(EDGE / 2, EDGE / 2, WIDE - EDGE, canvas.height - EDGE);
  pen.fillStyle = '#000';
  for (const block of laid) draw(pen, block);
  return bytesOf(canvas, 'image/png');
}

/** What an element comes to: texts with their size, images with their place. */
async function blocksOf(element, owner) {
  if (element.hidden || element.closest('[hidden]') || element.id === 'paper-qr' || element.tagName === 'TEMPLATE') return [];
  if (element.matches('.letterhead')) return letterhead(element);
  if (element.matches('.two-faces')) return faces(element);
  if (element.matches('.facts')) return facts(element, owner);
  if (element.tagName === 'TABLE') return [...element.rows].filter((row) => !row.hidden).map(rowText);
  if (element.tagName === 'DIV') return (await Promise.all([...element.children].map((child) => blocksOf(child, owner)))).flat();
  const text = element.innerText.trim();
  if (!text) return [];
  if (element.tagName === 'H2') return [textBlock(text, 44, 'bold', 0)];
  if (element.tagName === 'H3') return [textBlock(text, 32, 'bold', 28)];
  if (element.matches('.plainly')) return [textBlock(text, 36, 'bold', 20)];
  return [textBlock(text, 28, element.matches('.strong') ? 'bold' : 'normal', 10)];
}

function textBlock(text, size, weight, above, x = EDGE) {
  return { text, font: `${weight} ${size}px ${FAMILY}`, size, above, x };
}

function facts(element, owner) {
  const told = [...element.children].filter((fact) => !fact.hidden && (owner || fact.dataset.if !== 'sheet.owner'));
  return told.length ? [textBlock(told.map((fact) => fact.innerText.trim()).join('  ·  '), 28, 'normal', 10)] : [];
}

async function letterhead(element) {
  const mark = await markIn(element);
  const words = [...element.querySelectorAll('p')].filter((p) => !p.hidden && p.innerText.trim());
  const x = mark ? EDGE + 140 : EDGE;
  const blocks = words.map((p, i) => textBlock(p.innerText.trim(), i ? 30 : 38, i ? 'normal' : 'bold', i ? 2 : 12, x));
  if (mark) blocks.unshift({ image: mark, above: 0, high: 120, x: EDGE, beside: true });
  const written = blocks.reduce((sum, { above, size = 0 }) => sum + above + 1.25 * size, 0);
  return [...blocks, { text: '', font: `10px ${FAMILY}`, size: 0, above: mark ? Math.max(10, 132 - written) : 16, x: EDGE }];
}

/** The shop's mark, 120 high at most and wide: its picture, or else its letters. */
async function markIn(element) {
  const picture = element.querySelector('img:not([hidden])');
  const letters = element.querySelector('svg');
  if (!picture) return letters && bitmap(letters, 120);
  await picture.decode();
  const canvas = document.createElement('canvas');
  const scale = 120 / Math.max(picture.naturalWidth, picture.naturalHeight);
  canvas.width = Math.max(1, Math.round(picture.naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(picture.naturalHeight * scale));
  canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas;
}

/** Both clock faces, beside one another. */
async function faces(element) {
  const figures = [...element.children].filter((figure) => !figure.hidden && figure.querySelector('svg'));
  const wide = Math.floor((WIDE - 2 * EDGE) / 2);
  const images = await Promise.all(figures.map((figure) => bitmap(figure.querySelector('svg'), wide - 24)));
  return figures.flatMap((figure, i) => {
    const x = EDGE + i * wide;
    const last = i === figures.length - 1;
    return [
      { ...textBlock(figure.querySelector('figcaption').innerText, 30, 'bold', 20, x + 24), beside: true },
      { image: images[i], above: 64, high: Math.max(...images.map(({ height }) => height)), x, beside: !last },
    ];
  });
}

/** A row of a table: its cells in columns. */
function rowText(row) {
  const cells = [...row.cells].filter((cell) => !cell.hidden).map((cell) => cell.innerText.trim());
  return { ...textBlock('', 28, row.parentElement.tagName === 'THEAD' ? 'bold' : 'normal', 8), cells };
}

function wrapped(pen, { text, cells, font, size, x }) {
  pen.font = font;
  const parts = cells ?? [text];
  const room = cells ? (WIDE - 2 * EDGE) / cells.length - 16 : WIDE - EDGE - x;
  const lines = parts.map((part) => part.split('\n').flatMap((line) => wrap(pen, line, room)));
  return { lines, high: size ? Math.max(...lines.map((each) => each.length)) * 1.25 * size : 0 };
}

function wrap(pen, text, room) {
  const lines = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean).flatMap((each) => pieces(pen, each, room))) {
    const longer = line ? `${line} ${word}` : word;
    if (line && pen.measureText(longer).width > room) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line ? [...lines, line] : lines;
}

/** A word that is wider than a line, cut. */
function pieces(pen, word, room) {
  const all = [];
  let piece = '';
  for (const letter of word) {
    if (piece && pen.measureText(piece + letter).width > room) {
      all.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...all, piece];
}

function draw(pen, { image, lines, cells, font, size, x, at }) {
  if (image) {
    pen.drawImage(image, x, at);
    return;
  }
  pen.font = font;
  const column = cells ? (WIDE - 2 * EDGE) / cells.length : 0;
  lines.forEach((each, i) => each.forEach((line, n) => pen.fillText(line, x + i * column, at + (1.25 * n + 1) * size)));
}
