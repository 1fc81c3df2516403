// A world of phones in one page, in which a run of dice decides what comes next:
// each phone has a disk that behaves as IndexedDB does in what the store uses of
// it (transactions one after the other in the order they were asked for, rolled
// back whole, committed when nothing more is asked of them; values cloned), and
// channels between its tabs. Tabs are killed, writes fail, the store is cleared.

export class World {
  constructor(seed) {
    this.dice = dice(seed);
    this.queues = new Map(); // of each owner the events that wait, in order
    this.timers = [];
    this.steps = 0;
  }

  pick(list) { return list[Math.floor(this.dice() * list.length)]; }

  /** Has something happen to a tab later; events of one kind of one tab keep their order. */
  later(tab, kind, act) {
    const key = `${tab.name} ${kind}`;
    if (!this.queues.has(key)) this.queues.set(key, []);
    this.queues.get(key).push({ tab, act });
  }

  /** Lets up to so many events happen; false when none was left. */
  async go(most = Infinity) {
    for (let i = 0; i < most; i++) {
      await rest();
      if (++this.steps > 20000) throw new Error('it goes on for ever');
      const ready = [...this.queues.keys()].filter((key) => this.queues.get(key).length > 0);
      if (ready.length === 0 && !this.fireTimer()) return false;
      if (ready.length === 0) continue;
      const { tab, act } = this.queues.get(this.pick(ready)).shift();
      if (!tab.dead) act();
    }
    return true;
  }

  /** Timers stand still while anything else happens. */
  fireTimer() {
    const timer = this.timers.shift();
    timer?.act();
    return Boolean(timer);
  }

  setTimeout(act) {
    const timer = { act };
    this.timers.push(timer);
    return timer;
  }

  clearTimeout(timer) {
    this.timers = this.timers.filter((each) => each !== timer);
  }
}

/** Lets every promise that can be kept be kept. */
async function rest() {
  for (let i = 0; i < 40; i++) await null;
}

/** mulberry32: numbers from 0 to 1 by a seed. */
export function dice(seed) {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** What one phone keeps, and the order of those who ask for it. */
export class Disk {
  constructor(world) {
    this.world = world;
    this.stores = null; // until the first page has made them
    this.waiting = [];
    this.connections = new Set();
    this.channels = new Set();
    this.writes = 0;
    this.faults = new Map(); // by the number of the write: what befalls it
    this.failing = false;
  }

  /** What a tab sees as indexedDB. */
  idbFor(tab) {
    return {
      open: () => {
        const request = {};
        this.world.later(tab, 'db', () => {
          const db = new Connection(this, tab);
          request.result = db;
          const opened = () => request.onsuccess?.({ target: request });
          if (this.stores) {
            opened();
            return;
          }
          this.stores = {};
          request.transaction = new Transaction(db, []);
          request.transaction.oncomplete = opened;
          this.ask(request.transaction);
          request.onupgradeneeded();
        });
        return request;
      },
    };
  }

  channelFor(tab) {
    const disk = this;
    return class {
      constructor() {
        this.tab = tab;
        disk.channels.add(this);
      }

      postMessage(message) {
        const data = structuredClone(message);
        for (const other of disk.channels) {
          if (other !== this && !other.tab.dead) disk.world.later(other.tab, 'message', () => other.onmessage?.({ data }));
        }
      }
    };
  }

  ask(transaction) {
    this.waiting.push(transaction);
    if (this.waiting.length === 1) this.#begin();
  }

  #begin() {
    const [next] = this.waiting;
    if (!next) return;
    if (next.db.tab.dead || next.ended) this.end(next);
    else next.begin();
  }

  end(transaction) {
    transaction.ended = true;
    const first = this.waiting[0] === transaction;
    this.waiting = this.waiting.filter((each) => each !== transaction);
    if (first) this.#begin();
  }

  kill(tab) {
    tab.dead = true;
    for (const channel of this.channels) if (channel.tab === tab) this.channels.delete(channel);
    for (const transaction of this.waiting.filter(({ db }) => db.tab === tab)) this.end(transaction);
  }

  /** The browser clears what the phone keeps. */
  clear() {
    this.stores = null;
    const { waiting } = this;
    this.waiting = [];
    for (const transaction of waiting) transaction.undo('AbortError', 'the data was cleared');
    for (const db of this.connections) {
      db.closed = true;
      this.world.later(db.tab, 'db', () => db.onclose?.());
    }
    this.connections.clear();
  }

  rows(name) { return [...(this.stores?.[name]?.rows.values() ?? [])]; }
}

class Connection {
  constructor(disk, tab) {
    Object.assign(this, { disk, tab, closed: false });
    disk.connections.add(this);
  }

  get objectStoreNames() { return { contains: (name) => Object.hasOwn(this.disk.stores, name) }; }

  createObjectStore(name, { keyPath, autoIncrement = false } = {}) {
    this.disk.stores[name] = { keyPath, autoIncrement, next: 1, rows: new Map() };
  }

  transaction(names, mode = 'readonly') {
    if (this.closed) throw new DOMException('the connection is closed', 'InvalidStateError');
    for (const name of [names].flat()) if (!this.disk.stores[name]) throw new DOMException(`no ${name}`, 'NotFoundError');
    const transaction = new Transaction(this, [names].flat(), mode);
    this.disk.ask(transaction);
    return transaction;
  }

  close() { this.closed = true; this.disk.connections.delete(this); }
}

class Transaction {
  constructor(db, names, mode) {
    Object.assign(this, { db, names, mode, error: null, ended: false, requests: [], over: new Map(), next: new Map() });
  }

  begin() {
    if (this.mode === 'readwrite') {
      const { disk } = this.db;
      this.fault = disk.faults.get(++disk.writes) ?? (disk.failing ? 'fails' : undefined);
    }
    this.#later(() => this.#step());
  }

  #later(act) {
    this.db.disk.world.later(this.db.tab, 'db', () => { if (!this.ended) act(); });
  }

  objectStore(name) {
    const ask = (work) => {
      if (this.ended) throw new DOMException('the transaction has ended', 'TransactionInactiveError');
      const request = { work, transaction: this };
      this.requests.push(request);
      return request;
    };
    const store = () => this.db.disk.stores[name];
    const key = (value, given) => given ?? value[store().keyPath];
    const at = (k) => `${name} ${JSON.stringify(k)}`;
    const read = (k) => (this.over.has(at(k)) ? this.over.get(at(k)).value : store().rows.get(k));
    const all = () => {
      const rows = new Map(store().rows);
      for (const each of this.over.values()) {
        if (each.name !== name) continue;
        if (each.value === undefined) rows.delete(each.key);
        else rows.set(each.key, each.value);
      }
      return [...rows].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, value]) => structuredClone(value));
    };
    const write = (k, value) => this.over.set(at(k), { name, key: k, value });
    return {
      get: (k) => ask(() => structuredClone(read(k))),
      getAll: () => ask(all),
      put: (value, given) => {
        const copy = structuredClone(value);
        return ask(() => {
          write(key(copy, given), copy);
          return key(copy, given);
        });
      },
      add: (value) => {
        const copy = structuredClone(value);
        return ask(() => {
          const number = this.next.get(name) ?? store().next; // rolled back with the rest, as the standard has it
          this.next.set(name, number + 1);
          copy[store().keyPath] = number;
          write(number, copy);
          return number;
        });
      },
      delete: (k) => ask(() => { write(k, undefined); }),
      openCursor: () => ask(() => null), // only a new disk is made here
    };
  }

  abort() { this.undo(); }

  undo(name, words) {
    if (this.ended) return;
    this.error = name ? new DOMException(words, name) : null;
    this.over.clear();
    const { requests } = this;
    this.requests = [];
    this.db.disk.end(this);
    this.db.disk.world.later(this.db.tab, 'db', () => {
      for (const request of requests) {
        request.error = this.error ?? new DOMException('given up', 'AbortError');
        request.onerror?.({ target: request });
      }
      this.onabort?.();
    });
  }

  #step() {
    const request = this.requests.shift();
    if (!request) {
      this.#commit();
      return;
    }
    request.result = request.work();
    request.onsuccess?.({ target: request });
    this.#later(() => this.#step());
  }

  #commit() {
    const { disk, tab } = this.db;
    if (this.fault === 'fails') return this.undo('QuotaExceededError', 'the phone is full');
    if (this.fault === 'hangs') return undefined;
    if (this.fault === 'killed before') return tab.kill();
    for (const { name, key, value } of this.over.values()) {
      const { rows } = disk.stores[name];
      if (value === undefined) rows.delete(key);
      else rows.set(key, value);
    }
    for (const [name, number] of this.next) disk.stores[name].next = number;
    if (this.fault === 'killed after') return tab.kill();
    disk.end(this);
    return this.#laterAfter(() => this.oncomplete?.());
  }

  #laterAfter(act) { this.db.disk.world.later(this.db.tab, 'db', act); }
}
