import { type Derived, type InputQuantity, isInput, type Quantity } from './quantity.ts';

/** All quantities of a design by id, with the order in which they can be computed. */
export interface Graph {
  readonly quantities: ReadonlyMap<string, Quantity>;
  /** Every quantity after those it depends on. */
  readonly order: readonly Quantity[];
  /** Input ids with their initial values. */
  readonly initial: Readonly<Record<string, unknown>>;
}

/** Builds the graph of `roots` and all they depend on; throws where an id stands for two quantities. */
export function createGraph(roots: readonly Quantity[]): Graph {
  const quantities = new Map<string, Quantity>();
  const order = orderOf(roots);
  for (const quantity of order) {
    if (quantities.has(quantity.id)) throw new Error(`Two quantities have the id ${quantity.id}.`);
    quantities.set(quantity.id, quantity);
  }
  const inputs = order.filter(isInput) as InputQuantity[];
  return { quantities, order, initial: Object.fromEntries(inputs.map((input) => [input.id, input.initial])) };
}

/** `roots` and what they depend on, each after what it depends on; `behind` leaves out what does not count. */
export function orderOf(
  roots: readonly Quantity[],
  behind: (quantity: Derived) => readonly Quantity[] = ({ from }) => Object.values(from),
): Quantity[] {
  const order: Quantity[] = [];
  const seen = new Set<Quantity>();
  const visit = (quantity: Quantity) => {
    if (seen.has(quantity)) return;
    seen.add(quantity);
    if (quantity.kind === 'derived') behind(quantity).forEach(visit);
    order.push(quantity);
  };
  roots.forEach(visit);
  return order;
}
