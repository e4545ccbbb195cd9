import { oneLine } from '../design/ownParts.ts';
import { longestStep, mostOptions, mostPieces } from '../design/savedLectures.ts';
import type { Graph } from '../graph/graph.ts';
import { type DesignState, type Patch, resolvePatch } from '../graph/state.ts';
import type { LectureStep, OwnBlock, RoomQuestion } from '../graph/studies.ts';
import { Problem } from '../problem.ts';
import { freshId, longestTitle } from './freshNames.ts';
import { changeLecture, lectureOf, type StepDraft } from './lectures.ts';
import { checkText, moved, type PiecesChange, pieceAdded, pieceChanged, pieceTakenOut } from './pieces.ts';

type Design = Omit<DesignState, 'revision'>;

/** A step by the id of its lecture and its own. */
export interface StepPlace {
  readonly lecture: string;
  readonly step: string;
}

/** The step there; a Problem where it is not there any more. */
export function stepAt(design: Design, { lecture, step }: StepPlace): LectureStep {
  const found = lectureOf(design, lecture).steps.find(({ id }) => id === step);
  if (!found) throw new Problem('absent', 'This step has been taken out; undo brings it back.');
  return found;
}

/** The design with new steps from `place` on, and their ids; a Problem where more would stand there than a lecture holds. */
export function addSteps(
  design: Design,
  lecture: string,
  place: number,
  drafts: readonly StepDraft[],
): { readonly design: Design; readonly ids: readonly string[] } {
  const steps = [...lectureOf(design, lecture).steps];
  const added = drafts.map((draft) => {
    const step = { ...draft, title: readTitle(draft.title), id: freshId('step', steps) };
    steps.push(step);
    return step;
  });
  const next = changeLecture(design, lecture, (one) => ({
    ...one,
    steps: one.steps.toSpliced(place, 0, ...added),
  }));
  return { design: next, ids: added.map(({ id }) => id) };
}

/** The same step once more behind it, and its id. */
export function duplicateStep(design: Design, at: StepPlace): ReturnType<typeof addSteps> {
  const { id, ...draft } = stepAt(design, at);
  const place = lectureOf(design, at.lecture).steps.findIndex((step) => step.id === id);
  return addSteps(design, at.lecture, place + 1, [draft]);
}

/** The lecture with a step at another place, counted from 0; beyond either end nothing changes. */
export function moveStep(design: Design, lecture: string, from: number, to: number): Design {
  return changeLecture(design, lecture, (one) => {
    const steps = moved(one.steps, from, to);
    return steps === one.steps ? one : { ...one, steps };
  });
}

export function takeOutStep(design: Design, at: StepPlace): Design {
  return changeLecture(design, at.lecture, (one) => ({
    ...one,
    steps: one.steps.filter(({ id }) => id !== at.step),
  }));
}

export function titleStep(design: Design, at: StepPlace, title: string): Design {
  return changeStep(design, at, (step) => ({ ...step, title: readTitle(title) }));
}

/** Notes for the lecturer; none where they are empty. */
export function noteStep(design: Design, at: StepPlace, notes: string): Design {
  checkText('text of the notes', notes);
  return changeStep(design, at, ({ notes: _, ...step }) => (notes.trim() === '' ? step : { ...step, notes }));
}

/** The time meant for the step, minutes as they are typed; none where nothing is typed. */
export function timeStep(design: Design, at: StepPlace, text: string): Design {
  const typed = text
    .trim()
    .replace(',', '.')
    .replace(/\s*min(utes?)?\.?$/i, '');
  const minutes = Number(typed);
  if (typed !== '' && !(minutes > 0 && minutes <= longestStep))
    throw new Problem(
      'impossible',
      `‘${text.trim().slice(0, 20)}’ is no time for a step; type minutes up to ${longestStep}, such as 4 or 2.5, or leave it empty.`,
      { value: text.trim(), allowed: `above 0 and up to ${longestStep} minutes` },
    );
  return changeStep(design, at, ({ minutes: _, ...step }) => (typed === '' ? step : { ...step, minutes }));
}

/** What the room is asked; without a question nothing is withheld. */
export function askInStep(design: Design, at: StepPlace, ask: RoomQuestion | undefined): Design {
  return changeStep(design, at, ({ ask: _, ...step }) =>
    ask ? { ...step, ask: readAsk(ask, step.pieces.length) } : step,
  );
}

function readAsk({ question, options, from }: RoomQuestion, pieces: number): RoomQuestion {
  if (question.trim() === '')
    throw new Problem('absent', 'The question is empty; write it, or do without it.');
  const lines = options.map((option) => option.replace(/\s+/g, ' ').trim()).filter((line) => line !== '');
  if (lines.length > mostOptions)
    throw new Problem(
      'impossible',
      `${lines.length} answers are too many; up to ${mostOptions} go, one for each number key.`,
      { value: String(lines.length), allowed: `up to ${mostOptions}` },
    );
  checkText('question', question);
  for (const line of lines) checkText('answer', line);
  return { question, options: lines, from: Math.min(Math.max(0, from), pieces) };
}

/** The step that sets these inputs too; each value is checked as everywhere. */
export function setInStep(graph: Graph, design: Design, at: StepPlace, patch: Patch): Design {
  const sets = resolvePatch(graph, patch);
  return changeStep(design, at, (step) => ({ ...step, sets: { ...step.sets, ...sets } }));
}

/** The step that leaves an input as it finds it. */
export function leaveInStep(design: Design, at: StepPlace, id: string): Design {
  return changeStep(design, at, ({ sets = {}, ...step }) => {
    const left = Object.entries(sets).filter(([other]) => other !== id);
    return left.length === 0 ? step : { ...step, sets: Object.fromEntries(left) };
  });
}

export function addStepPiece(design: Design, at: StepPlace, place: number, piece: OwnBlock): Design {
  const ask = stepAt(design, at).ask;
  const next = changePieces(design, at, pieceAdded(place, piece, mostPieces, 'in this step'));
  // Among the withheld ones it is withheld too.
  return ask && place < ask.from ? withholdFrom(next, at, ask.from + 1) : next;
}

export function changeStepPiece(design: Design, at: StepPlace, place: number, piece: OwnBlock): Design {
  return changePieces(design, at, pieceChanged(place, piece));
}

export function takeOutStepPiece(design: Design, at: StepPlace, place: number): Design {
  const ask = stepAt(design, at).ask;
  const next = changePieces(design, at, pieceTakenOut(place));
  return ask && place < ask.from ? withholdFrom(next, at, ask.from - 1) : next;
}

export function moveStepPiece(design: Design, at: StepPlace, from: number, to: number): Design {
  return changePieces(design, at, (pieces) => moved(pieces, from, to));
}

function withholdFrom(design: Design, at: StepPlace, from: number): Design {
  return changeStep(design, at, (step) => (step.ask ? { ...step, ask: { ...step.ask, from } } : step));
}

function changePieces(design: Design, at: StepPlace, change: PiecesChange): Design {
  return changeStep(design, at, (step) => {
    const pieces = change(step.pieces);
    return pieces === step.pieces ? step : { ...step, pieces };
  });
}

function changeStep(design: Design, at: StepPlace, change: (step: LectureStep) => LectureStep): Design {
  const step = stepAt(design, at);
  const next = change(step);
  if (next === step) return design;
  return changeLecture(design, at.lecture, (lecture) => ({
    ...lecture,
    steps: lecture.steps.map((one) => (one === step ? next : one)),
  }));
}

const readTitle = (title: string): string => oneLine(title, 'title of the step', longestTitle, true);
