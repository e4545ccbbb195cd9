import { expanderKind } from '../lib/design/expander.ts';
import { beamPropagationRatio, measuredBeam, measuredDiameter, wavelength } from '../lib/design/laser.ts';
import {
  gaussianFitDiameter,
  measuredAngle,
  measuredDiameterX,
  measuredDiameterY,
  measuredEllipticity,
  measuredUncertainty,
} from '../lib/design/measured.ts';
import {
  causticRatio,
  causticRatioUncertainty,
  causticRayleighLength,
  causticRayleighLengthUncertainty,
  causticScatter,
  causticWaistDiameter,
  causticWaistDiameterUncertainty,
  causticWaistPosition,
  causticWaistPositionUncertainty,
  measuredCaustic,
} from '../lib/design/measuredCaustic.ts';
import { beamSource, ratioSource } from '../lib/design/rawBeam.ts';
import { causticOrigin, usedWaistDistance, waistDistance, waistSource } from '../lib/design/waist.ts';
import { type BeamNote, type MeasuredBeam, spoilingNotes } from '../lib/measured/measuredBeam.ts';
import { compareWithOne } from '../lib/optics/causticNotes.ts';
import { phrase, says } from './prose.ts';

/** What the camera image gives. */
export const imageSaid = says(
  { beam: measuredBeam },
  ({ beam }) => [
    ...phrase`The second moments give ${measuredDiameterX} by ${measuredDiameterY}, the first axis turned by ${measuredAngle} from the horizontal of the image (clockwise counts as positive), ellipticity ${measuredEllipticity}; the design takes ${measuredDiameter}`,
    ...(spoilingNotes(beam).length > 0
      ? '. How far this is off cannot be told from an image that does not hold the whole beam.'
      : phrase`, with a standard uncertainty of ${measuredUncertainty} from noise and background alone.`),
    ...(beam.fitDiameter === undefined ? '' : phrase` A Gaussian fit reads ${gaussianFitDiameter}.`),
  ],
  [
    measuredDiameterX,
    measuredDiameterY,
    measuredAngle,
    measuredEllipticity,
    measuredDiameter,
    measuredUncertainty,
    gaussianFitDiameter,
  ],
);

/** Notes that must be seen before any number is used: the image is spoilt, or the model does not cover the beam. */
function warnings(beam: MeasuredBeam): readonly BeamNote[] {
  return [...spoilingNotes(beam), ...beam.notes.filter(({ kind }) => kind === 'not-round')];
}

/** The warning set apart from the text; nothing where there is none. */
export const imageWarning = says({ beam: measuredBeam }, ({ beam }) => {
  const texts = warnings(beam).map(({ text }) => text);
  const numbers =
    spoilingNotes(beam).length > 0
      ? ['The numbers of this beam, and all that follows from them, are doubtful.']
      : [];
  return [...texts, ...numbers].join(' ');
});

/** What else the image says of itself; every note is a sentence of its own. */
export const imageNotes = says({ beam: measuredBeam }, ({ beam }) => {
  if (beam.notes.length === 0) {
    return 'The image shows no saturation, no clipping and enough pixels, and a round Gaussian fits it.';
  }
  const apart = warnings(beam);
  return beam.notes
    .filter((note) => !apart.includes(note))
    .map((note) => note.text)
    .join(' ');
});

/** What the fit of the caustic gives. */
export const causticSaid = says(
  { caustic: measuredCaustic },
  ({ caustic }) =>
    phrase`The hyperbola through the ${String(caustic.spread.points)} points has a waist ${causticWaistDiameter} ±\u00a0${causticWaistDiameterUncertainty} in diameter at z\u00a0=\u00a0${causticWaistPosition} ±\u00a0${causticWaistPositionUncertainty} and a Rayleigh length of ${causticRayleighLength} ±\u00a0${causticRayleighLengthUncertainty}. At ${wavelength} that is M²\u00a0=\u00a0${causticRatio} ±\u00a0${causticRatioUncertainty}. The uncertainties are standard ones, from the scatter of the diameters by ${causticScatter}; they leave out the scale of the camera and of z.`,
  [
    causticWaistDiameter,
    causticWaistDiameterUncertainty,
    causticWaistPosition,
    causticWaistPositionUncertainty,
    causticRayleighLength,
    causticRayleighLengthUncertainty,
    causticRatio,
    causticRatioUncertainty,
    causticScatter,
    wavelength,
  ],
);

/** Whether the points lie and scatter as they should; what is said of M² has a sentence of its own. */
export const causticPointsSaid = says({ caustic: measuredCaustic }, ({ caustic }) => {
  const notes = caustic.notes.filter(({ kind }) => kind !== 'ratio-below-one');
  if (notes.length > 0) return notes.map(({ text }) => text).join(' ');
  const { points, near, far } = caustic.spread;
  return `The points lie as ISO 11146-1 asks: ${near} of ${points} within one Rayleigh length of the waist and ${far} beyond two.`;
});

/** M² of the caustic against 1 and against what the model covers, and what the design makes of it. */
export const causticRatioSaid = says(
  { caustic: measuredCaustic, ratioSource },
  ({ caustic: { beamPropagationRatio: ratio }, ratioSource }) => {
    const taken = ratioSource === 'measured';
    const most = String(beamPropagationRatio.range.max);
    switch (compareWithOne(ratio)) {
      case 'impossible':
        return phrase`M² came out below 1 by more than twice its standard uncertainty, which no beam can be: check the wavelength, the units of both columns, and whether radii were given as diameters.${taken ? ' Until then the design has no M².' : ''}`;
      case 'agrees':
        return ratio.value < 1
          ? phrase`M² came out below 1, which no beam can be, but agrees with 1 within twice its standard uncertainty${taken ? '; the design takes 1' : ''}.`
          : 'M² agrees with 1 within twice its standard uncertainty: this measurement does not tell the beam from a perfect Gaussian.';
      case 'above':
        return ratio.value > beamPropagationRatio.range.max
          ? phrase`M² lies above ${most}, where this model ends: check the wavelength, the units of both columns, and whether diameters were given as radii.${taken ? ' Until then the design has no M².' : ''}`
          : 'M² lies above 1 by more than twice its standard uncertainty: the beam spreads faster than a perfect Gaussian of its diameter.';
    }
  },
);

/** What of the caustic the design takes, and what that asks of the measurement. */
export const causticUseSaid = says(
  { ratioSource, beamSource },
  ({ ratioSource, beamSource }) => {
    const own = 'the table must be of the beam that enters the expander, with no lens in between';
    if (beamSource === 'caustic') {
      return ratioSource === 'measured'
        ? `The design takes M² from the caustic and its waist as the raw beam: ${own}.`
        : phrase`The design takes the waist of the caustic as the raw beam: ${own}. M² stays as typed, ${beamPropagationRatio}, where the caustic has ${causticRatio}.`;
    }
    return ratioSource === 'measured'
      ? 'The design takes M² alone from the caustic, and the beam diameter from elsewhere. A lens without aberrations keeps M², so the caustic may have been measured behind one.'
      : 'The design takes M² and beam diameter from elsewhere.';
  },
  [beamPropagationRatio, causticRatio],
);

/** Where the waist stands before the expander, as far as that counts. */
export const causticPlaceSaid = says(
  { kind: expanderKind, waistSource, beamSource, distance: usedWaistDistance },
  ({ kind, waistSource, beamSource, distance }) => {
    const own = beamSource === 'caustic';
    if (kind === 'magnification') {
      return own
        ? phrase`An expander given by its magnification takes the waist itself for its input: that holds where it stands well within the Rayleigh length of ${causticRayleighLength} from the waist. Elsewhere, describe the expander by its two lenses.`
        : '';
    }
    if (waistSource === 'typed') {
      return own
        ? phrase`The distance from the waist to the first lens is typed, ${waistDistance}; it can also follow from where that lens stands on the scale of z.`
        : '';
    }
    const side = distance < 0 ? ', so that the waist would form behind it' : '';
    return [
      ...phrase`The first lens stands at z\u00a0=\u00a0${causticOrigin}, ${usedWaistDistance} from the waist along the light${side}.`,
      own
        ? ''
        : ' The place of the waist is the caustic’s while the diameter is not: take both from the same beam.',
    ];
  },
  [causticRayleighLength, waistDistance, causticOrigin],
);
