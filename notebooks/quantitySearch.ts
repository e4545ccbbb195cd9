import { isInput, type Quantity } from '../lib/graph/quantity.ts';

/** A quantity that a search found. */
interface FoundQuantity {
  readonly quantity: Quantity;
  /** Lower is nearer to what was typed. */
  readonly score: number;
}

/**
 * Quantities whose name, id or description holds all words that were typed, the nearest first: words in the name count
 * before those in the id, and those before the description. Nothing is found for an empty text.
 */
export function searchQuantities(
  quantities: Iterable<Quantity>,
  typed: string,
  most: number,
): readonly Quantity[] {
  const words = plain(typed)
    .split(' ')
    .filter((word) => word !== '');
  if (words.length === 0) return [];
  const found: FoundQuantity[] = [];
  for (const quantity of quantities) {
    const score = scoreOf(quantity, words);
    if (score !== undefined) found.push({ quantity, score });
  }
  return found
    .sort((a, b) => a.score - b.score || a.quantity.name.length - b.quantity.name.length)
    .slice(0, most)
    .map(({ quantity }) => quantity);
}

function scoreOf({ id, name, about }: Quantity, words: readonly string[]): number | undefined {
  const texts = [
    plain(name),
    plain(id.replace(/([a-z])([A-Z])/g, '$1 $2').replaceAll('.', ' ')),
    plain(about),
  ];
  let score = id.startsWith('own.') ? -0.5 : 0;
  for (const word of words) {
    const place = texts.findIndex((text) => text.includes(word));
    if (place < 0 && !plain(id).includes(word)) return undefined;
    const begins = place >= 0 && ` ${texts[place]}`.includes(` ${word}`);
    score += 2 * (place < 0 ? 1 : place) + (begins ? 0 : 1);
  }
  return texts[0] === words.join(' ') || plain(id) === words.join(' ') ? score - 5 : score;
}

function plain(text: string): string {
  return text.toLowerCase().trim().replace(/\s+/g, ' ');
}

/** What kind of thing a quantity is, in a few words, for a list of them. */
export function kindWords(quantity: Quantity): string {
  if (quantity.id.startsWith('own.')) return 'own quantity';
  return isInput(quantity) ? 'input' : quantity.kind === 'constant' ? 'constant' : 'result';
}
