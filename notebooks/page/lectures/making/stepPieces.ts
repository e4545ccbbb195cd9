import {
  addStepPiece,
  changeStepPiece,
  moveStepPiece,
  type StepPlace,
  stepAt,
  takeOutStepPiece,
} from '../../../../lib/studies/lectureSteps.ts';
import type { PieceEdits } from '../../studies/own/pieceEdits.ts';

/** The id under which the pieces of a step are arranged. */
export const piecesId = ({ lecture, step }: StepPlace): string => `${lecture}/${step}`;

function placeOf(id: string): StepPlace {
  const [lecture = '', step = ''] = id.split('/');
  return { lecture, step };
}

/** Pieces of the steps of lectures. */
export const stepEdits: PieceEdits = {
  find(design, id) {
    try {
      const { title, pieces } = stepAt(design, placeOf(id));
      return { id, title, blocks: pieces };
    } catch {
      return undefined;
    }
  },
  add: (design, id, place, piece) => addStepPiece(design, placeOf(id), place, piece),
  change: (design, id, place, piece) => changeStepPiece(design, placeOf(id), place, piece),
  takeOut: (design, id, place) => takeOutStepPiece(design, placeOf(id), place),
  move: (design, id, from, to) => moveStepPiece(design, placeOf(id), from, to),
};
