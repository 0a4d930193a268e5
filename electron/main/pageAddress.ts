/** Where the page lives: a scheme of our own, so that it has an origin, and nothing else has that origin. */
export const SCHEME = 'depthwright';
export const PAGE = `${SCHEME}://bench/index.html`;
const ORIGIN = `${SCHEME}://bench/`;

/** Whether an address is of our own page or one of its files. */
export function isOurs(address: string): boolean {
  return address.startsWith(ORIGIN);
}

/** Whether an address is the page itself (a part of it may be named after #). */
export function isOurPage(address: string): boolean {
  return address.split(/[?#]/, 1)[0] === PAGE;
}
