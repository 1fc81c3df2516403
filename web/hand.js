// Hands a file to the person, and tells whether it came to them.

const TYPE = 'application/json';

/** A name for a file that any phone takes. */
export function fileName(words, part = '') {
  return `pintwelve-${words.normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 40).toLowerCase() || 'job'}${part}.json`;
}

/**
 * Saves a text: true where the browser tells that it is saved or passed on,
 * false where the person gave it up, undefined where the browser doesn't tell.
 */
export async function save(name, text) {
  const file = new File([text], name, { type: TYPE });
  try {
    if (window.showSaveFilePicker) return await pick(file);
    if (matchMedia('(pointer: coarse)').matches && navigator.canShare?.({ files: [file] })) {
      await navigator.share({ files: [file], title: name });
      return true;
    }
  } catch (error) {
    if (error.name === 'AbortError') return false;
    // Where it is not allowed, the oldest way may be.
  }
  download(file);
  return undefined;
}

async function pick(file) {
  const handle = await window.showSaveFilePicker({ suggestedName: file.name, types: [{ accept: { [TYPE]: ['.json'] } }] });
  const stream = await handle.createWritable();
  await stream.write(file);
  await stream.close();
  return true;
}

function download(file) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60e3);
}
