import { expect, it } from 'vitest';
import { generalCautions } from '../../notebooks/generalCautions.ts';
import { read } from './designOutcomes.ts';

/** By how much taking the plate out raises the peak fluence, for a beam of that width on the step of 10 mm. */
function raised(beam: number, design: Readonly<Record<string, unknown>>): number {
  const value = read({ 'laser.beamDiameter': beam / 2, 'expander.magnification': 2, ...design });
  return value('unshaped.focus.peakFluence') / value('spot.peakFluence');
}

it('taking the plate out raises the peak fluence as much as the caution says', () => {
  const [, words] = generalCautions.find(([about]) => about === 'Taking the plate out')!;
  expect(words).toMatch(
    /four to seven times with a beam as wide as the step, up to about ten times with one a fifth wider/,
  );
  for (const stop of ['open', 'round'])
    for (const z of [0, 3e-5, 5e-5]) {
      const as = raised(10e-3, { 'plate.stop': stop, 'workpiece.z': z });
      expect(as).toBeGreaterThan(4);
      expect(as).toBeLessThan(7);
    }
  const wider = raised(12e-3, { 'plate.stop': 'round' });
  expect(wider).toBeGreaterThan(9);
  expect(wider).toBeLessThan(11);
  expect(raised(12e-3, { 'plate.stop': 'open' })).toBeLessThan(wider);
});
