// The clock face as an input: a tap or a drag on it names an hour.

/** Calls onPoint(x, y, first) in the picture's own units while a finger is down on it; first as it comes down. */
export function watchFace(box, onPoint) {
  const point = (event, first) => {
    const svg = box.querySelector('svg');
    if (!svg) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    onPoint(at.x, at.y, first);
  };
  box.addEventListener('pointerdown', (event) => {
    if (!event.isPrimary || event.button !== 0) return;
    event.preventDefault();
    // Captured by the box: the picture under the finger is drawn anew.
    box.setPointerCapture(event.pointerId);
    point(event, true);
  });
  box.addEventListener('pointermove', (event) => {
    if (box.hasPointerCapture(event.pointerId)) point(event, false);
  });
}
