// Jobs in a file: plain JSON that a person can read, out of the phone and into
// another.

const KIND = 'Pintwelve jobs';
const VERSION = 1;
const MOST_BYTES = 100e6;
const MOST_JOBS = 20000;
const MOST_FIELDS = 20000;
const MOST_REV = 1e9;
const MOST_PAST = 1000;
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];

/** The texts of the files, mostly one, that hold jobs, and the bench of the phone where it is given: what is written here can be read here. */
export function written(records, bench) {
  const files = [];
  let jobs = [];
  let size = 0;
  const end = () => {
    files.push(`{\n "file": "${KIND}",\n "version": ${VERSION}${bench ? `,\n "bench": ${JSON.stringify(bench, null, 1)}` : ''},\n "jobs": [\n${jobs.join(',\n')}\n ]\n}\n`);
    jobs = [];
    size = 0;
  };
  for (const { id, rev, past, form } of records) {
    const sorted = Object.fromEntries(Object.entries(form).sort());
    const text = JSON.stringify({ id, rev: Math.min(rev, MOST_REV), past: past?.join(' ') || undefined, form: sorted }, null, 1);
    const bytes = 3 * text.length; // no letter takes more
    if (jobs.length === MOST_JOBS || (size + bytes > MOST_BYTES - 1e6 && jobs.length > 0)) end();
    jobs.push(text);
    size += bytes;
  }
  if (jobs.length > 0 || files.length === 0) end();
  return files;
}

/**
 * Reads a file: its jobs {id, rev, past, form}; in dropped how many fields were
 * left out because no control could have made them; in bench the bench that it
 * holds, unchecked; in lost words for each job that can't be read, and for a
 * missing end. Throws an error that says what is
 * wrong with a file of which nothing can be read. unfit gives the names of such
 * fields in a form.
 */
export async function read(file, unfit) {
  if (file.size > MOST_BYTES) throw new Error('it is too big to be a file of jobs');
  const { whole, cut } = parsed(await file.text());
  if (whole?.file !== KIND || !Array.isArray(whole.jobs)) throw new Error(cut ? 'it is not a file of jobs, or part of it is missing' : 'it is not a file of jobs');
  if (whole.version > VERSION) throw new Error('a newer version made it; load the page again to bring this one up to date');
  if (whole.jobs.length > MOST_JOBS) throw new Error('it holds too many jobs');
  let dropped = 0;
  const records = [];
  const lost = [];
  whole.jobs.forEach((job, i) => {
    const { record, left, problem } = checked(job, unfit);
    if (problem) lost.push(`${calledIn(job, i)} ${problem}`);
    else {
      records.push(record);
      dropped += left;
    }
  });
  if (cut) lost.push('its end is missing: what stood there is not read');
  if (records.length === 0 && lost.length > 0) throw new Error(lost.join('; '));
  return { records, dropped, lost, bench: whole.bench };
}

function parsed(text) {
  try {
    return { whole: JSON.parse(text), cut: false };
  } catch {
    return { whole: wholeOf(text), cut: true };
  }
}

function tried(text) {
  try {
    return JSON.parse(text);
  } catch {
    return {};
  }
}

/** Of a file whose end is missing the part that is whole: its jobs one by one. */
function wholeOf(text) {
  const head = /^\s*\{[\s\S]{0,99999}?"jobs"\s*:\s*\[\s*/.exec(text);
  const { file, version, bench } = tried(`${head?.[0]}]}`);
  const jobs = [];
  let from = head?.[0].length;
  for (let to = file ? endOf(text, from) : -1; to > 0; to = endOf(text, from)) {
    jobs.push(tried(text.slice(from, to)));
    from = to + /^[\s,]*/.exec(text.slice(to, to + 100))[0].length;
  }
  return { file, version, bench, jobs };
}

/** Where the object that begins at a place ends; -1 where it doesn't. */
function endOf(text, from) {
  const token = /"(?:[^"\\]|\\.)*"|"|[{}]/gs;
  token.lastIndex = from;
  let depth = 0;
  for (let match = token.exec(text); match; match = token.exec(text)) {
    if (match[0] === '"') return -1;
    if (match[0] === '{') depth++;
    if (match[0] === '}' && --depth <= 0) return depth === 0 ? token.lastIndex : -1;
  }
  return -1;
}

function calledIn(job, i) {
  const number = job?.form?.number;
  return typeof number === 'string' && number ? `“${number.slice(0, 60)}”` : `the ${ORDINALS[i] ?? `${i + 1}th`} job`;
}

function checked(job, unfit) {
  if (typeof job?.id !== 'string' || !/^[a-z0-9]{1,24}$/.test(job.id) || typeof job.form !== 'object' || job.form === null || Array.isArray(job.form)) {
    return { problem: 'can’t be read' };
  }
  const all = Object.entries(job.form);
  if (all.length > MOST_FIELDS) return { problem: 'is too big' };
  const texts = all.filter(([name, text]) => /^[a-z0-9.]{1,80}$/.test(name) && typeof text === 'string' && text !== '' && !text.includes('\0'));
  const form = Object.fromEntries(texts);
  for (const name of unfit(form)) delete form[name];
  // A count only orders what older pages wrote: one that can't be right refuses no figures.
  const rev = Number.isInteger(job.rev) && job.rev >= 1 && job.rev < MOST_REV ? job.rev : 1;
  const past = typeof job.past === 'string' ? job.past.split(' ').filter((mark) => /^[a-z0-9]{1,24}$/.test(mark)).slice(-MOST_PAST) : [];
  return { record: { id: job.id, rev, past, form }, left: all.length - Object.keys(form).length };
}
