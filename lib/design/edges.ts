import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { edgeMap as mapOf } from '../process/edgeMap.ts';
import { highestLevel, edgeProfiles as profilesOf, edgeWidth as widthOf } from '../process/edgeProfile.ts';
import { field } from './fieldPlanes.ts';
import { hatch, motion } from './hatch.ts';
import { repetitionRate } from './laser.ts';
import { asked } from './marks.ts';
import { spotDiameter } from './pulsesOnPlace.ts';
import { lineSpacing, pulseSpacing } from './scanInputs.ts';

const scanned = { spot: asked, hatch, motion, field };

/** Says where pulses or lines lie too far apart for the mean along the edge to be all there is. */
const coarseNote = ({
  p,
  spacing,
  D,
}: {
  readonly p: number;
  readonly spacing: number;
  readonly D: number;
}) =>
  Math.max(p, spacing) > 0.75 * D
    ? 'Pulses or lines lie further apart than three quarters of the spot: this is the mean along the edge, about which single pulses stand out.'
    : undefined;

export const edgeProfiles = derived({
  id: 'scan.edgeProfiles',
  name: 'accumulated fluence across the edges',
  symbol: 'F_\\text{acc}(x)/\\bar F_\\text{acc}',
  unit: {
    ends: { distance: 'm', level: '1' },
    sides: { distance: 'm', level: '1' },
  },
  about:
    'Accumulated fluence over its mean in a wide field, all passes, averaged along an edge far from the corners, against the distance from that edge, inside above 0: at the edge where the first lines end, and at the one beside which they run. Turning at the edge with the laser on counts.',
  from: { ...scanned, p: pulseSpacing, spacing: lineSpacing, D: spotDiameter },
  compute: ({ spot, hatch, motion, field }) => profilesOf(spot, { ...hatch, ...field }, motion),
  enteredFor: () => ({ keys: Object.keys(scanned) }),
  valid: coarseNote,
  shownAs: ({ ends }) => `${ends.distance.length} places`,
  formula: '\\frac{v\\cos\\theta}{\\int I\\,dA}\\int\\!dt\\int\\!I\\,dy',
  source: 'integration',
  heavy: 'picture',
});

export const edgeExcess = derived({
  id: 'scan.edgeExcess',
  name: 'highest accumulated fluence at an edge',
  symbol: 'x_\\text{edge}',
  unit: '1',
  display: '%',
  digits: 3,
  about:
    'Highest accumulated fluence near an edge of the field, averaged along it, over the mean of a wide field: 100\u202f% where it is nowhere above it.',
  from: { profiles: edgeProfiles },
  compute: ({ profiles: { ends, sides } }) => Math.max(1, highestLevel(ends), highestLevel(sides)),
  formula: '\\max_x F_\\text{acc}(x)/\\bar F_\\text{acc}',
  source: 'integration',
});

/** Part of the mean within which the accumulated fluence counts as that of the field. */
const within = 0.05;

export const edgeWidth = derived({
  id: 'scan.edgeWidth',
  name: 'width of the edge of the field',
  symbol: 'b_\\text{edge}',
  unit: 'm',
  display: 'um',
  digits: 3,
  about:
    'Distance inward from the edge of the field from which on the accumulated fluence, averaged along the edge, stays within 5\u202f% of its mean; the wider one of the edge where the first lines end and the one beside which they run.',
  from: { profiles: edgeProfiles, motion },
  compute: ({ profiles: { ends, sides }, motion }) => {
    const widths = [ends, sides].map((profile) => widthOf(profile, within));
    if (widths[0] === undefined || widths[1] === undefined) throw noInside(motion.turnRound);
    return Math.max(...(widths as number[]));
  },
  enteredFor: () => ({ keys: ['profiles'] }),
  formula: '|F_\\text{acc}(x)/\\bar F_\\text{acc}-1|\\le 5\\,\\%',
  source: 'integration',
});

function noInside(turn: 'outside' | 'inside'): Problem {
  return turn === 'inside'
    ? new Problem(
        'absent',
        'Nowhere in the field does the accumulated fluence come within 5\u202f% of what it is at full speed: the scanner speeds up and slows down all along the lines. Scan slower, take a wider field, or turn round outside it with the laser off.',
        { input: 'scan.turnRound' },
      )
    : new Problem(
        'absent',
        'The field is so small against the spot that its edges meet: nowhere does the accumulated fluence come within 5\u202f% of that of a wide field. Take a larger field.',
        { input: 'scan.fieldWidth' },
      );
}

export const edgeMap = derived({
  id: 'scan.edgeMap',
  name: 'accumulated fluence over a corner',
  symbol: 'F_\\text{acc}(x,y)/\\bar F_\\text{acc}',
  unit: { left: 'm', bottom: 'm', step: 'm', columns: 'none', rows: 'none', level: '1', highest: '1' },
  about:
    'Accumulated fluence over its mean in a wide field around the lower left corner of the field, from one and a half spot diameters outside to five and a half inside, pulse by pulse as they fall, all passes with their angles: the first pulse of a line half a pulse spacing from its beginning. Of more than twelve turned passes twelve stand for all.',
  from: { ...scanned, rate: repetitionRate },
  compute: ({ spot, hatch, motion, field, rate }, report) =>
    mapOf(spot, { ...hatch, ...field }, motion, rate, report),
  shownAs: ({ highest }) => `up to ${formatReadable(highest, '1', '%', 3)} of the mean`,
  formula: '\\frac{p\\,\\Delta y}{n\\int I\\,dA}\\sum_\\text{pulses}I(x-x_i,y-y_i)',
  source: 'definition',
  heavy: 'search',
});
