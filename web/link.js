// A job's link: the whole job in the fragment, which no server ever sees.

/** The link in an address, or ''. In-page anchors are no links. */
export function linkIn(address) {
  const fragment = address.hash.slice(1);
  return document.getElementById(fragment) ? '' : fragment;
}

/** Hands a link on by the phone's share sheet, else by the clipboard; gives what to say. */
export async function handOn(link) {
  const url = new URL(`#${link}`, location.href).href;
  if (navigator.share) {
    try {
      await navigator.share({ title: 'Pintwelve', url });
      return 'Handed on.';
    } catch (error) {
      if (error.name === 'AbortError') return '';
    }
  }
  try {
    await navigator.clipboard.writeText(url);
    return `Copied: ${url}`;
  } catch {
    return `Copy this address: ${url}`;
  }
}
