import type { DesignState } from '../../../../lib/graph/state.ts';
import type { OwnBlock } from '../../../../lib/graph/studies.ts';
import {
  addPiece,
  changePiece,
  movePiece,
  ownPagesOf,
  takeOutPiece,
} from '../../../../lib/studies/ownPages.ts';

type Design = Omit<DesignState, 'revision'>;

/** Pieces that are arranged, with what they are called. */
export interface PieceHolder {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly OwnBlock[];
}

/** How pieces of what has an id are changed; each gives the design after it, or throws a Problem. */
export interface PieceEdits {
  find(design: Design, id: string): PieceHolder | undefined;
  add(design: Design, id: string, place: number, piece: OwnBlock): Design;
  change(design: Design, id: string, place: number, piece: OwnBlock): Design;
  takeOut(design: Design, id: string, place: number): Design;
  move(design: Design, id: string, from: number, to: number): Design;
}

/** Pieces of own pages. */
export const pageEdits: PieceEdits = {
  find: (design, id) => ownPagesOf(design).find((page) => page.id === id),
  add: addPiece,
  change: changePiece,
  takeOut: takeOutPiece,
  move: movePiece,
};
