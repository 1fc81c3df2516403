// Puts SVG text on the page. To draw the whole clock face anew at each keystroke
// costs more than all the rest of an answer, and most of it stays as it was: so
// only what differs is changed.

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
    else this.change(was);
    if (this.element.hidden !== !svg) this.element.hidden = !svg;
  }

  change(was) {
    const root = this.element.firstElementChild;
    const [open, ...parts] = this.parts;
    const close = parts.pop();
    const changed = parts.flatMap((part, i) => (part === was[i + 1] ? [] : [i]));
    const sheet = document.createElement('template');
    sheet.innerHTML = open + changed.map((i) => parts[i]).join('') + close;
    const fresh = [...sheet.content.firstElementChild.children];
    while (root.children.length > parts.length) root.lastElementChild.remove();
    changed.forEach((i, n) => {
      if (root.children[i]) match(root.children[i], fresh[n]);
      else root.append(fresh[n]);
    });
  }
}

/** Makes a node like another, keeping what it can: a new node costs a style and a place. */
function match(node, like) {
  if (node.nodeName !== like.nodeName || node.childNodes.length !== like.childNodes.length) {
    node.replaceWith(like);
  } else if (node.nodeType === Node.TEXT_NODE) {
    if (node.data !== like.data) node.data = like.data;
  } else {
    matchAttributes(node, like);
    const fresh = [...like.childNodes];
    [...node.childNodes].forEach((child, i) => match(child, fresh[i]));
  }
}

function matchAttributes(node, like) {
  for (const { name, value } of like.attributes) {
    if (node.getAttribute(name) !== value) node.setAttribute(name, value);
  }
  for (const name of node.getAttributeNames()) {
    if (!like.hasAttribute(name)) node.removeAttribute(name);
  }
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
