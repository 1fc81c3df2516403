// The core's pictures as bitmaps, for a canvas: an image knows nothing of the
// page's style sheets, so that the looks go with it, black on white.

const PAPER = { '--p': '#fff', '--i': '#000', '--m': '#0b3f9c', '--g': '#333' };
const LOOKS = [
  'fill', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-opacity', 'stroke-linejoin',
  'paint-order', 'font-weight', 'font-style', 'font-family',
];

/** A picture of the core's, so many pixels wide; it resolves once it can be drawn. */
export async function bitmap(svg, width) {
  const own = svg.cloneNode(true);
  const [, , w, h] = own.getAttribute('viewBox').split(' ').map(Number);
  own.setAttribute('width', width);
  own.setAttribute('height', Math.round((width * h) / w));
  dress(own);
  const image = new Image();
  const url = URL.createObjectURL(new Blob([new XMLSerializer().serializeToString(own)], { type: 'image/svg+xml' }));
  image.src = url;
  await image.decode().finally(() => URL.revokeObjectURL(url));
  return image;
}

/** Writes the looks of the page's style sheets into a picture as attributes. */
function dress(svg) {
  const root = document.createElement('div');
  root.append(svg);
  for (const { selectorText, style } of looks()) {
    for (const element of root.querySelectorAll(selectorText)) {
      for (const name of LOOKS) {
        const value = style.getPropertyValue(name).trim();
        if (value) element.setAttribute(name, value.replace(/var\((--\w)\)/, (_, colour) => PAPER[colour]));
      }
    }
  }
  svg.setAttribute('font-family', 'system-ui, sans-serif'); // there is nothing to inherit it from
}

function looks() {
  return [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]).filter((rule) => rule.selectorText?.startsWith('.dw'));
}

/** A canvas as a file's bytes. */
export function bytesOf(canvas, type) {
  return new Promise((then, fail) => {
    canvas.toBlob((blob) => (blob ? then(blob) : fail(new Error('the browser makes no picture of it'))), type);
  });
}
