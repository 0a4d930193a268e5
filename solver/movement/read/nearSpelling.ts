/** Names near in spelling, for "did you mean". */

/**
 * Edit distance of two words (insertions, deletions, replacements; a swap of neighbours counts one).
 * Source: the optimal string alignment form of Damerau's distance.
 */
export function spellingDistance(a: string, b: string): number {
  // Rows are b.length + 1 long, so no index below misses; `?? 0` only satisfies the compiler.
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const best = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      row.push(swapped ? Math.min(best, (beforeLast[j - 2] ?? 0) + 1) : best);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}

/** Up to three of `known` that are near `word` in spelling, nearest first; case counts half as much. */
export function nearIn(word: string, known: Iterable<string>): string[] {
  const reach = Math.max(1, Math.floor(word.length / 3));
  const near: { name: string; far: number }[] = [];
  for (const name of known) {
    if (Math.abs(name.length - word.length) > reach) continue;
    const far = spellingDistance(word.toLowerCase(), name.toLowerCase());
    if (far <= reach) near.push({ name, far });
  }
  near.sort((p, q) => p.far - q.far || (p.name < q.name ? -1 : 1));
  return near.slice(0, 3).map((entry) => entry.name);
}
