// The first screen of the job on the bench as it last stood, kept so that the next
// start shows it at the first paint: the job itself comes later, from a store that
// takes its time, and its answers from a core that must start first.
const keyIn = (folder) => `pintwelve ${folder} screen`;

// Far more than a screen: what is longer is not worth a wait at the start.
const MOST = 200_000;

/** Keeps a screen {id, view, form, now, later}: a job's, with both parts of its answers. */
export function keepScreen(folder, screen) {
  try {
    const text = JSON.stringify(screen);
    if (text.length <= MOST) localStorage.setItem(keyIn(folder), text);
    else localStorage.removeItem(keyIn(folder));
  } catch {
    // Without it the next start shows an empty job first.
  }
}

/** The kept screen, if it is of the job that the tab remembers, or the tab remembers none; else null. */
export function lastScreen(folder, id) {
  try {
    const screen = JSON.parse(localStorage.getItem(keyIn(folder)));
    return screen && (!id || screen.id === id) ? screen : null;
  } catch {
    return null;
  }
}
