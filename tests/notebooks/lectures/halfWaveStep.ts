import { valueOrThrow } from '../../../lib/graph/outcome.ts';
import type { LectureStep } from '../../../lib/graph/studies.ts';
import { halfWaveLecture } from '../../../notebooks/lectures/halfWave.ts';
import { outcomesOf, type Values } from '../designOutcomes.ts';

export function stepOf(id: string): LectureStep {
  const step = halfWaveLecture.steps.find((one) => one.id === id);
  if (!step) throw new Error(`no step ‘${id}’`);
  return step;
}

/** Values by id in the design of a step, with changes. */
export function inStep(id: string, changes: Values = {}) {
  const outcomeOf = outcomesOf({ ...stepOf(id).sets, ...changes });
  return <T = number>(quantity: string): T => valueOrThrow<T>(outcomeOf(quantity) as never);
}

/** All that is said in a step, on the screen and in the notes; live values and equations left out. */
export function wordsOf(id: string): string {
  const { title, pieces, ask, notes = '' } = stepOf(id);
  const written = pieces.flatMap((piece) => [
    ...('text' in piece ? [piece.text] : []),
    ...('title' in piece && piece.title ? [piece.title] : []),
    ...('caption' in piece && piece.caption ? [piece.caption] : []),
  ]);
  return [title, ...written, ask?.question ?? '', ...(ask?.options ?? []), notes]
    .join('\n')
    .replace(/\{[^}]*\}/g, '')
    .replace(/\$[^$]*\$/g, '');
}
