// Sets the model's disk beside the browser's own IndexedDB: the same store, asked
// the same by the same dice through two connections, must answer and hold the same.
import { openStore } from '../store.js';
import { Disk, World, dice } from './idb.js';

class Silent {
  postMessage() {}
}

/** Runs a seed on both; gives what each answered, a line a step, as [model's, browser's]. */
export async function twins(seed, steps) {
  const answers = [];
  for (const place of [model(seed), browser(seed)]) {
    const { getRandomValues } = crypto;
    const { now } = Date;
    Date.now = () => 1e12;
    const keys = dice(seed + 1);
    crypto.getRandomValues = (bytes) => bytes.map(() => Math.floor(keys() * 256));
    try {
      answers.push(await asked(await place.open(), place.wait, dice(seed), steps));
    } finally {
      crypto.getRandomValues = getRandomValues;
      Date.now = now;
    }
  }
  return answers;
}

function model(seed) {
  const world = new World(seed);
  const disk = new Disk(world);
  const wait = async (promise) => {
    let over = false;
    promise.finally(() => { over = true; }).catch(() => {});
    while (!over && await world.go(1));
    return promise;
  };
  const open = () => ['one', 'two'].reduce(async (before, name) => {
    const opening = openStore({ idb: disk.idbFor({ name }), Channel: Silent, folder: '/' });
    return [...await before, await wait(opening)];
  }, []);
  return { open, wait };
}

function browser(seed) {
  const open = async () => [await openStore({ Channel: Silent, folder: `/${seed}/` }), await openStore({ Channel: Silent, folder: `/${seed}/` })];
  return { open, wait: (promise) => promise };
}

async function asked(stores, wait, roll, steps) {
  const told = [];
  for (let i = 0; i < steps; i++) {
    // What is asked at once is answered in the order in which it was asked.
    const asks = Array.from({ length: 1 + Math.floor(roll() * 3) }, () => pick(roll, ASKS)(pick(roll, stores), roll));
    const asking = Promise.all(asks.map((ask) => ask.then((answer) => answer ?? null, ({ name, message }) => `${name}: ${message}`)));
    told.push(JSON.stringify(await wait(asking)));
  }
  return told;
}

const pick = (roll, list) => list[Math.floor(roll() * list.length)];
const idOf = (roll) => pick(roll, ['a', 'b', 'c']);
const small = (roll) => Math.floor(roll() * 4);
const jobOf = (roll) => ({ id: idOf(roll), born: pick(roll, ['x', 'x', 'y']), rev: small(roll) });
const formOf = (roll) => ({ number: `n${small(roll)}`, throw: `${small(roll)}` });

/** What is asked of a store; what isn't there, or is given up, is asked as well. */
const ASKS = [
  (store, roll) => store.put(jobOf(roll), formOf(roll)),
  (store, roll) => store.put(jobOf(roll), formOf(roll)),
  (store, roll) => store.get(idOf(roll)),
  (store) => store.all(),
  (store) => store.lines(),
  (store, roll) => store.setCurrent(idOf(roll)),
  (store) => store.current(),
  (store, roll) => store.remove(jobOf(roll), 1e9 * small(roll)),
  (store, roll) => store.bin(1e9 * small(roll)),
  (store, roll) => store.putBack(1 + small(roll)),
  (store, roll) => store.emptyBin([1 + small(roll)]),
  (store, roll) => store.mark([idOf(roll), idOf(roll)]),
  (store, roll) => store.filed([jobOf(roll)]),
  (store, roll) => {
    const record = { ...jobOf(roll), form: formOf(roll) };
    const givenUp = roll() < 0.5;
    return store.settle([record.id], (found, keep, drop, bin) => {
      keep(record);
      bin.add(record, 0, () => {});
      if (givenUp) throw new RangeError('given up');
    });
  },
];
