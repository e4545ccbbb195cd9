import type { Prose, ProseNode } from '../prose.ts';

/** The words of prose that stand there whatever the design. */
export function proseWords({ nodes, slots }: Prose): string {
  const text = (node: ProseNode): string => {
    if ('text' in node) return node.text;
    if ('children' in node) return `${node.children.map(text).join('')} `;
    const slot = slots[node.slotIndex]!;
    return slot.slot === 'link' || slot.slot === 'jump' || slot.slot === 'term' ? slot.text : '';
  };
  return nodes.map(text).join(' ');
}
