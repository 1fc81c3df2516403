// Puts SVG text on the page. To draw the whole clock face anew at each keystroke
// costs more than all the rest of an answer, and most of it stays as it was: so
// only what differs is changed, and where that is figures alone, without having
// the browser read any of it.

const TAGS = /(<[^>]*>)/;
const NAME = /^<\/?\w+/;
const ATTRIBUTES = / ([\w:-]+)="([^"]*)"/g;

export class Picture {
  constructor(element) {
    this.element = element;
    this.parts = [];
  }

  /** Shows a picture of the core's; hides the element while there is none. */
  show(svg) {
    if (svg === this.svg) return;
    this.svg = svg;
    const was = this.parts;
    this.parts = partsOf(svg);
    if (!svg || was[0] !== this.parts[0]) this.element.innerHTML = svg;
    else this.change(was.slice(1, -1), this.parts.slice(1, -1));
    if (this.element.hidden !== !svg) this.element.hidden = !svg;
  }

  change(was, parts) {
    const root = this.element.firstElementChild;
    while (root.children.length > parts.length) root.lastElementChild.remove();
    const nodes = [...root.children];
    parts.forEach((part, i) => {
      if (part === was[i] || (nodes[i] && rewrite(nodes[i], was[i], part))) return;
      if (nodes[i]) nodes[i].outerHTML = part;
      else root.insertAdjacentHTML('beforeend', part);
    });
  }
}

/** Writes into a part's node what differs of its figures and words; false where more does. */
function rewrite(node, was, part) {
  const [before, after] = [was, part].map((text) => text.split(TAGS)); // texts and tags in turn
  const alike = (piece, i) => piece === before[i] || (kind(piece) === kind(before[i]) && !piece.includes('&'));
  if (before.length !== after.length || !after.every(alike)) return false;
  const nodes = document.createTreeWalker(node, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
  after.forEach((piece, i) => {
    if (!piece || piece.startsWith('</')) return;
    if (piece !== before[i]) write(nodes.currentNode, before[i], piece);
    nodes.nextNode();
  });
  return true;
}

/** What must be the same for a piece to be written over another: its name, and whether it ends itself. */
function kind(piece) {
  return piece.startsWith('<') ? piece.match(NAME) + piece.endsWith('/>') : piece !== '';
}

function write(node, was, piece) {
  if (node.nodeType === Node.TEXT_NODE) {
    node.data = piece;
    return;
  }
  const gone = attributesOf(was);
  for (const [name, value] of attributesOf(piece)) {
    if (gone.get(name) !== value) node.setAttribute(name, value);
    gone.delete(name);
  }
  for (const name of gone.keys()) node.removeAttribute(name);
}

function attributesOf(tag) {
  return new Map([...tag.matchAll(ATTRIBUTES)].map(([, name, value]) => [name, value]));
}

/** Cuts a picture into its root's opening tag, each child whole, and its closing tag. */
function partsOf(svg) {
  const parts = [];
  let depth = 0;
  let from = 0;
  for (const { 0: tag, index } of svg.matchAll(/<[^>]*>/g)) {
    const opens = tag[1] !== '/';
    if (!opens) depth--;
    else if (!tag.endsWith('/>')) depth++;
    if (depth > 1 || (depth === 1 && opens && from && !tag.endsWith('/>'))) continue;
    parts.push(svg.slice(from, from = index + tag.length));
  }
  return parts;
}
