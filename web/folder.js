/** The folder of the page, of the worker in it too: pages of one host share what they remember. */
export const FOLDER = new URL('.', location.href).pathname;
