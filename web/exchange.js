// What goes between the jobs kept here and a file: gathered for one, noted when
// it is saved, merged from one. job is the one on the bench, store may be null.
import { idsOf, marked, settledAll } from './descent.js';
import { sameForm } from './job.js';

/** The job on the bench as it stands, kept or not, with a mark for its state. */
export async function gatheredOne({ job, store }) {
  await job.keep();
  const [kept] = store ? await store.mark([job.id]).catch(() => []) : [];
  if (kept && sameForm(kept.form, job.form)) return kept;
  // It comes from what is kept only if no other tab has kept another state since.
  const past = kept?.born === job.born && kept.rev === job.rev ? kept.past : undefined;
  return marked({ id: job.id, born: job.born, rev: Math.max(job.rev, 1), past, form: { ...job.form } });
}

/** Every job, the one on the bench as it stands. */
export async function gatheredAll({ job, store }) {
  const one = await gatheredOne({ job, store });
  const all = store ? await store.mark().catch(() => store.all()) : [];
  const others = all.filter(({ id }) => id !== one.id);
  return Object.keys(one.form).length > 0 ? [...others, one] : others;
}

/** Notes that a file holds records for sure; false where the store can't. */
export async function noted({ job, store }, records) {
  job.inFile = records.find(({ id }) => id === job.id)?.form ?? job.inFile;
  return Boolean(store) && store.filed(records).then(() => true, () => false);
}

/** Merges a file's jobs into those that are kept, all or none; gives how each fared. */
export async function merged({ job, store }, jobs) {
  if (!store) throw new Error('this browser keeps nothing for the page');
  await job.keep();
  const ids = idsOf(jobs);
  let fate;
  await store.settle(ids, (found, keep) => {
    const kept = new Map(ids.map((id, i) => [id, found[i]]));
    fate = settledAll((id) => kept.get(id), jobs);
    for (const record of fate.keep) keep(record);
  });
  return fate;
}
