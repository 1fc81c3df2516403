// A job's link: the whole job in the fragment, which no server ever sees.

/** The link in an address, or ''. In-page anchors are no links. */
export function linkIn(address) {
  const fragment = address.hash.slice(1);
  return document.getElementById(fragment) ? '' : fragment;
}

/** The address that opens a link here. */
export function addressOf(link) {
  return `${location.origin}${location.pathname}#${link}`;
}

/** Sends an address by the phone's share sheet, else by the clipboard; gives what to say. */
export async function handOn(url) {
  if (navigator.share) {
    try {
      await navigator.share({ title: 'Pintwelve', url });
      return 'Sent.';
    } catch (error) {
      if (error.name === 'AbortError') return '';
    }
  }
  return await copied(url) ? `Copied: ${url}` : `Copy this address: ${url}`;
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
