import { bestShaped, timeGain } from '../lib/design/comparison.ts';
import { focalLength } from '../lib/design/lens.ts';
import { areaPerHour } from '../lib/design/scaleUp.ts';
import {
  scaledFieldGain,
  scaledShaped,
  scaledShapedDiameter,
  scaledShapedLens,
  scaledShapedRate,
  scaledShapedShot,
  scaledShapedTime,
  scaledTimeGain,
  scaledUnshaped,
  scaledUnshapedDiameter,
  scaledUnshapedLens,
  scaledUnshapedRate,
  scaledUnshapedTime,
  todayBestRate,
} from '../lib/design/scaleUpBest.ts';
import { moveTime, spotDistance } from '../lib/design/scaleUpInputs.ts';
import { plateLoad } from '../lib/design/scaleUpPlate.ts';
import { shotEnergy, wholeSpots } from '../lib/design/scaleUpWork.ts';
import { type Phrase, phrase, says } from './prose.ts';
import { scaleLimitWords } from './scaleUpWords.ts';
import { percentText } from './shortTexts.ts';

/** Gains nearer to 1 than this are none. */
const noGain = 0.03;

const widest = { shaped: scaledShapedDiameter, unshaped: scaledUnshapedDiameter };

/** Each beam at its best for today’s machine, written by the larger one. */
export const scaledBestSaid = says(
  {
    best: scaledShaped,
    plain: scaledUnshaped,
    gain: scaledTimeGain,
    rate: scaledShapedRate,
    time: scaledShapedTime,
    plainRate: scaledUnshapedRate,
    plainTime: scaledUnshapedTime,
    distance: spotDistance,
    spots: wholeSpots,
    ...widest,
  },
  ({ best, plain, gain, distance, spots }): Phrase => {
    const start = phrase`With the settings that are best for today’s machine the larger one brings ${scaledShapedRate} with the plate (${scaledShapedTime} for a square metre) and ${scaledUnshapedRate} with the plate taken out (${scaledUnshapedTime}).`;
    const verdict =
      gain > 1 + noGain
        ? phrase` The plate is worth a factor of ${scaledTimeGain} in time.`
        : gain < 1 - noGain
          ? phrase` The plain beam is the faster one: the plate has ${scaledTimeGain} of its rate.`
          : ' In time the plate gains nothing.';
    const limits =
      best.limit === plain.limit
        ? ` What limits both is ${scaleLimitWords[best.limit]}.`
        : ` What limits the shaped beam is ${scaleLimitWords[best.limit]}; the plain one, ${scaleLimitWords[plain.limit]}.`;
    const smaller = Math.min(best.size, plain.size);
    const size =
      smaller < 1
        ? ` A pulse has not enough energy for all spots as large as that: they are made smaller, down to ${percentText(smaller, 2)} of their size.`
        : '';
    const close =
      spots > 1 && Math.max(best.diameter, plain.diameter) > distance
        ? phrase` Spots of ${scaledShapedDiameter} and ${scaledUnshapedDiameter} do not stand side by side ${spotDistance} apart: they need more room.`
        : '';
    return [start, verdict, limits, size, close].flat();
  },
);

/** Its gain beside that of Throughput, and today’s machine with the same moves. */
export const scaledGainSaid = says(
  { gain: timeGain, field: scaledFieldGain, move: moveTime, today: todayBestRate, best: bestShaped },
  ({ move }) => {
    const moves =
      move === 0
        ? phrase`here fields follow one another at once, and it is ${scaledFieldGain}`
        : phrase`here each field costs the move of ${moveTime} besides, with either beam, which hides part of the gain: without moves it would be ${scaledFieldGain}`;
    return phrase`Under Throughput the plate is worth a factor of ${timeGain} for one field on today’s machine; ${moves}. Today’s machine with its best setting and one spot would bring ${todayBestRate}, the same moves counted.`;
  },
);

/** What spots as large as that need, and what their pulses do to the plate. */
export const scaledOpticsSaid = says(
  {
    lens: scaledShapedLens,
    plain: scaledUnshapedLens,
    today: focalLength,
    shot: scaledShapedShot,
    recipe: shotEnergy,
    load: plateLoad,
    area: areaPerHour,
  },
  ({ shot, recipe, load }) => {
    const plate = (load * shot) / recipe;
    const bears =
      plate > 1
        ? 'With it the margin of the plate would not be kept.'
        : 'With it, too, the margin of the plate would be kept.';
    return phrase`Much of that is other optics, which are not part of a larger laser: such spots take a lens of ${scaledShapedLens} with the plate and of ${scaledUnshapedLens} without it, where today’s has ${focalLength}, or beams made narrower to match. One pulse for all spots would hold ${scaledShapedShot} with the plate, where the recipe has ${shotEnergy}. ${bears}`;
  },
);
