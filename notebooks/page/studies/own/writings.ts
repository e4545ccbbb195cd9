import type { OwnBlock } from '../../../../lib/graph/studies.ts';
import type { Live } from '../../live.ts';
import type { PieceForm } from './pieceForm.ts';

/** Where something is written on a page. */
export interface WritingPlace {
  readonly place: number;
  /** The piece that is changed; none for a new one. */
  readonly piece: OwnBlock | undefined;
  /** A new piece before `place`, also where the one that was changed is gone. */
  readonly isNew: boolean;
}

/** What is being written on a page of the person's own. */
export interface Writing extends WritingPlace {
  /** Pieces of the page, and its place among them, while what it stands below was there. */
  readonly begun: { readonly place: number; readonly blocks: readonly OwnBlock[] };
  /** Without one the kinds are offered. */
  readonly form: PieceForm | undefined;
}

const memories = new WeakMap<Live, Map<string, Writing>>();

/** What is being written, by the id of its page, while the person is elsewhere too. */
export function writingsOf(live: Live): Map<string, Writing> {
  const known = memories.get(live) ?? new Map<string, Writing>();
  memories.set(live, known);
  return known;
}

/** Where it is written once the pieces of the page are others: its piece is followed, and where that is gone it becomes a new one. */
export function placeAmong(
  { place, piece, isNew }: WritingPlace,
  before: readonly OwnBlock[],
  after: readonly OwnBlock[],
): WritingPlace {
  const at = piece ? after.indexOf(piece) : -1;
  if (at >= 0) return { place: at, piece, isNew: false };
  const now = after[place];
  // Changed or undone in its place: all others stand where they stood.
  if (piece && !isNew && now?.kind === piece.kind && differOnlyAt(place, before, after))
    return { place, piece: now, isNew: false };
  // Behind the nearest piece above it that is still there.
  const above = before.slice(0, place).findLast((one) => after.includes(one));
  return { place: above ? after.indexOf(above) + 1 : 0, piece, isNew: true };
}

function differOnlyAt(place: number, before: readonly OwnBlock[], after: readonly OwnBlock[]): boolean {
  return before.length === after.length && before.every((one, i) => i === place || one === after[i]);
}

/** The same once the pieces of its page are these; what has gone and comes back finds it below it again. */
export function writingAmong(known: Writing, after: readonly OwnBlock[]): Writing {
  const { begun, piece, isNew } = known;
  const next = placeAmong({ place: begun.place, piece, isNew }, begun.blocks, after);
  return { ...known, ...next, begun: next.isNew ? begun : { place: next.place, blocks: after } };
}
