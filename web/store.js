// Jobs kept on this phone, in IndexedDB. A job is {id, rev, form}; a write is
// compare-and-swap on rev, and other tabs hear of it. Names carry the page's
// folder, since folders of one host share an origin.

const SCOPE = new URL('.', document.baseURI).pathname;

/** Opens the store. Throws when the browser refuses storage. */
export async function openStore() {
  const request = indexedDB.open(`pintwelve ${SCOPE}`, 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore('jobs', { keyPath: 'id' });
    request.result.createObjectStore('state');
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

  /** Calls heard({id, rev}) when another tab has kept a job. */
  listen(heard) {
    this.channel.onmessage = (event) => heard(event.data);
  }

  get(id) {
    return done(this.db.transaction('jobs').objectStore('jobs').get(id));
  }

  all() {
    return done(this.db.transaction('jobs').objectStore('jobs').getAll());
  }

  /** The job that was on the bench last, or undefined. */
  async current() {
    const id = await done(this.db.transaction('state').objectStore('state').get('current'));
    return id === undefined ? undefined : this.get(id);
  }

  setCurrent(id) {
    return done(this.db.transaction('state', 'readwrite').objectStore('state').put(id, 'current'));
  }

  /**
   * Keeps a job as the revision after rev. Gives {rev} when it is kept, or
   * {newer: job} when another tab has kept a later one.
   */
  put(id, rev, form) {
    return new Promise((resolve, reject) => {
      const work = this.db.transaction('jobs', 'readwrite', { durability: 'strict' });
      const jobs = work.objectStore('jobs');
      let outcome;
      jobs.get(id).onsuccess = ({ target: { result: kept } }) => {
        if (kept && kept.rev !== rev) {
          outcome = { newer: kept };
          return;
        }
        outcome = { rev: rev + 1 };
        jobs.put({ id, rev: rev + 1, form });
      };
      work.oncomplete = () => {
        if (outcome.rev) this.channel.postMessage({ id, rev: outcome.rev });
        resolve(outcome);
      };
      work.onabort = () => reject(work.error ?? new Error('the write was given up'));
    });
  }
}

function done(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
