import { mapExtent } from '../lib/design/familyMap.ts';
import { workpieceZ } from '../lib/design/focus.ts';
import { measuredProfileZ } from '../lib/design/measuredSpot.ts';
import type { Derived } from '../lib/graph/quantity.ts';

/** What a slider may span: a place to either side, in the unit of its input. */
interface Span {
  readonly low: number;
  readonly high: number;
}

/**
 * Sliders that follow the design, by the id of their input: a focus a tenth of a millimetre deep and one of a centimetre
 * want other steps. What may be typed stays the same.
 */
export const sliderSpans: Readonly<Record<string, Derived<Span>>> = {
  [workpieceZ.id]: mapExtent,
  [measuredProfileZ.id]: mapExtent,
};
