import { documents } from '../../notebooks/contents.ts';
import type { Block } from '../../notebooks/document.ts';
import { lessons } from '../../notebooks/lessons/lessons.ts';
import type { Prose, SetsLink } from '../../notebooks/prose.ts';

/** A link in prose, where it stands, and the block that has to be shown for it. */
export interface FoundLink {
  /** `document/block/words of the link`. */
  readonly key: string;
  readonly link: SetsLink;
  readonly block?: Block;
}

/** All prose within plain data, however deep; quantities are left alone. */
function prosesIn(value: unknown, seen = new Set<unknown>()): Prose[] {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value) || seen.has(value)) return [];
  seen.add(value);
  if ('nodes' in value && 'slots' in value) return [value as Prose];
  if ('symbol' in value && 'unit' in value) return [];
  return Object.values(value).flatMap((part) => prosesIn(part, seen));
}

const linksIn = (place: string, prose: Prose, block?: Block): FoundLink[] =>
  prose.slots.flatMap((slot) =>
    slot.slot === 'link' ? [{ key: `${place}/${slot.text}`, link: slot, ...(block && { block }) }] : [],
  );

/** What prose stands in, all of it: leads and blocks of documents, and lessons. */
const places: readonly { readonly place: string; readonly holds: unknown; readonly block?: Block }[] = [
  ...documents.flatMap(({ id, lead, blocks }) => [
    { place: `${id}/lead`, holds: lead },
    ...blocks.map((block) => ({ place: `${id}/${block.id}`, holds: block, block })),
  ]),
  ...lessons.flatMap(({ id, tasks }) =>
    tasks.map((task) => ({ place: `lesson ${id}/${task.id}`, holds: task })),
  ),
];

/** Every link that sets inputs. A lecture has none but those of the blocks that it borrows, which are among these. */
export const foundLinks: readonly FoundLink[] = places.flatMap(({ place, holds, block }) =>
  prosesIn(holds).flatMap((prose) => linksIn(place, prose, block)),
);

/** Every address that prose leads to. */
export const foundAddresses: readonly { readonly place: string; readonly address: string }[] = places.flatMap(
  ({ place, holds }) =>
    prosesIn(holds).flatMap(({ nodes }) => addressesIn(nodes).map((address) => ({ place, address }))),
);

function addressesIn(nodes: Prose['nodes']): string[] {
  return nodes.flatMap((node) =>
    'children' in node
      ? [...(node.href === undefined ? [] : [node.href]), ...addressesIn(node.children)]
      : [],
  );
}

/** Every place within a document that prose leads to. */
export const foundJumps = documents.flatMap((document) =>
  prosesIn([document.lead, document.blocks]).flatMap(({ slots }) =>
    slots.flatMap((slot) => (slot.slot === 'jump' ? [{ document, to: slot.to }] : [])),
  ),
);
