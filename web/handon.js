// What a page had not kept yet when it went: a write to the store takes its time,
// and a page that ends waits for none. The next start on the phone keeps it.
const keyIn = (folder, id = '') => `pintwelve ${folder} unkept ${id}`;

/** Leaves a job for the next start. */
export function handOn(memory, folder, { id, born, rev, base, form }) {
  try {
    memory.setItem(keyIn(folder, id), JSON.stringify({ id, born, rev, base, form }));
  } catch {
    // A browser that remembers nothing has told so.
  }
}

/** What pages have left, {id, born, rev, base, form} each. */
export function handedOn(memory, folder) {
  try {
    const keys = Array.from({ length: memory.length }, (_, i) => memory.key(i));
    return keys.filter((key) => key.startsWith(keyIn(folder))).map((key) => JSON.parse(memory.getItem(key)));
  } catch {
    return [];
  }
}

/** Forgets what was left of a job. */
export function forget(memory, folder, id) {
  try {
    memory.removeItem(keyIn(folder, id));
  } catch {
    // Nothing was left either.
  }
}
