// A job's link: the whole job in the fragment, which no server ever sees.
import { stepWith } from './steps.js';

/** The link in an address, or ''. In-page anchors are no links. */
export function linkIn(address) {
  const fragment = address.hash.slice(1);
  return !fragment || document.getElementById(fragment) || stepWith(document, fragment) ? '' : fragment;
}

/** The address that opens a link here. */
export function addressOf(link) {
  return `${location.origin}${location.pathname}#${link}`;
}

/** Sends an address with a line of words by the phone's share sheet, else by the clipboard; gives what to say. */
export async function handOn(url, words) {
  const said = navigator.share ? await shared({ title: words, text: words, url }) : null;
  return said ?? (await copied(`${words}: ${url}`) ? `Copied: ${words}: ${url}` : `Copy this address: ${url}`);
}

/** Sends a file with a line of words by the phone's share sheet, else saves it; gives what to say. */
export async function handOver(file, words) {
  const what = { title: words, text: words, files: [file] };
  const said = navigator.canShare?.(what) ? await shared(what) : null;
  if (said !== null) return said;
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60e3);
  return `Saved as ${file.name}.`;
}

/** Opens the phone's share sheet; gives what to say, or null where it sends nothing. */
async function shared(what) {
  try {
    await navigator.share(what);
    return 'Sent.';
  } catch (error) {
    return error.name === 'AbortError' ? '' : null;
  }
}

/** Puts a text on the clipboard; false where the browser doesn't let it. */
export async function copied(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
