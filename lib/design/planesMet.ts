import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { Stretch } from '../optics/depthInUse.ts';
import { defocusAt, type Light, planeOfDefocus } from '../optics/light.ts';
import { furthestDefocus } from '../optics/roundSpot.ts';
import { spotAt } from '../optics/spot.ts';
import { Problem } from '../problem.ts';
import { planesMet } from '../process/planesMet.ts';
import { shownDepth } from './alongBeam.ts';
import { planeDepth } from './depthOfFocus.ts';
import { zMet } from './fieldPlanes.ts';
import { light, rayleighLength } from './focus.ts';
import { asked } from './marks.ts';

const planeUnit = { z: 'm', peak: '1', dip: '1' } as const;

/** Planes that a chart shows: those met and the depth of focus, a little more to either side, where spots are computed. */
function shownStretch(light: Light, met: Stretch, depth: Stretch, rayleigh: number): Stretch {
  const [from, to] = [Math.min(met.from, depth.from), Math.max(met.to, depth.to)];
  const more = to > from ? 0.15 * (to - from) : rayleigh / 4;
  const [low, high] = [-furthestDefocus, furthestDefocus].map((zeta) => planeOfDefocus(light, zeta));
  return {
    from: Math.min(met.from, Math.max(from - more, low!)),
    to: Math.max(met.to, Math.min(to + more, high!)),
  };
}

/** Throws where the surface goes to planes in which no spot is computed. */
function checkNear(light: Light, met: Stretch): void {
  for (const z of [met.from, met.to]) {
    const defocus = Math.abs(defocusAt(light, z));
    if (defocus <= furthestDefocus) continue;
    throw new Problem(
      'outside',
      `Over the field the surface goes as far as ${shownDepth(z)} from the focus, ${formatReadable(defocus, '1', '1', 3)} Rayleigh lengths; profiles are computed up to ${furthestDefocus}. Take a smaller field, level the part, or bring the workpiece nearer to the focus.`,
      { input: 'scan.fieldWidth', value: shownDepth(z) },
    );
  }
}

export const profilesMet = derived({
  id: 'workpiece.profilesMet',
  name: 'profiles met over the field',
  symbol: '\\text{profiles}(z)',
  unit: { z: 'm', peak: '1', dip: '1', lowest: planeUnit, highest: planeUnit, deepest: planeUnit },
  about:
    'Peak fluence, relative to that where the workpiece is set, and dip of the axis below the peak, in the planes that the surface meets over the field and some to either side; with the planes of the lowest and the highest peak and of the deepest dip among those met.',
  from: { light, met: zMet, set: asked, depth: planeDepth, rayleigh: rayleighLength },
  compute: ({ light, met, set, depth, rayleigh }, report) => {
    checkNear(light, met);
    const shown = shownStretch(light, met, depth, rayleigh);
    return planesMet((z) => spotAt(light, z), set, met, shown, rayleigh, report);
  },
  shownAs: ({ lowest, highest }) =>
    `peak ${[lowest, highest].map(({ peak }) => formatReadable(peak, '1', '%', 3)).join(' to ')}`,
  formula: '\\frac{F_\\text{peak}(z)}{F_\\text{peak}},\\ D(z)',
  source: 'search',
  heavy: 'search',
});

/** One number of one plane among those met. */
const met = (
  plane: 'lowest' | 'highest' | 'deepest',
  part: 'peak' | 'dip',
  words: Record<'id' | 'name' | 'symbol' | 'about', string>,
) =>
  derived({
    ...words,
    unit: '1',
    display: '%',
    digits: 3,
    from: { profiles: profilesMet },
    compute: ({ profiles }) => profiles[plane][part],
    formula: '\\text{profiles}(z)',
    source: 'search',
  });

export const lowestPeakMet = met('lowest', 'peak', {
  id: 'workpiece.lowestPeakMet',
  name: 'lowest peak fluence over the field',
  symbol: 'q_\\text{min}',
  about:
    'Lowest peak fluence in the planes that the surface meets over the field, as a part of the peak fluence where the workpiece is set.',
});

export const highestPeakMet = met('highest', 'peak', {
  id: 'workpiece.highestPeakMet',
  name: 'highest peak fluence over the field',
  symbol: 'q_\\text{max}',
  about:
    'Highest peak fluence in the planes that the surface meets over the field, as a part of the peak fluence where the workpiece is set.',
});

export const deepestDipMet = met('deepest', 'dip', {
  id: 'workpiece.deepestDipMet',
  name: 'deepest dip over the field',
  symbol: 'D_\\text{F}',
  about:
    'Deepest dip of the axis below the peak in the planes that the surface meets over the field: 0 for a profile highest on the axis, 100\u202f% for a dark centre.',
});
