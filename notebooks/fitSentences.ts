import { chosenFit } from '../lib/design/chosenFit.ts';
import { gaussianRadius } from '../lib/design/fitMarks.ts';
import {
  fitModel,
  fittedBeamRadius,
  fittedFluence,
  fittedMarks,
  fittedOffset,
  fittedUncertainty,
  gaussianFit,
  planeFit,
  profileFit,
} from '../lib/design/fits.ts';
import { light } from '../lib/design/focus.ts';
import { usedMarks } from '../lib/design/spots.ts';
import { formatNumber } from '../lib/graph/units.ts';
import type { SpotMark } from '../lib/process/spotMark.ts';
import { phrase, says } from './prose.ts';
import { energyText, fluenceText, lengthText } from './shortTexts.ts';

const models = {
  gaussian: 'a Gaussian without the plate',
  profile: 'the predicted profile',
  profileAndPlane: 'the predicted profile with its plane free',
} as const;

/** The threshold that the chosen fit gives. */
export const fitSaid = says(
  { fit: chosenFit, model: fitModel, marks: fittedMarks, all: usedMarks },
  ({ fit: { intervals, used, unmarked }, model, marks, all }) => {
    const [low, high] = intervals.thresholdFluence.map((end) => fluenceText(end));
    const empty =
      unmarked === 0 ? '' : ` and ${unmarked} ${unmarked === 1 ? 'place' : 'places'} without a mark`;
    const pulses = marks[0]?.pulses ?? 1;
    const more = all.length > marks.length;
    const each = pulses > 1 ? ` of ${pulses} pulses on a place` : more ? ' of one pulse' : '';
    const others = more
      ? ` The other ${all.length - marks.length} rows have more pulses and do not count here.`
      : '';
    return phrase`${String(used)} marks${empty}${each}, taken as those of ${models[model]}, give a threshold of ${fittedFluence} with a standard uncertainty of ${fittedUncertainty}; with 95\u202f% it lies between ${low!} and ${high!}, if the model is right.${others}`;
  },
  [fittedFluence, fittedUncertainty],
);

/** Whether the chosen model describes the marks; a doubt arises only for a Gaussian of another radius. */
export const fitVerdictSaid = says({ fit: chosenFit }, ({ fit: { verdict, reason, doubt } }) => {
  if (verdict === 'describes' && doubt !== undefined)
    return `It describes the marks, but not as the design has it. ${doubt} Its threshold rests on the radius fitted, whatever the design says.`;
  if (verdict === 'describes') return `It describes the marks. ${reason}`.trim();
  if (verdict === 'too few') return `Whether it describes the marks cannot be told. ${reason}`;
  return `It does not describe the marks, so that its threshold and interval are not to be trusted. ${reason}`;
});

/** Threshold fluences nearer than this part count as alike. */
const alike = 0.05;

/** Where the straight line says that marks begin, against the places where none was seen. */
function contradicted(start: number, marks: readonly SpotMark[]): string {
  const empty = Math.max(0, ...marks.filter(({ area }) => area === 0).map(({ energy }) => energy));
  if (!(empty > 1.05 * start)) return '';
  return ` It would have marks begin at ${energyText(start)}, although none was seen at ${energyText(empty)}.`;
}

/** What the same marks would give if they were taken as a Gaussian's. */
export const gaussianInsteadSaid = says(
  { gaussian: gaussianFit, profile: profileFit, marks: fittedMarks },
  ({ gaussian, profile, marks }) => {
    const ratio = gaussian.thresholdFluence / profile.thresholdFluence;
    const given = `Taken as those of a Gaussian without the plate, the same marks would give ${fluenceText(gaussian.thresholdFluence)}`;
    const against =
      Math.abs(Math.log(ratio)) < alike
        ? `${given}, nearly what the predicted profile gives (${fluenceText(profile.thresholdFluence)})`
        : `${given}, ${formatNumber(ratio, 2)} times what the predicted profile gives (${fluenceText(profile.thresholdFluence)})`;
    if (gaussian.verdict === 'does not describe')
      return `${against}; but a Gaussian does not describe them. ${profile.verdict === 'does not describe' ? 'The predicted profile does not either.' : 'D² against ln E is no straight line behind a plate.'}${contradicted(gaussian.thresholdEnergy, marks)}`;
    return profile.verdict === 'does not describe'
      ? `${against}. The marks look like those of a Gaussian: was the plate in when they were made?`
      : `${against}. These marks alone cannot tell the two apart; what was in the beam decides.`;
  },
);

/** The beam that the marks of a Gaussian give, and that of the design; whether they differ the verdict says. */
export const fittedRadiusSaid = says(
  { fit: gaussianFit, marks: fittedMarks, light },
  ({ fit: { uncertainties }, marks, light }) => {
    const planes = new Set(marks.map(({ z }) => z));
    const given = phrase`As 1/e² radius of the beam where they were made the marks give ${fittedBeamRadius} with a standard uncertainty of ${lengthText(uncertainties.beamRadius, 2)}`;
    if (planes.size !== 1)
      return phrase`${given}; they come from ${String(planes.size)} planes, so that it is that of none.`;
    const expected = gaussianRadius(light, [...planes][0]!);
    return phrase`${given}; the design’s beam without plate and stop has ${lengthText(expected)} there.`;
  },
  [fittedBeamRadius],
);

/** The plane that the marks give. */
export const fittedPlaneSaid = says(
  { fit: planeFit },
  ({ fit: { intervals, uncertainties, rivals } }) => {
    const [low, high] = intervals.planeOffset.map((offset) => lengthText(offset));
    const others = rivals.map(({ planeOffset }) => lengthText(planeOffset)).join(' and ');
    const rival =
      rivals.length === 0
        ? ''
        : ` Offsets of ${others} fit about as well: marks in another plane would tell which it is.`;
    return phrase`The marks were made ${fittedOffset} from where the table puts them (to be added to its z), with a standard uncertainty of ${lengthText(uncertainties.planeOffset, 2)}; with 95\u202f% between ${low!} and ${high!}.${rival}`;
  },
  [fittedOffset],
);
