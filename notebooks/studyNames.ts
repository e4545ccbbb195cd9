import type { ChoiceInput, Derived, NumberInput, Quantity } from '../lib/graph/quantity.ts';

/** A quantity under the words by which a person finds it; no two of one list have the same. */
export interface NamedQuantity {
  readonly label: string;
  readonly quantity: Quantity;
}

/** True for results that are, or may be, a single number. */
export function isNumberResult(quantity: Quantity): quantity is Derived<number> {
  return quantity.kind === 'derived' && typeof quantity.unit === 'string' && quantity.unit !== 'none';
}

/** True for inputs that can be moved along a span or a list. */
export function isMovable(quantity: Quantity): quantity is NumberInput | ChoiceInput {
  return quantity.kind === 'number' || quantity.kind === 'choice';
}

/** Quantities by name, with the id behind it where several share one. */
export function labelled(quantities: Iterable<Quantity>): readonly NamedQuantity[] {
  const all = [...quantities];
  const counts = new Map<string, number>();
  for (const { name } of all) counts.set(name, (counts.get(name) ?? 0) + 1);
  return all
    .map((quantity) => ({
      label: counts.get(quantity.name) === 1 ? quantity.name : `${quantity.name} (${quantity.id})`,
      quantity,
    }))
    .sort((a, b) => (a.label.toLowerCase() < b.label.toLowerCase() ? -1 : 1));
}

/** The one that was typed or picked, by its label or its id; capitals and spaces do not count. */
export function findNamed(list: readonly NamedQuantity[], text: string): Quantity | undefined {
  const plain = (words: string) => words.trim().replace(/\s+/g, ' ').toLowerCase();
  const asked = plain(text);
  return list.find(({ label, quantity }) => plain(label) === asked || plain(quantity.id) === asked)?.quantity;
}

/** Why a text stands for none of the list, with the nearest of its names. */
export function notFoundSaid(list: readonly NamedQuantity[], text: string, what: string): string {
  const words = text.trim().toLowerCase().split(/\s+/);
  const near = list
    .filter(({ label, quantity }) =>
      words.every((word) => `${label} ${quantity.id}`.toLowerCase().includes(word)),
    )
    .slice(0, 3);
  const quoted = text.trim().slice(0, 60);
  if (near.length === 0)
    return `There is no ${what} ‘${quoted}’; type a part of its name and choose from the list.`;
  const names = near.map(({ label }) => `‘${label}’`);
  return `‘${quoted}’ is not a whole name; did you mean ${names.join(' or ')}?`;
}
