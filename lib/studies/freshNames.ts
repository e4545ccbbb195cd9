/** Signs of a title. */
export const longestTitle = 120;

/** An id that none has, nor had among those that are there: the highest count behind the word, and one more. */
export function freshId(word: string, ones: readonly { readonly id: string }[]): string {
  const counts = ones.map(({ id }) =>
    id.startsWith(word) ? Number(/^\d{1,9}$/.exec(id.slice(word.length))?.[0] ?? 0) : 0,
  );
  return `${word}${Math.max(0, ...counts) + 1}`;
}

/** The title, or where one has it already, the same with a count behind it. */
export function freeTitle(title: string, ones: readonly { readonly title: string }[]): string {
  const taken = new Set(ones.map((one) => one.title));
  if (!taken.has(title)) return title;
  const plain = title.slice(0, longestTitle - 12);
  let count = 2;
  while (taken.has(`${plain} (${count})`)) count++;
  return `${plain} (${count})`;
}
