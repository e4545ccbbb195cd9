import { describe, expect, it } from 'vitest';
import { marksTruth } from '../../data/measured/drawMarks.ts';
import { leaveOut } from '../../lib/design/leftOut.ts';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import { focusRadius } from '../../lib/optics/light.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, read } from '../notebooks/designOutcomes.ts';
import { gaussianMark, syntheticMarks } from '../process/syntheticMarks.ts';

const light = { wavelength: 1.03e-6, beamRadius: 5e-3, focalLength: 0.1 };
const threshold = 2000;

/** A table of marks of the unshaped focus of the initial design, with a threshold that falls as N^(S−1). */
function gaussianTable(counts: readonly number[], exponent = 1) {
  const radius = focusRadius(light);
  const rows = counts.flatMap((pulses) => {
    const fluence = threshold * pulses ** (exponent - 1);
    const thresholdEnergy = (fluence * Math.PI * radius ** 2) / 2;
    const recipe = {
      seed: 60 + pulses,
      thresholdEnergy,
      markAt: gaussianMark(radius),
      reading: 0.05e-6,
      pulses,
    };
    return syntheticMarks(recipe).marks;
  });
  const lines = rows.map(({ energy, area, pulses }) => `${energy * 1e6};${area * 1e12};${pulses}`);
  return readSpotFile(['E (µJ);area (µm²);N', ...lines].join('\n'), 'gaussian.csv');
}

const fitted = { 'threshold.source': 'fitted' };

describe('the threshold from measured spots', () => {
  it('waits for a table, which it names', () => {
    expect(outcomesOf(fitted)('threshold.fluence')).toMatchObject({
      problem: { kind: 'absent', parts: { input: 'threshold.spotTable' } },
    });
  });

  it('without the plate: threshold and beam radius, the losses of the optics counted', () => {
    const inputs = {
      ...fitted,
      'threshold.fitModel': 'gaussian',
      'threshold.spotTable': gaussianTable([1]),
      'losses.opticsTransmission': 0.8,
      'losses.plateTransmission': 0.5,
    };
    const of = read(inputs);
    const [fluence, uncertainty] = ['threshold.fluence', 'threshold.uncertainty'].map(
      (id) => of(id) as unknown as number,
    );
    expect(Math.abs(fluence! - 0.8 * threshold)).toBeLessThan(3 * uncertainty!);
    expect(uncertainty!).toBeLessThan(0.04 * threshold);
    expectClose(of('threshold.fittedBeamRadius') as unknown as number, focusRadius(light), {
      relative: 0.04,
    });
    expect(outcomesOf(inputs)('threshold.gaussianFluence')).not.toHaveProperty('note');
  });

  it('with the plate taken for marks made without it: said beside the value', () => {
    const inputs = { ...fitted, 'threshold.spotTable': gaussianTable([1]) };
    expect(outcomesOf(inputs)('threshold.profileFluence')).toMatchObject({
      note: expect.stringContaining('does not describe the marks'),
    });
  });

  it('of several numbers of pulses the fewest count, and the others give the incubation', () => {
    const inputs = {
      'threshold.fitModel': 'gaussian',
      'threshold.spotTable': gaussianTable([1, 10, 100, 1000], 0.85),
    };
    const { points, power } = read(inputs)('threshold.incubationFit') as unknown as {
      points: readonly { pulses: number }[];
      power: { exponent: number; uncertainties: { exponent: number } };
    };
    expect(points.map(({ pulses }) => pulses)).toEqual([1, 10, 100, 1000]);
    expect(Math.abs(power.exponent - 0.85)).toBeLessThan(3 * power.uncertainties.exponent);
    const one = read(inputs)('threshold.fittedFluence') as unknown as number;
    expectClose(one, threshold, { relative: 0.06 });
  });

  it('the demo: the threshold that it was made with, once the outlier is left out', async () => {
    const { readFileSync } = await import('node:fs');
    const { readDesign } = await import('../../notebooks/keeping/readDesign.ts');
    const bytes = (path: string) => new Uint8Array(readFileSync(new URL(`../../${path}`, import.meta.url)));
    const { inputs } = readDesign(bytes('data/designs/rain-gauge-funnel.json'), 'rain-gauge-funnel.json');
    const text = new TextDecoder().decode(bytes('data/measured/rain-gauge-spots.csv'));
    const table = { 'threshold.spotTable': readSpotFile(text, 'rain-gauge-spots.csv') };
    const all = outcomesOf({ ...inputs, ...table })('threshold.profileFluence');
    expect(all).toMatchObject({ note: expect.stringContaining('does not describe') });
    const clean = {
      ...inputs,
      ...table,
      'threshold.leftOut': leaveOut(marksTruth.outlierRow, 'outlier', []),
    };
    const outcome = outcomesOf(clean)('threshold.profileFluence') as { value: number; note?: string };
    const uncertainty = read(clean)('threshold.profileUncertainty') as unknown as number;
    expect(outcome.note).toBeUndefined();
    expect(Math.abs(outcome.value - marksTruth.threshold)).toBeLessThan(2 * uncertainty);
  });
});
