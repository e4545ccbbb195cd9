import type { FitCheck } from './fitCheck.ts';
import type { SpotMark } from './spotMark.ts';

/** A place without a mark, with the area predicted there (m², negative below threshold) and how far that may be off. */
export interface Unmarked {
  readonly mark: SpotMark;
  readonly area: number;
  readonly spread: number;
}

/** So many standard deviations above 0 a predicted area must lie before a missing mark speaks against the model. */
export const clearly = 4;

/**
 * Places without a mark are not fitted: near the threshold chance decides. But where a mark of clear size is predicted,
 * none may be missing. No check without such places.
 */
export function checkUnmarked(unmarked: readonly Unmarked[]): FitCheck[] {
  if (unmarked.length === 0) return [];
  const missing = unmarked.filter(({ area, spread }) => area > clearly * spread);
  const rows = missing.map(({ mark }) => mark.row).join(', ');
  const many = missing.length > 1;
  const text =
    missing.length === 0
      ? `${unmarked.length === 1 ? 'The place' : `All ${unmarked.length} places`} without a mark ${unmarked.length === 1 ? 'agrees' : 'agree'} with the threshold.`
      : `${many ? 'Rows' : 'Row'} ${rows} ${many ? 'have' : 'has'} no mark where the model predicts one of clear size.`;
  return [
    { kind: 'unmarked', probability: missing.length === 0 ? 1 : 0, passed: missing.length === 0, text },
  ];
}
