import { Problem } from '../problem.ts';
import { layGrid, lookFirst } from './beamGrid.ts';
import { measureMoments } from './beamMoments.ts';
import { describeBeam } from './beamNotes.ts';
import { type Moments, planeAt, principalAxes } from './beamState.ts';
import type { CameraImage } from './cameraImage.ts';
import { fitGaussian } from './gaussianFit.ts';
import { removeHotPixels } from './hotPixels.ts';
import type { MeasuredBeam } from './measuredBeam.ts';
import { estimateNoise, highestSample } from './pixelNoise.ts';

export type { MeasuredBeam } from './measuredBeam.ts';

/**
 * Measures the beam in a picture with square pixels of `pixelPitch` metres (above 0): background plane from
 * the cells without light, second moments over a window of three beam widths by iteration
 * (ISO 11146-1:2021), a Gaussian fit beside them. `pitchUncertainty` in metres is a standard one, 0 for an exact pitch.
 * Throws Problem 'absent' for an image without a beam, 'impossible' for a pitch that cannot be.
 */
export function measureBeam(raw: CameraImage, pixelPitch: number, pitchUncertainty = 0): MeasuredBeam {
  checkPitch(pixelPitch);
  const rawLook = lookFirst(raw);
  const { image, count: hotPixels } = removeHotPixels(raw, rawLook);
  const look = hotPixels > 0 ? lookFirst(image) : rawLook;
  // Integer samples cannot show less than their own rounding, 0.29 counts.
  const rounding = image.samples instanceof Uint16Array ? 0.1 : 0;
  if (!(look.peak > 8 * Math.max(look.scatter, rounding))) throw noBeam(image, look.peak, look.scatter);
  // Eight cells a radius: averaging is undone to rounding error for beams as smooth as a Gaussian.
  const grid = layGrid(image, Math.max(1, Math.floor(look.radius / 8)), look.x, look.y);
  const measured = measureMoments(grid, look);
  if (!measured) throw noBeam(image, look.peak, look.scatter);
  const { moments, background, relative } = measured;
  const fit = fitGaussian(grid, background.plane, moments, measured.power);
  const beam = { ...toDiameters(moments, pixelPitch), ...toFitDiameters(fit?.moments, pixelPitch) };
  const { level, slopeX, slopeY } = {
    ...background.plane,
    level: planeAt(background.plane, moments.x, moments.y),
  };
  const bare = {
    ...beam,
    centroid: { x: moments.x * pixelPitch, y: moments.y * pixelPitch },
    background: { level, gradientX: slopeX * image.width, gradientY: slopeY * image.height },
    noise: estimateNoise(image, moments, measured.reach),
    peak: highestSample(image),
    uncertainty: {
      diameterX: relative[0] * beam.diameterX,
      diameterY: relative[1] * beam.diameterY,
      equivalentDiameter: relative[2] * beam.equivalentDiameter,
    },
  };
  const pitchShare = pitchUncertainty / pixelPitch;
  return {
    ...bare,
    uncertainty: {
      diameterX: Math.hypot(bare.uncertainty.diameterX, pitchShare * beam.diameterX),
      diameterY: Math.hypot(bare.uncertainty.diameterY, pitchShare * beam.diameterY),
      equivalentDiameter: Math.hypot(
        bare.uncertainty.equivalentDiameter,
        pitchShare * beam.equivalentDiameter,
      ),
    },
    // Notes judge the picture: what is said there of noise is without the pitch.
    notes: describeBeam({ image, hotPixels, pixelPitch, look, grid, measured, fit, beam: bare }),
  };
}

function checkPitch(pixelPitch: number): void {
  if (pixelPitch > 0 && pixelPitch < 1) return;
  throw new Problem(
    'impossible',
    `Pixel pitch ${pixelPitch} m must be above 0, as a camera's data sheet gives it (usually 1 µm to 20 µm). Type the pitch of this camera.`,
    { value: `${pixelPitch} m`, allowed: 'above 0' },
  );
}

function noBeam(image: CameraImage, peak: number, scatter: number): Problem {
  return new Problem(
    'absent',
    `"${image.name}" shows no beam: its brightest spot stands ${peak.toPrecision(2)} counts above the border, whose averaged cells scatter by ${scatter.toPrecision(2)}. Expose longer, take out an attenuator or choose another image.`,
    { value: `${peak.toPrecision(2)} counts`, allowed: 'more than eight times the scatter' },
  );
}

function toDiameters(moments: Moments, pixelPitch: number) {
  const { angle, first, second } = principalAxes(moments);
  const diameterX = 4 * Math.sqrt(first) * pixelPitch;
  const diameterY = 4 * Math.sqrt(second) * pixelPitch;
  return {
    angle,
    diameterX,
    diameterY,
    equivalentDiameter: Math.sqrt(diameterX * diameterY),
    ellipticity: Math.min(diameterX, diameterY) / Math.max(diameterX, diameterY),
  };
}

function toFitDiameters(moments: Moments | undefined, pixelPitch: number) {
  if (!moments) {
    return { fitDiameterX: undefined, fitDiameterY: undefined, fitAngle: undefined, fitDiameter: undefined };
  }
  const { diameterX, diameterY, angle, equivalentDiameter } = toDiameters(moments, pixelPitch);
  return {
    fitDiameterX: diameterX,
    fitDiameterY: diameterY,
    fitAngle: angle,
    fitDiameter: equivalentDiameter,
  };
}
