// How two states of one job stand to each other. A count of writes says nothing
// of that between phones, so a state that goes out in a file gets a mark, a name
// at random, and a job carries its past: the marks of the states that it comes
// from, oldest first. A state whose mark stands in another's past is accounted
// for in it; where that can't be seen, both are kept.
import { newKey, sameForm } from './job.js';

/** Marks that a job carries: one forgotten makes a copy more, never one less. */
export const MOST_PAST = 200;

/** The mark of the state that a kept job is in, or undefined where it was worked on since. */
function markOf({ rev, shared, past }) {
  return rev === shared ? past?.at(-1) : undefined;
}

/** A kept job with a mark for the state that it is in. */
export function marked(record) {
  if (markOf(record)) return record;
  return { ...record, past: bounded([...(record.past ?? []), newKey()]), shared: record.rev };
}

/** Both pasts, the job's own state last. */
function joined(kept, job) {
  return bounded([...(kept.past ?? []).filter((mark) => !job.past.includes(mark)), ...job.past]);
}

function bounded(past) {
  return past.slice(-MOST_PAST);
}

/**
 * What becomes of a file's job {id, rev, past, form} beside what is kept: kept(id)
 * gives a record or undefined. Gives the records to keep and how to count the job.
 *
 *   added    none was kept under its id
 *   same     what it says is kept already
 *   renewed  it comes from the state that is kept
 *   older    the kept one comes from it, and stays
 *   parted   neither comes from the other: the kept one stays, and the file's is
 *            kept beside it as a job of its own; names lists what differs
 */
export function settled(kept, job) {
  const here = kept(job.id);
  if (!here) return { count: 'added', keep: [received(job, { id: job.id, born: newKey(), rev: job.rev }, job.past)] };
  if (sameForm(here.form, job.form)) return { count: 'same', keep: [received(job, here, joined(here, job))] };
  const mark = markOf(here);
  if (mark && job.past.includes(mark)) {
    return { count: 'renewed', keep: [received(job, { ...here, rev: here.rev + 1 }, joined(here, job))] };
  }
  if (here.past?.includes(job.past.at(-1))) return { count: 'older', keep: [] };
  const copy = copyOf(job, 'from the file', idOfState(job));
  if (kept(copy.id)) return { count: 'same', keep: [] };
  return { count: 'parted', keep: [copy], names: differing(here.form, job.form), forms: [here.form, job.form] };
}

/** A record in the state of a file's job, which the file holds. */
function received({ form }, record, past) {
  return { ...record, form, past, shared: past.length ? record.rev : undefined, filed: record.rev };
}

/** The ids that settled may ask for. */
export function idsOf(jobs) {
  return [...new Set(jobs.flatMap((job) => [job.id, idOfState(job)]))];
}

/** Settles the jobs of a file one after the other, so that two of one id meet as well. */
export function settledAll(kept, jobs) {
  const counts = {};
  const keep = new Map();
  const parted = [];
  for (const job of jobs) {
    const fate = settled((id) => keep.get(id) ?? kept(id), job);
    counts[fate.count] = (counts[fate.count] ?? 0) + 1;
    for (const record of fate.keep) keep.set(record.id, record);
    if (fate.count === 'parted') parted.push(fate);
  }
  return { counts, keep: [...keep.values()], parted };
}

/** The names of the fields in which two forms differ, sorted. */
export function differing(a, b) {
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].filter((name) => a[name] !== b[name]).sort();
}

/** A job of its own with another's form, its number saying what it is. */
export function copyOf({ form }, what, id = newKey()) {
  return { id, born: newKey(), rev: 1, form: { ...form, number: `${(form.number ?? '').slice(0, 34)} (${what})`.trim().slice(0, 60) } };
}

// The same state of the same job gives the same id, so that a file read twice
// makes no second copy. FNV-1a, twice 32 bits.
function idOfState({ id, form }) {
  const text = JSON.stringify([id, Object.entries(form).sort()]);
  const hash = (seed) => {
    let h = seed;
    for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
    return (h >>> 0).toString(36).padStart(7, '0');
  };
  return `c${hash(0x811c9dc5)}${hash(0x2f0b4a27)}`;
}
