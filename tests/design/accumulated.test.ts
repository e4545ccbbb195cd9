import { describe, expect, it } from 'vitest';
import { designs } from '../../data/designs/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { expectClose } from '../close.ts';

function valuesOf(patch: Patch, ids: readonly string[]) {
  const { inputs } = applyPatch(designGraph, initialState(designGraph), patch);
  const outcomes = createEngine(designGraph, inputs).evaluate(ids);
  return Object.fromEntries(ids.map((id) => [id, valueOrThrow(outcomes[id]!)]));
}
const shown = ['scan.accumulatedFluence', 'unshaped.scan.accumulatedFluence', 'spot.asked'];

describe('the mean accumulated fluence', () => {
  it.each(Object.entries(designs))(
    '%s: is the energy of all pulses behind the stop per area',
    (_name, { patch }) => {
      const more = {
        ...patch,
        'scan.passes': 3,
        'losses.plateTransmission': 0.93,
        'ripples.unshapedRuns': 'energy',
      };
      const ids = [...shown, 'laser.pulseEnergy', 'scan.pulseSpacing', 'scan.lineSpacing'];
      const values = valuesOf(more, ids);
      const cell = (values['scan.pulseSpacing'] as number) * (values['scan.lineSpacing'] as number);
      const perArea = (3 * (values['laser.pulseEnergy'] as number)) / cell;
      const { transmission } = values['spot.asked'] as Spot;
      // Energy of a profile to 2e-3: tests/design/properties.
      const within = { relative: 2e-3, source: 'energy of a pulse' };
      expectClose(values[shown[0]!] as number, 0.93 * transmission * perArea, within);
      // Without the plate its stop stays, and its losses are gone.
      expect((values[shown[1]!] as number) / perArea).toBeGreaterThan(transmission - 2e-3);
      expect((values[shown[1]!] as number) / perArea).toBeLessThanOrEqual(1 + 2e-3);
    },
  );

  it('at the same peak fluence the two are as their effective areas', () => {
    const values = valuesOf({}, [...shown, 'spot.effectiveArea', 'unshaped.spot.effectiveArea']);
    const areas =
      (values['spot.effectiveArea'] as number) / (values['unshaped.spot.effectiveArea'] as number);
    expectClose((values[shown[0]!] as number) / (values[shown[1]!] as number), areas, { relative: 1e-6 });
  });
});
