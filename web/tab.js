// What stands on the bench of this tab. Each tab has its own, which outlasts a
// reload; and nothing leaves it before it is kept, or the person has said so.
import { forget, handedOn, handOn } from './handon.js';
import { Job } from './job.js';

const keyIn = (folder) => `pintwelve ${folder} job`;

export class Tab {
  /** The id of the job that a tab remembers, if any. */
  static remembered(memory, folder) {
    try {
      return memory?.getItem(keyIn(folder)) ?? null;
    } catch {
      return null;
    }
  }

  /**
   * store may be null. memory is the tab's own, as sessionStorage, and left the
   * phone's, as localStorage; folder sets them apart from other pages of the host.
   * notice speaks up; file() hands the job on the bench out as a file; shown()
   * shows what stands on the bench now; differs puts fields, as [name, text], into
   * words; answered() promises when the answer to an edit shows; kept() hears when a
   * job is kept.
   */
  constructor({ store, memory, left, folder, notice, file, shown, differs, answered, kept = () => {} }) {
    Object.assign(this, { store, memory, left, folder, notice, file, shown, differs, answered, kept });
    this.job = null;
    this.own = null; // the person's job, while a link's job is looked at
  }

  /** The person's job, whatever is looked at. */
  get mine() { return this.own ?? this.job; }

  /** Puts this tab's job on the bench, in a new tab the one worked on last; record is that one, once it is read. */
  async read() {
    if (!this.store) return undefined;
    const id = Tab.remembered(this.memory, this.folder);
    return id ? this.store.get(id) : this.store.current();
  }

  jobOf(record, store = this.store) {
    const job = new Job({
      store,
      record,
      told: (error) => this.told(error),
      changed: (gaveWay) => this.#changed(job, gaveWay),
      parted: () => this.#parted(job),
      answered: this.answered,
    });
    return job;
  }

  /** The page goes: what it has not kept waits for the next start. */
  goes() {
    const { mine } = this;
    if (mine?.store && !mine.safe) handOn(this.left, this.folder, mine);
  }

  /** The page has not gone after all, and keeps for itself. */
  stays() { forget(this.left, this.folder, this.mine.id); }

  /** Keeps what pages had not when they went. */
  async takeUp() {
    if (!this.store) return;
    for (const { base, form, ...record } of handedOn(this.left, this.folder)) {
      const job = this.jobOf({ ...record, form: base });
      await job.takeUp(form);
      if (job.safe) forget(this.left, this.folder, record.id);
    }
  }

  /** Puts a job on the bench, in the place of one that may leave it. */
  take(job) {
    this.job = job;
    if (job.store) this.#remember(job);
    if (!job.safe) job.keep();
    this.shown();
  }

  /** Goes on once the person's job may leave the bench: it is kept, or they say so. */
  leave(go) {
    const job = this.mine;
    if (job.safe) go();
    else {
      job.keep().then(() => {
        if (job !== this.mine) return;
        if (job.safe) go();
        else this.#ask(go);
      });
    }
  }

  #ask(go) {
    this.notice.offer('The crank on the bench is not kept: on another it would be lost. Save it in a file first, or go on without it.',
      [{ label: 'Save a file', act: () => this.file() }, { label: 'Go on without it', act: go }], 'leaving');
  }

  /** Whether the page may load itself again: never while text stands unkept. */
  async mayReload() {
    await this.mine.keep();
    if (this.mine.safe) return true;
    this.notice.offer('What you typed is not kept, and a new version would take it away. Save a file first.', [{ label: 'Save a file', act: () => this.file() }], 'leaving');
    return false;
  }

  /** Shows a link's job, to be looked at; the person's own waits. */
  lookAt(form) {
    this.own ??= this.job;
    this.take(this.jobOf({ form }, null));
  }

  /** Puts the own job back, after a link's. */
  backToOwn() {
    const { own } = this;
    this.own = null;
    this.take(own);
  }

  /** Makes a copy of a link's job, or what of it is given, the job on the bench, then goes on. */
  keepCopy(then, form = this.job.form) {
    this.leave(() => {
      this.own = null;
      this.take(this.jobOf());
      this.job.edit(form);
      then();
    });
  }

  told(error) {
    if (error) {
      this.notice.offer(`This could not be kept on the phone: ${error.message}. Save a file or send a link before you close the page.`,
        [{ label: 'Save a file', act: () => this.file() }], 'keeping');
    } else if (this.mine?.safe) {
      this.notice.clear('keeping');
      this.notice.clear('leaving');
      this.kept();
    }
  }

  /** Another tab has kept or deleted jobs, {id: rev, …}. */
  heard(message) {
    const { mine } = this;
    if (!Object.hasOwn(message, mine.id)) return undefined;
    if (message[mine.id] === 0) {
      this.notice.offer('This crank was deleted in another tab. It stands here until you open another; the next figure you type keeps it again.', [], 'deleted');
      return undefined;
    }
    return this.reread();
  }

  /** Takes in what another tab has kept of the job. */
  async reread() {
    const { mine } = this;
    if (!mine.store) return;
    const record = await mine.store.get(mine.id).catch((error) => this.told(error));
    if (record) mine.adopt(record);
  }

  /** The browser has cleared the store: it is opened anew, and the job on the bench kept in it. */
  lost() {
    this.notice.offer('The browser has cleared what the page kept. The crank on the bench is kept anew; the others are in your files, if you saved any.', [], 'lost');
    this.#anew(this.store);
  }

  /** The store answers after all: what was typed meanwhile is kept, else the job of this tab comes. */
  async found(store) {
    this.store = store;
    this.notice.clear('no store');
    const record = await this.takeUp().then(() => this.read()).catch((error) => this.told(error));
    if (!this.mine.safe || this.own || !record) this.#anew(store);
    else this.take(this.jobOf(record));
  }

  #anew(store) {
    const { mine } = this;
    if (mine.rev > 0 || !mine.safe) mine.keepAnew(store);
    else mine.store = store;
    this.#remember(mine);
  }

  #changed(job, gaveWay) {
    const names = Object.keys(gaveWay);
    if (names.length > 0) {
      this.notice.offer(`Another tab typed otherwise at the same time; what you typed here stands. There it was: ${this.differs(names.map((name) => [name, gaveWay[name]]))}`, []);
    }
    if (job === this.mine) this.shown();
  }

  #parted(job) {
    this.notice.offer('This crank was deleted and read anew in another tab. What stands here is kept beside that one, as a crank of its own.', []);
    if (job === this.mine) this.#remember(job);
  }

  #remember(job) {
    try {
      this.memory?.setItem(keyIn(this.folder), job.id);
    } catch {
      // A tab that remembers nothing takes the last job after a reload.
    }
    job.store?.setCurrent(job.id).catch((error) => this.told(error));
  }
}
