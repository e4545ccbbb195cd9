import { markStretches } from '../lib/design/markCharts.ts';
import {
  markArea,
  markDiameter,
  marked,
  markInnerDiameter,
  unshapedMarkDiameter,
  unshapedMarked,
  unshapedMarkInnerDiameter,
} from '../lib/design/marks.ts';
import { dip } from '../lib/design/spot.ts';
import { pulsesOnPlace, thresholdAtN } from '../lib/design/threshold.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';

/** The mark that the plate leaves: its size, its centre, and rings about it. */
export const markSaid = says(
  {
    diameter: markDiameter,
    inner: markInnerDiameter,
    area: markArea,
    N: pulsesOnPlace,
    stretches: markStretches,
    mark: marked,
  },
  ({ diameter, inner, N, stretches, mark }) => {
    const pulses = N === 1 ? 'one pulse leaves' : phrase`${pulsesOnPlace} pulses leave`;
    if (diameter === 0)
      return phrase`With the plate ${pulses} no mark: nowhere is the fluence above ${thresholdAtN}.`;
    const hollow =
      inner > 0
        ? phrase` It is a ring: its centre, ${markInnerDiameter} wide, stays unmarked, because the dip goes below the threshold.`
        : '';
    const rings = Math.max(...stretches.map(({ marked }) => marked.length)) - 1;
    const around =
      rings > 0
        ? ` ${rings === 1 ? 'A ring of it lies' : `${rings} rings of it lie`} apart from the middle: side lobes, faint rings about the spot, that the energy lifts above the threshold.`
        : '';
    const size = mark.cut
      ? phrase`a mark at least ${markDiameter} wide: it goes on further out than the light is computed.`
      : phrase`a mark ${markDiameter} wide, ${markArea} in area.`;
    return phrase`With the plate ${pulses} ${size}${hollow}${around}`;
  },
  [thresholdAtN],
);

/** The mark without the plate. */
export const unshapedMarkSaid = says(
  {
    shaped: markDiameter,
    plain: unshapedMarkDiameter,
    inner: unshapedMarkInnerDiameter,
    shapedMark: marked,
    mark: unshapedMarked,
  },
  ({ shaped, plain, inner, shapedMark, mark }) => {
    if (plain === 0) return 'With the plate taken out nothing is marked in this plane.';
    const hollow = inner > 0 ? phrase`, with an unmarked centre of ${unshapedMarkInnerDiameter}` : '';
    if (mark.cut)
      return phrase`With the plate taken out the mark is at least ${unshapedMarkDiameter} wide, and goes on further out than the light is computed.`;
    if (shaped === 0 || shapedMark.cut)
      return phrase`With the plate taken out the mark is ${unshapedMarkDiameter} wide${hollow}.`;
    return phrase`With the plate taken out it is ${unshapedMarkDiameter} wide${hollow}, ${formatNumber(plain / shaped, 2)} times as wide.`;
  },
);

/** From which peak on the dip is marked too. */
export const dipMarkSaid = says({ dip }, ({ dip: depth }) => {
  if (depth < dip.zeroBelow!)
    return 'The spot is highest on its axis here, so that a mark begins there and never has an unmarked centre.';
  if (depth > 0.999) return 'The axis is dark here, so that the centre stays unmarked at any energy.';
  return phrase`The dip of ${dip} stays unmarked while the peak is below ${formatNumber(1 / (1 - depth), 3)} times the threshold: close above the threshold every spot with a dip writes a ring.`;
});
