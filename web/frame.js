// What can wait comes after the frame that shows an answer: of a slow phone it is
// out by then, and a fast thumb's next key comes first.
const FRAME_MS = 40;
const UNSEEN_MS = 300; // where no frame comes

/**
 * Calls then() once the frame of what has just changed is out, and at once when
 * the page goes out of sight. Gives what calls it off.
 */
export function afterFrame(then) {
  let timer = setTimeout(go, UNSEEN_MS);
  const frame = requestAnimationFrame(() => {
    clearTimeout(timer);
    timer = setTimeout(go, FRAME_MS);
  });
  document.addEventListener('visibilitychange', go);
  function off() {
    clearTimeout(timer);
    cancelAnimationFrame(frame);
    document.removeEventListener('visibilitychange', go);
  }
  function go() {
    off();
    then();
  }
  return off;
}

/** Waits until the frame of what has just changed is out. */
export function frameOut() { return new Promise(afterFrame); }
