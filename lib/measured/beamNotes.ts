import type { BeamGrid, FirstLook } from './beamGrid.ts';
import { type MeasuredMoments, windowRadii } from './beamMoments.ts';
import { planeAt } from './beamState.ts';
import type { CameraImage } from './cameraImage.ts';
import type { GaussianFit } from './gaussianFit.ts';
import type { BeamNote, MeasuredBeam } from './measuredBeam.ts';

/** Everything the notes are judged from. */
export interface Findings {
  readonly image: CameraImage;
  readonly hotPixels: number;
  readonly pixelPitch: number;
  readonly look: FirstLook;
  readonly grid: BeamGrid;
  readonly measured: MeasuredMoments;
  readonly fit: GaussianFit | undefined;
  readonly beam: Omit<MeasuredBeam, 'notes'>;
}

/** The notes that apply, most serious first. */
export function describeBeam(findings: Findings): BeamNote[] {
  const spoilt = [saturated, clipped].flatMap((rule) => rule(findings) ?? []);
  // A beam cut off at the top or at the side departs from a Gaussian for that reason alone.
  const shape = spoilt.length > 0 ? [] : [notGaussian];
  const rules = [
    spoilt.some(({ kind }) => kind === 'clipped') ? notRoundAsCut : notRound,
    smallFrame,
    fewPixels,
    ...shape,
    offsetLarge,
    dim,
    noisy,
    hot,
  ];
  return [...spoilt, ...rules.flatMap((rule) => rule(findings) ?? [])];
}

const percent = (share: number) => `${Number((100 * share).toPrecision(2))} %`;

/** A length in mm or µm with four digits, as the diameters beside it have. */
function length(metres: number): string {
  const show = (value: number) => Number(value.toPrecision(4));
  return metres >= 1e-3 ? `${show(metres * 1e3)} mm` : `${show(metres * 1e6)} µm`;
}

/** ISO 11146-1:2021 counts a beam as round from this ellipticity up (memory). */
const roundFrom = 0.87;

/** The design takes √(dx·dy) for the diameter of a round beam, which no measurement of the spot would then bear out. */
function notRound({ beam }: Findings): BeamNote | undefined {
  if (beam.ellipticity >= roundFrom) return undefined;
  return {
    kind: 'not-round',
    text: `The beam is not round: ${length(beam.diameterX)} by ${length(beam.diameterY)}, ellipticity ${ellipticity(beam)}; ISO 11146-1 counts a beam as round from ${roundFrom} up. The model here is for round beams and takes √(dx·dy) for both axes, so the real spot differs from the one shown, along each axis in its own way. Make the beam round with cylindrical lenses or a pair of anamorphic prisms, or look at both axes: type one diameter, then the other.`,
  };
}

/** A cut beam may be round all the same. */
function notRoundAsCut({ beam }: Findings): BeamNote | undefined {
  if (beam.ellipticity >= roundFrom) return undefined;
  return {
    kind: 'not-round',
    text: `What the image shows of the beam is not round, ellipticity ${ellipticity(beam)} where ISO 11146-1 counts a beam as round from ${roundFrom} up; the cut alone may do that. The model here is for round beams: look again in a picture of the whole beam.`,
  };
}

const ellipticity = (beam: Findings['beam']) => String(Number(beam.ellipticity.toFixed(3)));

/** At least three pixels, and a thousandth of the area above half the peak, at full scale (or sharing one top value). */
function saturated({ image, look, beam }: Findings): BeamNote | undefined {
  const top = image.fullScale !== undefined && beam.peak >= image.fullScale ? image.fullScale : beam.peak;
  const known = top === image.fullScale;
  // Without a full scale only a plateau tells: a twentieth of the bright area on one value. Eight bits share values anyway.
  if (!known && image.fullScale === 255) return undefined;
  let count = 0;
  for (const value of image.samples) if (value >= top) count++;
  if (count < Math.max(known ? 3 : 8, (known ? 0.001 : 0.05) * look.halfArea)) return undefined;
  const where = known ? `at the full scale of ${top} counts` : `at one top value of ${top} counts`;
  return {
    kind: 'saturated',
    text: `${count} pixels stand ${where}: the peak is cut off and the diameter comes out too large. Attenuate the beam or expose shorter until the peak is below 95 % of full scale.`,
  };
}

/** Light at the frame: the mean of the border cells along the beam's width against the peak. */
function clipped({ look, grid, measured }: Findings): BeamNote | undefined {
  const sides = borderLight(grid, measured);
  const [name, share] = Object.entries(sides).reduce((most, side) => (side[1] > most[1] ? side : most));
  const light = share / look.peak;
  // 1 % at the border: a Gaussian cut there has lost 0.2 % of its diameter on that side alone.
  if (!(light > 0.01)) return undefined;
  return {
    kind: 'clipped',
    text: `At the ${name} edge of the image the light is still ${percent(light)} of the peak: the beam is cut there and the diameter comes out too small. Centre the beam on the camera or make it smaller with a known magnification.`,
  };
}

/** Highest running mean of light along each edge, over an eighth of a beam radius or five cells. */
function borderLight(grid: BeamGrid, { background }: MeasuredMoments): Record<string, number> {
  const { columns, rows } = grid;
  const value = (column: number, row: number) =>
    grid.means[row * columns + column]! -
    planeAt(background.plane, grid.left + (column + 0.5) * grid.cell, grid.top + (row + 0.5) * grid.cell);
  const along = (count: number, at: (i: number) => number) => {
    const run = Math.min(5, count);
    let most = 0;
    for (let i = 0; i + run <= count; i++) {
      let sum = 0;
      for (let j = 0; j < run; j++) sum += at(i + j);
      most = Math.max(most, sum / run);
    }
    return most - (5 * background.scatter) / Math.sqrt(run);
  };
  return {
    left: along(rows, (i) => value(0, i)),
    right: along(rows, (i) => value(columns - 1, i)),
    upper: along(columns, (i) => value(i, 0)),
    lower: along(columns, (i) => value(i, rows - 1)),
  };
}

/** The beam's lit ellipse must leave room for the background; below two diameters nothing does. */
function smallFrame({ image, pixelPitch, measured, beam }: Findings): BeamNote | undefined {
  const frame = Math.min(image.width, image.height) * pixelPitch;
  const diameters = frame / Math.max(beam.diameterX, beam.diameterY);
  if (diameters >= 2.5 && measured.background.freeShare >= 0.06) return undefined;
  return {
    kind: 'small-frame',
    text: `The image is ${diameters.toPrecision(2)} beam diameters wide where ${windowRadii} are needed: little of it is free of light, so the background, and with it the diameter, is uncertain. Use a larger camera or a smaller beam.`,
  };
}

/** Below 12 pixels a diameter the shape of the pixel itself counts: 1/12 pixel² in the moment is 0.5 %. */
function fewPixels({ pixelPitch, beam }: Findings): BeamNote | undefined {
  const pixels = Math.min(beam.diameterX, beam.diameterY) / pixelPitch;
  if (pixels >= 12) return undefined;
  return {
    kind: 'few-pixels',
    text: `The beam is only ${pixels.toPrecision(2)} pixels in diameter: below 12 the pixels themselves shape the result. Magnify the beam onto the camera or use smaller pixels.`,
  };
}

/** 3 % between fit and moments, or a misfit of 3 % of the peak that noise does not explain. */
function notGaussian({ grid, fit, beam }: Findings): BeamNote | undefined {
  if (!fit || beam.fitDiameter === undefined) {
    return {
      kind: 'not-gaussian',
      text: `No Gaussian can be fitted; the second moments read ${length(beam.equivalentDiameter)}. Look at the picture: this may be several spots or a ring. The design uses the second-moment diameter.`,
    };
  }
  const ratios = [
    beam.fitDiameter / beam.equivalentDiameter,
    (beam.fitDiameterX ?? 0) / beam.diameterX,
    (beam.fitDiameterY ?? 0) / beam.diameterY,
  ];
  const noise = beam.noise / grid.cell / fit.peak;
  const widths = ratios.some(
    (ratio) =>
      Math.abs(ratio - 1) > 0.03 + 3 * (beam.uncertainty.equivalentDiameter / beam.equivalentDiameter),
  );
  const shape = Math.sqrt(Math.max(0, fit.misfit ** 2 - noise ** 2));
  if (!widths && shape < 0.03) return undefined;
  const apart = beam.fitDiameter / beam.equivalentDiameter - 1;
  const why =
    apart < 0
      ? 'light in the wings, which the fit overlooks, counts'
      : 'the profile is flatter, with steeper edges, than a Gaussian';
  return {
    kind: 'not-gaussian',
    text: `The Gaussian fit reads ${length(beam.fitDiameter)}, the second moments ${length(beam.equivalentDiameter)}: ${why} (${percent(Math.abs(apart))} apart, misfit ${percent(shape)} of the peak root mean square); the design uses the second-moment diameter. Look at the picture before relying on either.`,
  };
}

/** An offset above a tenth of the peak eats the camera's range and hides slow drifts. */
function offsetLarge({ look, beam }: Findings): BeamNote | undefined {
  const share = beam.background.level / look.peak;
  if (!(share > 0.1)) return undefined;
  return {
    kind: 'offset-large',
    text: `The background of ${beam.background.level.toPrecision(3)} counts is ${percent(share)} of the beam's peak. It has been subtracted; shield the camera from room light or lower its black level.`,
  };
}

function dim({ image, look }: Findings): BeamNote | undefined {
  if (image.fullScale === undefined || look.peak > 0.2 * image.fullScale) return undefined;
  return {
    kind: 'dim',
    text: `The peak uses only ${percent(look.peak / image.fullScale)} of the camera's range of ${image.fullScale} counts. Expose longer or attenuate less: 60 % to 95 % measures best.`,
  };
}

function noisy({ beam }: Findings): BeamNote | undefined {
  const share = beam.uncertainty.equivalentDiameter / beam.equivalentDiameter;
  if (share < 0.01) return undefined;
  return {
    kind: 'noisy',
    text: `Noise alone leaves the diameter uncertain by ${percent(share)} (standard uncertainty). Expose longer, average several images or fill more pixels.`,
  };
}

function hot({ hotPixels }: Findings): BeamNote | undefined {
  if (hotPixels === 0) return undefined;
  return {
    kind: 'hot-pixels',
    text: `${hotPixels} single bright ${hotPixels === 1 ? 'pixel was' : 'pixels were'} taken for hot and replaced by the mean of the neighbours. Take a dark image to see whether the camera has them, or clean the window of the sensor.`,
  };
}
