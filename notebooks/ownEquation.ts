import type { Quantity } from '../lib/graph/quantity.ts';
import { equationTex } from './equationTex.ts';
import { type Prose, type ProseNode, type Slot, says } from './prose.ts';
import { isWorded } from './wordedSymbol.ts';

/** The formula of a quantity, and what goes in with the values of today. */
export function ownEquation(quantity: Quantity): Prose {
  const slots: Slot[] = [];
  const slot = (one: Slot): ProseNode => ({ slotIndex: slots.push(one) - 1 });
  const value = (one: Quantity): ProseNode => slot(says({}, () => [one], [one]));
  const { symbol, name } = quantity;
  if (quantity.kind !== 'derived') {
    const children = [slot({ slot: 'math', tex: `${symbol} =` }), { text: ' ' }, value(quantity)];
    return { nodes: [{ tag: 'p', children: [...children, { text: `, ${name}.` }] }], slots };
  }
  const terms = Object.values(quantity.from).map(
    (one): ProseNode => ({
      tag: 'li',
      children: [
        ...(isWorded(one) ? [] : [slot({ slot: 'math', tex: one.symbol }), { text: ', ' }]),
        { text: `${one.name}: ` },
        value(one),
      ],
    }),
  );
  const nodes: ProseNode[] = [
    {
      tag: 'p',
      children: [slot({ slot: 'math', tex: `\\displaystyle ${equationTex(symbol, quantity.formula)}` })],
    },
    { tag: 'p', children: [{ text: 'Today ' }, value(quantity), { text: ', with' }] },
    { tag: 'ul', children: terms },
  ];
  return { nodes: terms.length === 0 ? nodes.slice(0, 1) : nodes, slots };
}
