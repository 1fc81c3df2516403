// Jobs kept on this phone, in IndexedDB. A job is {id, born, rev, form}: born
// tells a job from another that was kept under its id after a delete. Beside it
// stand turn, which orders the jobs by when they were last kept, and day, only to
// be shown; past and shared, by which descent is told (descent.js); and filed, the
// revision that a file holds. A write is compare-and-swap on born and rev, and other tabs hear of it.
// Of each job a line is kept beside it, with no more of its form than the list
// shows, so that a thousand are listed at once. Names carry the page's folder,
// since folders of one host share an origin.
import { daysOf, over } from './bin.js';
import { copyOf, marked } from './descent.js';
import { FOLDER } from './folder.js';
import { newKey, sameForm } from './job.js';

/** The fields that the list of jobs shows, and searches. */
const LISTED = ['number', 'engine', 'owner', 'date.in', 'date.out', 'notes', 'archived'];

const VERSION = 3;
const STORES = { jobs: { keyPath: 'id' }, lines: { keyPath: 'id' }, state: {}, bin: { keyPath: 'key', autoIncrement: true } };

/** How often a store that was closed is opened anew before that counts as failed. */
const REOPENS = 10;

/** What takes the store longer counts as no answer, ms. */
const SOON_MS = 3000;

/** In a message: that the bin is another now. No job's id holds a stop. */
const BIN = 'bin.';

/** No job is written so often; a count beyond it came from elsewhere. */
export const MOST_REV = 1e9;

/** Opens the store. Rejects when the browser refuses storage. */
export async function openStore({ idb = indexedDB, Channel = BroadcastChannel, folder = FOLDER } = {}) {
  const name = `pintwelve ${folder}`;
  const store = new Store(() => opened(idb, name), new Channel(name));
  await store.db();
  return store;
}

async function opened(idb, name) {
  const request = idb.open(name, VERSION);
  request.onupgradeneeded = () => {
    const { result: db, transaction } = request;
    for (const [each, options] of Object.entries(STORES)) {
      if (!db.objectStoreNames.contains(each)) db.createObjectStore(each, options);
    }
    const lines = transaction.objectStore('lines');
    transaction.objectStore('jobs').openCursor().onsuccess = ({ target: { result: cursor } }) => {
      if (!cursor) return;
      const record = bounded(cursor.value);
      if (record !== cursor.value) cursor.update(record);
      lines.put(lineOf(record));
      cursor.continue();
    };
  };
  return done(request);
}

/** A file could once bring a count that no write adds to. */
function bounded(record) {
  return record.rev < MOST_REV ? record : { ...record, born: newKey(), rev: 1 };
}

class Store {
  #opening = null;

  constructor(open, channel) {
    this.open = open;
    this.channel = channel;
    this.lost = () => {};
  }

  /** The open database; one that the browser closed, as when it is cleared, is opened anew. */
  db() {
    this.#opening ??= this.#opened().catch((error) => {
      this.#opening = null;
      throw error;
    });
    return this.#opening;
  }

  async #opened() {
    const db = await this.open();
    // A newer page in another tab may need to change the store: don't hold it up.
    db.onversionchange = () => db.close();
    db.onclose = () => {
      this.#opening = this.#reopened();
      this.#opening.catch(() => {}); // told to whoever asks
      this.lost();
    };
    return db;
  }

  // While the browser still clears, it opens nothing, or never answers.
  async #reopened() {
    for (let tried = 1; ; tried++) {
      await new Promise((then) => setTimeout(then, 300 * tried)); // what opens before it has cleared is cleared too
      try {
        return await soon(this.#opened());
      } catch (error) {
        if (tried === REOPENS) {
          this.#opening = null;
          throw error;
        }
      }
    }
  }

  /** Calls heard({id: rev, …}) when another tab has kept jobs; rev 0: has deleted one. */
  listen(heard) {
    this.channel.onmessage = (event) => heard(event.data);
  }

  /** Calls lost() when the browser has taken the store away. */
  onLost(lost) {
    this.lost = lost;
  }

  async #read(name, ask) {
    const db = await this.db();
    return done(ask(db.transaction(name).objectStore(name)));
  }

  get(id) { return this.#read('jobs', (jobs) => jobs.get(id)); }

  all() { return this.#read('jobs', (jobs) => jobs.getAll()); }

  /** Of every job what the list shows. */
  lines() { return this.#read('lines', (lines) => lines.getAll()); }

  /** The job that was on a bench last, or undefined. */
  async current() {
    const id = await this.#read('state', (state) => state.get('current'));
    return id === undefined ? undefined : this.get(id);
  }

  async setCurrent(id) {
    const db = await this.db();
    return done(db.transaction('state', 'readwrite').objectStore('state').put(id, 'current'));
  }

  /**
   * Keeps a job as the revision after its own. Gives {rev} when it is kept, {newer:
   * job} when another tab has kept a later one, {other: job} when the one that is
   * kept under its id is another, read anew after a delete, and {gone: true} when
   * it was deleted: kept again it would count on beside what another tab keeps again.
   */
  async put({ id, born, rev }, form) {
    let outcome;
    await this.#change([id], ([kept], keep) => {
      if (!kept && rev > 0) outcome = { gone: true };
      else if (!kept || (kept.born === born && kept.rev === rev)) {
        outcome = { rev: rev + 1 };
        keep({ ...kept, id, born, rev: rev + 1, form });
      } else if (kept.born === born && kept.rev > rev) outcome = { newer: kept };
      else outcome = { other: kept };
    });
    return outcome;
  }

  /** Puts a job as it was at a revision into the bin; gives its key there, or 0 when it has changed since. */
  async remove({ id, born, rev }, now) {
    let key = 0;
    await this.#change([id], ([kept], keep, drop, bin) => {
      if (kept?.rev !== rev || kept.born !== born) return;
      drop(id);
      bin.add(kept, now, (added) => { key = added; });
    });
    return key;
  }

  /** What is in the bin, {key, record}, oldest first; what has had its time is gone. */
  async bin(now) {
    const [lying, before] = await Promise.all([this.#read('bin', (bin) => bin.getAll()), this.#read('state', (state) => state.get('days'))]);
    const days = daysOf(before, now);
    const out = lying.filter((each) => over(each, days, now));
    if (out.length > 0 || (lying.length > 0 && days.count !== before?.count)) {
      await this.#change([], (_, keep, drop, bin) => {
        bin.today(now);
        for (const { key } of out) bin.drop(key);
      });
    }
    return lying.filter((each) => !out.includes(each));
  }

  /** Puts a job back from the bin; where its id is taken by another state, as a copy. Gives {job, copied}. */
  async putBack(key) {
    const found = await this.#read('bin', (bin) => bin.get(key));
    if (!found) throw new Error('it is no longer in the bin');
    const { record } = found;
    let outcome;
    await this.#change([record.id], ([kept], keep, drop, bin) => {
      outcome = { job: record, copied: Boolean(kept) && !sameForm(kept.form, record.form) };
      if (outcome.copied) keep(copyOf(record, 'deleted'));
      else if (!kept) keep(record);
      bin.drop(key);
    });
    return outcome;
  }

  emptyBin(keys) {
    return this.#change([], (_, keep, drop, bin) => keys.forEach((key) => bin.drop(key)));
  }

  /**
   * Decides for many jobs at once what is to be kept: decide(kept, keep) gets
   * the jobs as they are kept under the ids, undefined where there is none.
   */
  settle(ids, decide) {
    return this.#change(ids, decide);
  }

  /** Gives jobs, all if no ids are named, each with a mark for its state, to go into a file. */
  async mark(ids) {
    const wanted = ids ?? (await this.lines()).map(({ id }) => id);
    const found = [];
    await this.#change(wanted, (kept, keep) => {
      for (const record of kept.filter(Boolean)) {
        const with_ = marked(record);
        found.push(with_);
        if (with_ !== record) keep(with_, record.turn, true);
      }
    });
    return found;
  }

  /** Notes that a file holds jobs at their revisions. */
  filed(records) {
    return this.#change(records.map(({ id }) => id), (kept, keep) => {
      kept.forEach((now, i) => { if (now?.born === records[i].born) keep({ ...now, filed: records[i].rev }, now.turn); });
    });
  }

  async #change(ids, decide) {
    const db = await this.db();
    return new Promise((resolve, reject) => {
      const work = db.transaction(['jobs', 'lines', 'state', 'bin'], 'readwrite', { durability: 'strict' });
      const jobs = work.objectStore('jobs');
      const lines = work.objectStore('lines');
      const state = work.objectStore('state');
      const deleted = work.objectStore('bin');
      const told = {};
      const found = [];
      let wanting = ids.length + 2;
      let turn = 0;
      let days;
      let failed = null;
      const got = () => {
        if (--wanting > 0) return;
        try {
          write();
        } catch (error) {
          failed = error;
          work.abort();
        }
      };
      const write = () => {
        // Without a turn of its own a job comes to be the one last worked on.
        const keep = (record, at, quiet = false) => {
          const kept = at === undefined ? { ...record, turn: ++turn, day: Date.now() } : { ...record, turn: at };
          jobs.put(kept);
          lines.put(lineOf(kept));
          if (!quiet) told[record.id] = record.rev;
        };
        const drop = (id) => {
          jobs.delete(id);
          lines.delete(id);
          told[id] = 0;
        };
        const today = (now) => {
          days = daysOf(days, now);
          state.put(days, 'days');
          return days;
        };
        decide(found, keep, drop, {
          today,
          add: (record, now, added) => {
            deleted.add({ record, gone: now, days: today(now).count }).onsuccess = ({ target }) => added(target.result);
          },
          drop: (key) => {
            deleted.delete(key);
            told[BIN] = 0;
          },
        });
        state.put(turn, 'turn');
      };
      const ask = (request, take) => { request.onsuccess = ({ target }) => { take(target.result); got(); }; };
      ask(state.get('turn'), (result) => { turn = result ?? 0; });
      ask(state.get('days'), (result) => { days = result; });
      ids.forEach((id, i) => ask(jobs.get(id), (result) => { found[i] = result; }));
      work.oncomplete = () => {
        if (Object.keys(told).length > 0) this.channel.postMessage(told);
        resolve();
      };
      work.onabort = () => reject(failed ?? work.error ?? new Error('the write was given up'));
    });
  }
}

function lineOf({ id, born, rev, turn, day, filed, form }) {
  return { id, born, rev, turn, day, filed, form: Object.fromEntries(LISTED.filter((name) => form[name]).map((name) => [name, form[name]])) };
}

/** Resolves as a promise of the store's does, if it does soon: nothing waits long for the store. */
export function soon(promise) {
  return Promise.race([promise, new Promise((_, reject) => setTimeout(() => reject(new Error('its store does not answer')), SOON_MS))]);
}

function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
