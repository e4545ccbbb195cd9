import { describe, expect, it } from 'vitest';
import { fitterWithPlate } from '../../lib/design/fitMarks.ts';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import { focusRadius, type Light, rayleighLength } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import type { MarkFit } from '../../lib/process/markFit.ts';
import type { SpotMark } from '../../lib/process/spotMark.ts';
import { cases } from '../cases.ts';
import { outcomesOf, read, type Values } from '../notebooks/designOutcomes.ts';
import { blurredSpot } from '../process/blurredSpot.ts';
import { boxedMarks } from '../process/boxedMarks.ts';
import { crossedLight } from '../process/spotsUnderTest.ts';
import { gaussianMark, type MarkRecipe, syntheticMarks } from '../process/syntheticMarks.ts';

const tables = cases(300, 40);
const thresholdEnergy = 2e-6;

/** Of the tables of these marks the share to which `says` applies. */
function shareOf(
  markAt: MarkRecipe['markAt'],
  says: (marks: readonly SpotMark[]) => boolean,
  count = tables,
): number {
  const seeds = Array.from({ length: count }, (_, i) => 7000 + i);
  const told = seeds.filter((seed) => says(syntheticMarks({ seed, thresholdEnergy, markAt }).marks));
  return told.length / count;
}

/** A table of marks as a person would type it: outer diameters, and a hole where the area is less than theirs. */
function tableOf(marks: readonly SpotMark[], z = 0) {
  const lines = marks.map(({ energy, area, diameters = [0, 0] }) => {
    const [x, y] = area === 0 ? [0, 0] : diameters;
    const hole = Math.sqrt(Math.max(0, x * y - (4 * area) / Math.PI));
    return [1e6 * energy, 1e6 * x, 1e6 * y, 1e6 * hole, 1e3 * z].map(String).join('\t');
  });
  const header = 'E (µJ)\tdx (µm)\tdy (µm)\tinner diameter (µm)\tz (mm)';
  return { 'threshold.spotTable': readSpotFile([header, ...lines].join('\n'), 'spots.tsv') };
}

const fitOf = (id: string, inputs: Values) => (outcomesOf(inputs)(id) as { value: MarkFit }).value;
const refused = ({ verdict }: MarkFit) => verdict === 'does not describe';

/** Three standard deviations of a share of so many tables. */
const chance = (share: number, count: number) => 3 * Math.sqrt((share * (1 - share)) / count);

function expectTold(name: string, wrong: number, alarms: number, count = tables): void {
  console.log(`${name}: told ${(100 * wrong).toFixed(1)} %, false alarms ${(100 * alarms).toFixed(1)} %`);
  expect(wrong).toBeGreaterThanOrEqual(0.9 - chance(0.9, count));
  expect(alarms).toBeLessThanOrEqual(0.07 + chance(0.07, count));
}

describe(`${tables} tables given to the design`, () => {
  // A plate without a stop and M² above 1 take six times as long, the plane fitted too ten times.
  const designs: readonly { name: string; inputs: Values; count: number; id?: string }[] = [
    { name: 'the initial design', inputs: {}, count: tables },
    {
      name: 'the initial design, the plane fitted too',
      inputs: {},
      count: cases(12, 3),
      id: 'threshold.planeFit',
    },
    {
      name: 'an open plate, M² 1.15',
      inputs: { 'plate.stop': 'open', 'laser.beamPropagationRatio': 1.15 },
      count: tables / 4,
    },
  ];
  it.each(designs)(
    'of a beam 20 % elliptical: $name',
    ({ name, inputs, count, id = 'threshold.profileFit' }) => {
      const light = read(inputs)('focus.light') as unknown as Light;
      const share = (aspect: number) => {
        const markAt = boxedMarks(blurredSpot({ ...light, beamAspect: aspect }, 0));
        const judge = (marks: readonly SpotMark[]) => refused(fitOf(id, { ...inputs, ...tableOf(marks) }));
        return shareOf(markAt, judge, count);
      };
      expectTold(name, share(1.2), share(1), count);
    },
    300_000,
  );

  it('of a beam 20 % elliptical behind crossed steps, with the areas as they are', () => {
    const judge = fitterWithPlate(crossedLight, { optics: 1, plate: 1 });
    const share = (aspect: number) =>
      shareOf(boxedMarks(spotAt({ ...crossedLight, beamAspect: aspect }, 0)), (marks) =>
        refused(judge(marks)),
      );
    expectTold('crossed steps', share(1.2), share(1));
  }, 300_000);

  it('of a beam without the plate 0.75 Rayleigh lengths from where the table says', () => {
    const light = read()('focus.light') as unknown as Light;
    const radius = focusRadius(light);
    const told = (marks: readonly SpotMark[], z: number) => {
      const fit = fitOf('threshold.gaussianFit', tableOf(marks, z));
      return refused(fit) || fit.doubt !== undefined;
    };
    const markAt = gaussianMark(radius, radius, true);
    const share = (z: number) => shareOf(markAt, (marks) => told(marks, z));
    expectTold('Gaussian, another waist', share(0.75 * rayleighLength(light)), share(0));
  }, 300_000);
});
