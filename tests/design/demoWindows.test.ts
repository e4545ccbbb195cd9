import { describe, expect, it } from 'vitest';
import { designs } from '../../data/designs/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { asked, unshapedAsked } from '../../lib/design/marks.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { countParts } from '../process/countParts.ts';

const ids = ['ripples.windowLow', 'ripples.windowHigh', 'ripples.pulsesLow', 'ripples.pulsesHigh'];
const parts = ['ripples.areaInWindow', 'ripples.areaTooLittle', 'ripples.areaTooMuch'];
/** Half a row at each of two edges where few rows are counted, and the 1e-3 of the method itself. */
const tolerance = cases(1e-3, 1 / 200 + 1e-3);
const asText = (share: number) => `${(100 * share).toFixed(2)} %`;

/** Parts of the field of an invented design, its pulse energy set so that the shaped peak lies at the upper bound. */
function fieldOf(patch: Record<string, unknown>) {
  const initial = initialState(designGraph);
  const engine = createEngine(designGraph);
  const value = (inputs: Record<string, unknown>, id: string) => {
    engine.setInputs(inputs);
    const outcome = engine.evaluate([id])[id]!;
    if (!hasValue(outcome)) throw new Error(`${id}: ${outcome.problem.message}`);
    return outcome.value;
  };
  const { inputs } = applyPatch(designGraph, initial, patch);
  const peak = value(inputs, 'ripples.surfacePeak') as number;
  const energy = ((inputs['laser.pulseEnergy'] as number) * (inputs['ripples.windowHigh'] as number)) / peak;
  // A hair below, so that rounding does not put the peak above.
  const set = applyPatch(designGraph, initial, { ...patch, 'laser.pulseEnergy': energy * (1 - 1e-9) }).inputs;
  const of = (id: string) => value(set, id) as number;
  return { set, of, spotOf: (id: string) => value(set, id) as Spot };
}

describe('the fields of the invented designs, with the shaped peak at the upper bound', () => {
  it.each(Object.values(designs).map(({ name, patch }) => [name, patch] as const))(
    '%s: shaped and unshaped agree with counting places ten times closer',
    (name, patch) => {
      const { set, of, spotOf } = fieldOf(patch);
      const [low, high, pulsesLow, pulsesHigh] = ids.map(of) as [number, number, number, number];
      const window = { low, high, pulsesLow, pulsesHigh, exponent: of('threshold.incubationExponent') };
      const field = {
        pulseSpacing: of('scan.pulseSpacing'),
        lineSpacing: of('scan.lineSpacing'),
        passes: set['scan.passes'] as number,
      };
      const shapedUnit = of('focus.unshapedPeakFluence');
      const rows = [
        ['', spotOf(asked.id), shapedUnit],
        [
          'unshaped.',
          spotOf(unshapedAsked.id),
          (shapedUnit * spotOf(asked.id).peak) / spotOf(unshapedAsked.id).peak,
        ],
      ] as const;
      for (const [before, spot, unit] of rows) {
        const got = parts.map((id) => of(before + id));
        console.log(
          `${name}, ${before === '' ? 'shaped' : 'unshaped'}: ${got.map(asText).join(', ')} inside, too little, too much`,
        );
        const counted = countParts(spot, unit, field, window, {
          columns: cases(4, 3),
          rows: cases(1280, 200),
          reach: 3 * Math.sqrt(spot.effectiveArea),
        });
        expectClose(got[0]!, counted.inside, { absolute: tolerance, relative: 0 });
        expectClose(got[2]!, counted.tooMuch, { absolute: tolerance, relative: 0 });
        expect(got[0]! + got[1]! + got[2]!).toBeCloseTo(1, 9);
      }
    },
    300_000,
  );
});
