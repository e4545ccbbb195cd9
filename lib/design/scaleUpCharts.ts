import { derived } from '../graph/define.ts';
import { scaledField, turningSpeed } from '../process/scaleUp.ts';
import { withSpots } from '../process/scaleUpLimits.ts';
import { usefulSpots } from '../process/spotScans.ts';
import { mostSpots, wholeSpots, work } from './scaleUpWork.ts';

/** Numbers of spots that are drawn; of more, as many are picked at equal factors. */
const places = 100;

/** At most so many of a list, first and last among them, denser at its beginning. */
function thinned(all: readonly number[]): number[] {
  if (all.length <= places) return [...all];
  const step = Math.log(all.length) / (places - 1);
  const picked = Array.from({ length: places }, (_, i) => all[Math.round(Math.exp(i * step)) - 1]!);
  return [...new Set(picked)];
}

/** Numbers of spots in equal factors from the last useful one to the end: they save no scan, and only take power. */
function beyond(last: number, end: number): number[] {
  return Array.from({ length: 20 }, (_, i) => Math.round(last * (end / last) ** ((i + 1) / 20)));
}

export const rateBySpots = derived({
  id: 'scaleUp.rateBySpots',
  name: 'area per hour against the number of spots',
  symbol: '\\dot A_\\text{L}(N)',
  unit: { spots: '1', rate: 'm^2/s' },
  about:
    'Area per hour of the larger machine for each number of spots that saves a scan, and for some beyond the last that does, up to what pulse energy and height of the field allow, or to the number chosen.',
  from: { work, most: mostSpots, spots: wholeSpots },
  compute: ({ work, most, spots }) => {
    const end = Math.max(most.all, Math.min(spots, most.energy));
    const useful = thinned(usefulSpots(work.recipe.hatch, work.machine.distance, end));
    const counts = [...new Set([...useful, ...beyond(useful.at(-1)!, end), spots])]
      .filter((count) => count <= end)
      .sort((a, b) => a - b);
    const turning = turningSpeed(work);
    return {
      spots: Float64Array.from(counts),
      rate: Float64Array.from(counts, (count) => scaledField(withSpots(work, count), turning).rate),
    };
  },
  shownAs: ({ spots }) => `${spots.length} numbers of spots`,
  formula: '\\frac{(F-o)(G-o)}{t_\\text{field}(N)+t_\\text{move}}',
  source: 'definition',
});
