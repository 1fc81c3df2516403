// Jobs in a file: plain JSON that a person can read, out of the phone and into
// another, and how a file's jobs meet those that are kept.
import { newKey, sameForm } from './job.js';

const KIND = 'Pintwelve jobs';
const VERSION = 1;
const MOST_BYTES = 30e6;
const MOST_JOBS = 20000;
const MOST_FIELDS = 20000;

/** The text of a file that holds jobs, and the bench of the phone where it is given. */
export function written(records, bench) {
  const jobs = records.map(({ id, rev, form }) => ({ id, rev, form: Object.fromEntries(Object.entries(form).sort()) }));
  return `${JSON.stringify({ file: KIND, version: VERSION, bench, jobs }, null, 1)}\n`;
}

/** Hands a file to the person: the browser saves it where it saves files. */
export function save(name, text) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60e3);
}

/** A name for a file that any phone takes. */
export function fileName(words) {
  return `pintwelve-${words.normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 40).toLowerCase() || 'job'}.json`;
}

/**
 * Reads a file: its jobs, how many fields were left out because no control
 * could have made them, and the bench that it holds, unchecked. Throws an error that says what is wrong with the file.
 * unfit gives the names of such fields in a form.
 */
export async function read(file, unfit) {
  if (file.size > MOST_BYTES) throw new Error('it is too big to be a file of jobs');
  let whole;
  try {
    whole = JSON.parse(await file.text());
  } catch {
    throw new Error('it is not a file of jobs, or part of it is missing');
  }
  if (whole?.file !== KIND || !Array.isArray(whole.jobs)) throw new Error('it is not a file of jobs');
  if (!(whole.version <= VERSION)) throw new Error('a newer version made it; load the page again to bring this one up to date');
  if (whole.jobs.length > MOST_JOBS) throw new Error('it holds too many jobs');
  let dropped = 0;
  const records = whole.jobs.map((job) => {
    const { record, left } = checked(job, unfit);
    dropped += left;
    return record;
  });
  return { records: latest(records), dropped, bench: whole.bench };
}

function checked(job, unfit) {
  if (typeof job?.id !== 'string' || !/^[a-z0-9]{1,24}$/.test(job.id) || !Number.isSafeInteger(job.rev) || job.rev < 1
    || typeof job.form !== 'object' || job.form === null) {
    throw new Error('one of its jobs can’t be read');
  }
  const all = Object.entries(job.form);
  if (all.length > MOST_FIELDS) throw new Error('one of its jobs is too big');
  const texts = all.filter(([name, text]) => /^[a-z0-9.]{1,80}$/.test(name) && typeof text === 'string' && text !== '' && !text.includes('\0'));
  const form = Object.fromEntries(texts);
  for (const name of unfit(form)) delete form[name];
  return { record: { id: job.id, rev: job.rev, form }, left: all.length - Object.keys(form).length };
}

/** Of a job that stands twice in a file the later revision counts. */
function latest(records) {
  const byId = new Map();
  for (const record of records) {
    if (!(byId.get(record.id)?.rev >= record.rev)) byId.set(record.id, record);
  }
  return [...byId.values()];
}

/**
 * What becomes of a file's job beside the one that is kept under its id: the
 * records to keep, and how to count it.
 *
 *   added    none was kept
 *   same     both say the same
 *   renewed  the file's is later, and a file held all that was kept
 *   older    the kept one is later; it stays
 *   parted   both were worked on since they were one: the later has the id, the
 *            other is kept beside it as a copy
 */
export function settled(kept, job) {
  const held = { ...job, filed: job.rev };
  if (!kept) return { count: 'added', keep: [held] };
  if (sameForm(kept.form, job.form)) {
    return { count: 'same', keep: job.rev > kept.rev ? [held] : [] };
  }
  if (job.rev < kept.rev) return { count: 'older', keep: [] };
  if (job.rev > kept.rev && kept.filed === kept.rev) return { count: 'renewed', keep: [held] };
  if (job.rev > kept.rev) return { count: 'parted', keep: [held, copyOf(kept, 'as it was on this phone')] };
  return { count: 'parted', keep: [copyOf(job, 'from the file')] };
}

/** A job of its own with another's form, its number saying what it is. */
export function copyOf({ form }, what) {
  return { id: newKey(), rev: 1, form: { ...form, number: `${(form.number ?? '').slice(0, 34)} (${what})`.trim().slice(0, 60) } };
}
