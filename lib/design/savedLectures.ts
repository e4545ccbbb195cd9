import * as v from 'valibot';
import type { Graph } from '../graph/graph.ts';
import type { OriginalFile } from '../graph/originals.ts';
import type { Lecture, LectureStep, OwnBlock } from '../graph/studies.ts';
import { entriesOf } from './savedFile.ts';
import { type FileSource, readInputs, type SavedPlace, writeInputs } from './savedInputs.ts';
import { blockSchema, defined, differ, fits, longestText } from './savedWritings.ts';

/** As many lectures, steps of one, pieces of a step, and options of a question as a design keeps. */
export const mostLectures = 20;
export const mostSteps = 60;
export const mostPieces = 30;
/** One for each number key. */
export const mostOptions = 9;
/** Time meant for one step, minutes. */
export const longestStep = 240;

const text = v.pipe(v.string(), v.maxLength(longestText));
const optional = v.optional(text);
const named = (form: RegExp, words: string) =>
  v.pipe(
    v.string(),
    v.check((id) => form.test(id), words),
  );

const askSchema = v.object({
  question: text,
  options: v.array(text),
  from: v.pipe(v.number(), v.integer(), v.minValue(0)),
});

const stepSchema = v.object({
  id: named(/^[\w-]{1,60}$/, 'a word of letters and digits'),
  title: text,
  pieces: v.array(blockSchema),
  sets: v.optional(entriesOf(v.unknown()), {}),
  ask: v.optional(askSchema),
  notes: optional,
  minutes: v.optional(
    v.pipe(
      v.number(),
      v.check((minutes) => minutes >= 0 && minutes <= longestStep, `a time of 0 to ${longestStep} minutes`),
    ),
  ),
});

/** A lecture as it is saved. Its id stands in addresses, and is never that of one which comes with the program. */
export const lectureSchema = v.object({
  id: named(/^lecture\d{1,9}$/, 'a name such as "lecture1"'),
  title: text,
  about: optional,
  steps: v.array(stepSchema),
});

export type SavedLecture = v.InferOutput<typeof lectureSchema>;
type SavedStep = v.InferOutput<typeof stepSchema>;

/** Lectures as plain data, and the files that their steps set. */
export function writeLectures(
  graph: Graph,
  lectures: readonly Lecture[],
): { readonly saved: SavedLecture[]; readonly files: readonly OriginalFile[] } {
  const files: OriginalFile[] = [];
  const writeStep = ({ id, title, pieces, sets = {}, kept, ask, notes, minutes }: LectureStep): SavedStep => {
    const written = writeInputs(graph, sets);
    files.push(...written.files);
    const step = { id, title, pieces, sets: { ...written.entries, ...kept }, ask, notes, minutes };
    // Saved data is no part of the state: nobody who changes one changes the other.
    return JSON.parse(JSON.stringify(step));
  };
  const saved = lectures.map(({ id, title, about, steps }) => ({
    id,
    title,
    ...(about === undefined ? {} : { about }),
    steps: steps.map(writeStep),
  }));
  return { saved, files };
}

/** The same in memory. Too many of anything, one name twice, or a value that cannot be set is a Problem. */
export function readLectures(
  graph: Graph,
  saved: readonly SavedLecture[],
  place: SavedPlace,
  files: FileSource,
): readonly Lecture[] {
  fits('lectures', saved.length, mostLectures);
  differ('lectures', saved);
  return saved.map(({ steps, ...lecture }) => {
    fits(`steps of ‘${short(lecture.title)}’`, steps.length, mostSteps);
    differ(`steps of ‘${short(lecture.title)}’`, steps);
    return {
      ...(defined(lecture) as Omit<Lecture, 'steps'>),
      steps: steps.map((step) => readStep(graph, step, place, files)),
    };
  });
}

function readStep(
  graph: Graph,
  { pieces, sets, ask, ...step }: SavedStep,
  { at, remedy }: SavedPlace,
  files: FileSource,
): LectureStep {
  fits(`pieces of the step ‘${short(step.title)}’`, pieces.length, mostPieces);
  fits(`options of the step ‘${short(step.title)}’`, ask?.options.length ?? 0, mostOptions);
  const inStep = { at: (id: string) => `${at(id)} of the step ‘${short(step.title)}’`, remedy };
  const { patch, unknown } = readInputs(graph, sets, inStep, files);
  return {
    ...(defined(step) as Pick<LectureStep, 'id' | 'title' | 'notes' | 'minutes'>),
    pieces: pieces.map(defined) as OwnBlock[],
    ...(Object.keys(patch).length > 0 && { sets: patch }),
    ...(Object.keys(unknown).length > 0 && { kept: unknown }),
    ...(ask && { ask }),
  };
}

const short = (title: string): string => title.slice(0, 40);
