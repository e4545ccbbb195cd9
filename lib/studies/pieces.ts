import { longestText } from '../design/savedWritings.ts';
import type { OwnBlock } from '../graph/studies.ts';
import { Problem } from '../problem.ts';

/** Pieces in order, as a page or a step of a lecture holds them. */
export type Pieces = readonly OwnBlock[];

/** A change of pieces: the same list where nothing changes. */
export type PiecesChange = (pieces: Pieces) => Pieces;

/** A piece more at `place`, all behind it one further; a Problem where it is too long, or more than `most` would stand on `what`. */
export function pieceAdded(place: number, piece: OwnBlock, most: number, what: string): PiecesChange {
  checkPiece(piece);
  return (pieces) => {
    if (pieces.length >= most)
      throw new Problem('impossible', `${most} pieces stand ${what}, and no more fit; begin another.`, {
        allowed: `up to ${most}`,
      });
    return pieces.toSpliced(place, 0, piece);
  };
}

/** Another piece in place of the one at `place`; a Problem where it is too long. */
export function pieceChanged(place: number, piece: OwnBlock): PiecesChange {
  checkPiece(piece);
  return (pieces) => pieces.with(place, piece);
}

export const pieceTakenOut =
  (place: number): PiecesChange =>
  (pieces) =>
    pieces.toSpliced(place, 1);

/** One of several at another place; beyond either end nothing changes. */
export function moved<T>(ones: readonly T[], from: number, to: number): readonly T[] {
  if (to < 0 || to >= ones.length || to === from) return ones;
  return ones.toSpliced(from, 1).toSpliced(to, 0, ones[from]!);
}

/** A text that is kept whole; a Problem that names `what` where it is longer than one is kept. */
export function checkText(what: string, text: string): string {
  if (text.length <= longestText) return text;
  throw new Problem(
    'impossible',
    `The ${what} has ${text.length} signs; up to ${longestText} are kept. Shorten it, or divide it among several.`,
    { value: String(text.length), allowed: `up to ${longestText} signs` },
  );
}

function checkPiece(piece: OwnBlock): void {
  if (piece.kind === 'text') {
    checkText('text', piece.text);
    return;
  }
  checkText('title', piece.title ?? '');
  checkText('caption', piece.caption ?? '');
}
