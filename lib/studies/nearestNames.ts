/** Longest name that is compared letter by letter: the work stays bounded whatever is typed. */
const longestCompared = 60;

/**
 * The names most like the one typed, best first, at most `count`: those with the same last part (`groove.depth` for
 * `depth`), then those that differ in few letters. None where nothing is like it.
 */
export function nearestNames(typed: string, names: readonly string[], count: number): string[] {
  const wanted = typed.slice(0, longestCompared).toLowerCase();
  return names
    .map((name) => ({ name, score: unlikeness(wanted, name.toLowerCase()) }))
    .filter(({ score }) => score < 1)
    .sort((a, b) => a.score - b.score)
    .slice(0, count)
    .map(({ name }) => name);
}

/** 0 for equal names, 1 and more for those that have little in common. */
function unlikeness(wanted: string, name: string): number {
  const last = wanted.split('.').at(-1)!;
  const differing = lettersBetween(wanted, name) / Math.max(2, 0.5 * Math.max(wanted.length, name.length));
  const sameEnd = last.length > 1 && (name === last || name.endsWith(`.${last}`));
  if (sameEnd) return Math.min(differing, 0.5);
  const within = last.length > 3 && name.split('.').at(-1)!.includes(last);
  return within ? Math.min(differing, 0.9) : differing;
}

/** Letters to insert, delete or exchange to get from one word to the other (Levenshtein's distance). */
function lettersBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const exchanged = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(exchanged, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}
