/** New ids, readable and never taken. */

/**
 * `wish` itself where it is free, else with the first free number from 2: "centre-2". A wish that is no id is made one:
 * "seconds hand" gives "seconds-hand".
 */
export function freshId(taken: { has(id: string): boolean }, wish: string): string {
  const plain = wish.replace(/[^\p{L}\p{N}._-]+/gu, '-').replace(/^[^\p{L}\p{N}]+/u, '');
  const stem = [...plain].slice(0, 56).join('').slice(0, 56).replace(/-\d+$/, '') || 'part';
  if (plain !== '' && plain.length <= 64 && !taken.has(plain)) return plain;
  for (let number = 2; ; number++) {
    const id = `${stem}-${number}`;
    if (!taken.has(id)) return id;
  }
}
