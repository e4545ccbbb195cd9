import { branches } from '../lib/design/depthLaw.ts';
import { measuredNoise, measuredSection } from '../lib/design/measuredSection.ts';
import { sectionFile, sectionPasses } from '../lib/design/sectionFile.ts';
import { sectionFit } from '../lib/design/sectionFit.ts';
import {
  describedUpTo,
  measuredDepth,
  measuredTopWidth,
  sectionChiSquare,
  sectionCorrelation,
  sectionDepthPerPulse,
  sectionDepthUncertainty,
  sectionResidual,
  sectionThreshold,
  sectionThresholdUncertainty,
  todaysDepth,
  todaysTopWidth,
} from '../lib/design/sectionResults.ts';
import { incubationExponent } from '../lib/design/threshold.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';
import { angleText, lengthText, percentText } from './shortTexts.ts';

const passesText = (passes: number) =>
  `${Math.round(passes)} ${Math.round(passes) === 1 ? 'pass' : 'passes'}`;

/** What was read, which way it counts, and how it was levelled. */
export const sectionReadSaid = says(
  { file: sectionFile, section: measuredSection },
  ({ file, section: { position, sides, tilt, downwards, wayFrom, missing } }) => {
    const lost =
      missing === 0
        ? ''
        : missing === 1
          ? ', and one without a height is left out'
          : `, and ${missing} without a height are left out`;
    const grow = downwards ? 'downwards' : 'upwards';
    const way =
      wayFrom === 'groove'
        ? `Its values are taken to count ${grow}, since the groove lies where they are ${downwards ? 'larger' : 'smaller'}.`
        : `As much of it lies above the surface as below; that its values count ${grow} is taken from its heading.`;
    const [left, right] = sides.map((ends) => ends.map((place) => lengthText(Math.abs(place))));
    return phrase`“${file?.name ?? ''}” gives ${String(position.length)} places across the groove${lost}. ${way} The surface is taken as the straight line through what lies from ${left![1]!} to ${left![0]!} to the left of the middle of the groove and from ${right![0]!} to ${right![1]!} to the right of it; dust, pits and a rim there count little or nothing. It was tilted by ${angleText(Math.atan(Math.abs(tilt)), 2)}, and scatters about the line by ${measuredNoise}, which counts as the noise.`;
  },
  [measuredNoise],
);

/** What lies above the surface. */
export const sectionRimSaid = says({ section: measuredSection }, ({ section: { above, rim } }) => {
  if (above === 0) return '';
  const places = above === 1 ? 'One place lies' : `${above} places lie`;
  return `${places} above the surface by more than three times the noise, up to ${lengthText(rim, 2)}: a rim, recast melt or dust. The model knows none of them, and the fit leaves ${above === 1 ? 'it' : 'them'} out.`;
});

/** Differences below this part count as none. */
const alike = 0.03;

/** A computed length against the measured one: "12 % deeper than measured". */
function difference(computed: number, measured: number, [as, more, less]: readonly string[]): string {
  const part = computed / measured - 1;
  if (Math.abs(part) < alike) return `about as ${as} as measured`;
  if (part >= 1) return `${formatNumber(1 + part, 2)} times as ${as} as measured`;
  return `${percentText(Math.abs(part), 2)} ${part > 0 ? more : less} than measured`;
}

/** The measured groove against that of today. */
export const sectionAgainstSaid = says(
  {
    passes: sectionPasses,
    depth: measuredDepth,
    width: measuredTopWidth,
    computed: todaysDepth,
    computedWidth: todaysTopWidth,
  },
  ({ passes, depth, width, computed, computedWidth }) => {
    const deep = difference(computed, depth, ['deep', 'deeper', 'shallower']);
    const wide = difference(computedWidth, width, ['wide', 'wider', 'narrower']);
    return phrase`The measured groove is ${measuredDepth} deep and ${measuredTopWidth} wide at the top. With ${passesText(passes)} in the plane of the workpiece, and with the depth per pulse and the threshold of today, the model cuts one that is ${todaysDepth} deep, ${deep}, and ${todaysTopWidth} wide, ${wide}.`;
  },
);

/** The fitted values, and what was held. */
export const sectionFitSaid = says(
  { fit: sectionFit, passes: sectionPasses, exponent: incubationExponent, branches },
  ({ fit: { used, inside }, passes, exponent, branches }) => {
    const held =
      exponent === 1
        ? 'The threshold is that of one pulse and is held for every further one, as the incubation exponent of 1 says'
        : `The threshold is that of the first pulse on a place; how it changes with the pulses, by the incubation exponent of ${formatNumber(exponent, 3)}, is held as it is`;
    const second =
      branches === 'two' ? ' The values are those of the first line of removal; the second is held too.' : '';
    return phrase`Of ${String(used)} places that are fitted ${String(inside)} lie inside the groove. The computed groove of ${passesText(passes)} comes nearest to them with a depth per pulse of ${sectionDepthPerPulse}, standard uncertainty ${sectionDepthUncertainty}, and a threshold of ${sectionThreshold}, standard uncertainty ${sectionThresholdUncertainty}. ${held}: with another exponent the same groove gives another threshold.${second}`;
  },
  [sectionDepthPerPulse, sectionDepthUncertainty, sectionThreshold, sectionThresholdUncertainty],
);

/** Inflation of the variances up to which neighbours count as independent. */
const independent = 1.5;

/** Where the uncertainties come from. */
export const sectionScatterSaid = says({ fit: sectionFit }, ({ fit: { inflation, correlationLength } }) => {
  if (inflation < independent)
    return 'The uncertainties come from the scatter of the places about the fitted groove; neighbouring places deviate nearly independently of each other.';
  const length = correlationLength > 0 ? ` over about ${lengthText(correlationLength, 2)}` : '';
  return `The uncertainties come from the scatter of the places about the fitted groove. Neighbouring places deviate alike${length}, so that they tell less than their number, and the uncertainties are made ${formatNumber(Math.sqrt(inflation), 2)} times as large for it.`;
});

/** χ² below which the surface beside the groove scatters more than the groove. */
const quieter = 0.3;

/** Whether the model describes the groove. */
export const sectionVerdictSaid = says(
  { fit: sectionFit, section: measuredSection },
  ({ fit: { reducedChiSquare, residual }, section: { noise } }) => {
    const given = phrase`Inside the groove measured and fitted depth differ by ${sectionResidual} (root mean square)`;
    if (reducedChiSquare > describedUpTo)
      return phrase`${given}, ${formatNumber(residual / noise, 2)} times the noise of the surface (reduced χ² ${sectionChiSquare}, about 1 where a model fits). So the model does not describe it to the noise: the floor may be rough, melt or debris may lie in it, or energy, speed, passes or plane are not those it was made with. The uncertainties count such scatter; a wrong setting they do not.`;
    if (reducedChiSquare < quieter)
      return phrase`${given}, less than the surface beside it scatters (reduced χ² ${sectionChiSquare}, about 1 where a model fits): something lies or was cut beside the groove that the line through the surface does not follow.`;
    return phrase`${given}, no more than the noise of the surface lets expect (reduced χ² ${sectionChiSquare}, about 1 where a model fits): the model describes it.`;
  },
  [sectionResidual, sectionChiSquare],
);

/** Correlation from which the two values are said to be hard to tell apart. */
const hardToPart = 0.95;

/** What the groove cannot tell apart. */
export const sectionTogetherSaid = says(
  { fit: sectionFit },
  ({ fit: { correlation } }) =>
    correlation > hardToPart
      ? phrase`The two are hard to tell apart: a larger depth per pulse with a higher threshold cuts nearly the same groove (correlation ${sectionCorrelation}). The uncertainties above count that, but a small error of the energy or of the spot’s width goes into both. A groove with another energy, or a threshold from single spots, parts them.`
      : phrase`The errors of the two values go together with a correlation of ${sectionCorrelation}; the uncertainties above count that.`,
  [sectionCorrelation],
);
