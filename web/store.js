// Jobs kept on this phone, in IndexedDB. A job is {id, rev, form}, and beside
// it turn, which orders the jobs by when they were last kept, and filed, the
// revision that a file holds. A write is compare-and-swap on rev, and other tabs
// hear of it. Of each job a line is kept beside it, with no more of its form than
// the list shows, so that a thousand are listed at once. Names carry the page's
// folder, since folders of one host share an origin.

/** The fields that the list of jobs shows, and searches. */
const LISTED = ['number', 'engine', 'owner', 'date.in', 'date.out', 'notes', 'archived'];

const SCOPE = new URL('.', document.baseURI).pathname;

/** Opens the store. Throws when the browser refuses storage. */
export async function openStore() {
  const request = indexedDB.open(`pintwelve ${SCOPE}`, 2);
  request.onupgradeneeded = ({ oldVersion }) => {
    const { result: db, transaction } = request;
    if (oldVersion < 1) {
      db.createObjectStore('jobs', { keyPath: 'id' });
      db.createObjectStore('state');
    }
    const lines = db.createObjectStore('lines', { keyPath: 'id' });
    transaction.objectStore('jobs').openCursor().onsuccess = ({ target: { result: cursor } }) => {
      if (!cursor) return;
      lines.put(lineOf(cursor.value));
      cursor.continue();
    };
  };
  const db = await done(request);
  // A newer page in another tab may need to change the store: don't hold it up.
  db.onversionchange = () => db.close();
  return new Store(db, new BroadcastChannel(`pintwelve ${SCOPE}`));
}

class Store {
  constructor(db, channel) {
    this.db = db;
    this.channel = channel;
  }

  /** Calls heard({id, rev}) when another tab has kept a job; rev 0: has deleted it. */
  listen(heard) {
    this.channel.onmessage = (event) => heard(event.data);
  }

  /** Calls lost() when the browser takes the store away, as when its data is cleared. */
  onLost(lost) {
    this.db.onclose = lost;
  }

  // Where the store is closed its methods reject, never throw: hence async.

  async get(id) {
    return done(this.db.transaction('jobs').objectStore('jobs').get(id));
  }

  async all() {
    return done(this.db.transaction('jobs').objectStore('jobs').getAll());
  }

  /** Of every job what the list shows. */
  async lines() {
    return done(this.db.transaction('lines').objectStore('lines').getAll());
  }

  /** The job that was on the bench last, or undefined. */
  async current() {
    const id = await done(this.db.transaction('state').objectStore('state').get('current'));
    return id === undefined ? undefined : this.get(id);
  }

  async setCurrent(id) {
    return done(this.db.transaction('state', 'readwrite').objectStore('state').put(id, 'current'));
  }

  /**
   * Keeps a job as the revision after rev. Gives {rev} when it is kept, or
   * {newer: job} when another tab has kept a later one.
   */
  async put(id, rev, form) {
    let outcome;
    await this.#change([id], ([kept], keep) => {
      if (kept && kept.rev !== rev) outcome = { newer: kept };
      else {
        outcome = { rev: rev + 1 };
        keep({ ...kept, id, rev: rev + 1, form });
      }
    });
    return outcome;
  }

  /** Deletes a job as it was at a revision; false when it has changed since. */
  async remove(id, rev) {
    let gone = false;
    await this.#change([id], ([kept], _, drop) => {
      gone = kept?.rev === rev;
      if (gone) drop(id);
    });
    return gone;
  }

  /**
   * Decides for many jobs at once what is to be kept: decide(kept, keep) gets
   * the jobs as they are kept under the ids, undefined where there is none.
   */
  settle(ids, decide) {
    return this.#change(ids, decide);
  }

  /** Notes that a file holds jobs at their revisions. */
  filed(records) {
    return this.#change(records.map(({ id }) => id), (kept, keep) => {
      kept.forEach((now, i) => { if (now) keep({ ...now, filed: records[i].rev }, now.turn); });
    });
  }

  #change(ids, decide) {
    return new Promise((resolve, reject) => {
      const work = this.db.transaction(['jobs', 'lines', 'state'], 'readwrite', { durability: 'strict' });
      const jobs = work.objectStore('jobs');
      const lines = work.objectStore('lines');
      const state = work.objectStore('state');
      const told = [];
      const found = [];
      let wanting = ids.length + 1;
      let turn = 0;
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
        const keep = (record, at = ++turn) => {
          jobs.put({ ...record, turn: at });
          lines.put(lineOf({ ...record, turn: at }));
          told.push({ id: record.id, rev: record.rev });
        };
        decide(found, keep, (id) => {
          jobs.delete(id);
          lines.delete(id);
          told.push({ id, rev: 0 });
        });
        state.put(turn, 'turn');
      };
      state.get('turn').onsuccess = ({ target }) => { turn = target.result ?? 0; got(); };
      ids.forEach((id, i) => { jobs.get(id).onsuccess = ({ target }) => { found[i] = target.result; got(); }; });
      work.oncomplete = () => {
        for (const message of told) this.channel.postMessage(message);
        resolve();
      };
      work.onabort = () => reject(failed ?? work.error ?? new Error('the write was given up'));
    });
  }
}

function lineOf({ id, rev, turn, filed, form }) {
  return { id, rev, turn, filed, form: Object.fromEntries(LISTED.filter((name) => form[name]).map((name) => [name, form[name]])) };
}

function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
