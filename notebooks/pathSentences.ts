import { edgeExcess, edgeWidth } from '../lib/design/edges.ts';
import { hatch, overscanLength } from '../lib/design/hatch.ts';
import { spotDiameter } from '../lib/design/pulsesOnPlace.ts';
import { directions, hatchAngle, interlacing, turnRound } from '../lib/design/scannerInputs.ts';
import { phrase, says } from './prose.ts';
import { ordinal } from './shortTexts.ts';

/** In which order lines and passes are written. */
export const pathOrderSaid = says(
  { inter: interlacing, directions, hatch, angle: hatchAngle },
  ({ inter, directions, hatch: { passes: count }, angle }) => {
    const way = directions === 'both' ? 'to and fro' : 'all the same way';
    const every = Math.round(inter);
    const lines =
      every > 1
        ? `Every ${ordinal(every)} line is written first, ${way}, then round by round those between: neighbouring lines follow one another later, when heat has had time to spread.`
        : `The lines are written one beside the other, ${way}.`;
    if (count === 1) return lines;
    return angle === 0
      ? phrase`${lines} Each of the ${`${count}`} passes goes along the same lines.`
      : phrase`${lines} Each of the ${`${count}`} passes is turned by ${hatchAngle} against the one before.`;
  },
);

/** Excess over the mean below this is called none. */
const little = 0.05;

/** What turning round does to the field. */
export const turnRoundSaid = says(
  { turn: turnRound, over: overscanLength, excess: edgeExcess, D: spotDiameter },
  ({ turn, over, excess, D }) => {
    if (turn === 'outside')
      return phrase`The scanner turns round outside the field with the laser off. Each end of a line needs an overscan of ${overscanLength}, the square of the speed over twice the acceleration; in return the pulses lie evenly right up to the edge.`;
    const slows = phrase`The scanner turns round at the edge with the laser on: over ${overscanLength} at each end of a line it slows down and speeds up, while the laser fires at an even rate, so that pulses crowd`;
    if (excess <= 1 + little)
      return phrase`${slows}. ${over < D ? phrase`That way is short against the spot of ${spotDiameter}, and the` : 'The'} accumulated fluence at the edges rises to no more than ${edgeExcess} of its mean.`;
    return phrase`${slows}: the accumulated fluence there rises to ${edgeExcess} of its mean. Turn round outside with the laser off, which takes an overscan of ${overscanLength} at each end, scan slower, or let the laser fire by distance instead of time where it can.`;
  },
);

/** How wide the edge of the field is, and what to do about it. */
export const edgeWidthSaid = says({ width: edgeWidth, D: spotDiameter }, ({ width, D }) => {
  const from = phrase`From ${edgeWidth} inside the edge on, the accumulated fluence averaged along it stays within 5\u202f% of its mean`;
  const wider =
    'Where the field must be even right up to its edge, scan one that is wider by this on every side.';
  return width < 1.5 * D
    ? phrase`${from}: the size of the spot rounds the edge off. ${wider}`
    : phrase`${from}, far more than the size of the spot: that is the turn of the scanner. ${wider}`;
});
