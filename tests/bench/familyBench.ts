import { findFamily, sampleSearch } from '../../lib/optics/family.ts';
import { findZeroCurvaturePlanes } from '../../lib/optics/onAxis.ts';
import { findUsablePlanes } from '../../lib/optics/usablePlanes.ts';
import { lightBehind } from '../optics/lightBehind.ts';
import { type Row, timeRuns } from './timing.ts';

const rounds = 20;
const plate = (stop: number) => [
  { outer: 1, phase: Math.PI },
  { outer: stop, phase: 0 },
];

/** Kinds along z, ζ = −7 to 7, and the planes found in them: aims 150 ms coherent, 400 ms with M². */
export function benchFamily(): Row[] {
  return [
    { stop: 1.4, ratio: 1 },
    { stop: 6, ratio: 1 },
    { stop: 6, ratio: 1.2 },
    { stop: 6, ratio: 3 },
  ].flatMap(({ stop, ratio }) => {
    const light = lightBehind(plate(stop), { beamPropagationRatio: ratio });
    const samples = sampleSearch(light, 7);
    const family = findFamily(light, samples);
    const flat = findZeroCurvaturePlanes(plate(stop));
    const wish = { largestDip: 0.02, leastContrast: 0.1, tolerance: 0.05 };
    const find = (goal: 'all' | 'deepest') => () =>
      findUsablePlanes(light, samples, family, { goal, ...wish }, flat);
    const name = `R/w = ${stop}, M² = ${ratio}`;
    return [
      {
        what: `kinds through the focus, ${name}`,
        times: timeRuns(() => findFamily(light, sampleSearch(light, 7)), rounds, 3),
        remark: `${family.length} stretches`,
      },
      { what: `usable planes of every kind, ${name}`, times: timeRuns(find('all'), rounds, 3) },
      { what: `deepest planes, ${name}`, times: timeRuns(find('deepest'), rounds, 3) },
    ];
  });
}
