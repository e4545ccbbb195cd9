import { derived, ifThere } from '../graph/define.ts';
import type { CameraImage } from '../measured/cameraImage.ts';
import { previewImage } from '../measured/imagePreview.ts';
import { type PictureRegion, takeRegion } from '../measured/markLevels.ts';
import { measureRipples } from '../measured/ripplePicture.ts';
import { Problem } from '../problem.ts';
import { type MicrographLetter, micrographInputs, micrographNames, smoothing } from './micrographInputs.ts';
import { mainResults, regularityResults, resultsOf, secondResults } from './micrographResults.ts';
import { namingPart } from './pictureInputs.ts';
import { noPicture } from './pictureScale.ts';
import { lineAngle, rippleDirection } from './rippleDirection.ts';

/** The region as a picture of its own; one as wide as the picture without a copy, which takes longer than the rest. */
function partOf(picture: CameraImage, region: PictureRegion): CameraImage {
  const { top, width, height } = region;
  if (width < picture.width) return { ...picture, ...takeRegion(picture, region) };
  return { ...picture, height, samples: picture.samples.subarray(top * width, (top + height) * width) };
}

/** The heavy part: everything that the picture says, in pixels. */
function measurement(letter: MicrographLetter, prefix: string) {
  const names = micrographNames(prefix, letter);
  const inputs = micrographInputs(names, letter);
  const found = derived({
    id: `${prefix}.found`,
    name: `ripples found in micrograph ${letter}`,
    symbol: '\\text{ripples}',
    unit: 'none',
    about:
      'Period, direction, coherence and regularity of the ripples, lengths in pixels, angles from the picture’s x axis towards its y axis, which points down; and why there are none where none stand out. Rows of a caption are left out.',
    from: { picture: inputs.picture, region: inputs.region, source: inputs.regionSource, smoothing },
    compute: ({ picture, region, source, smoothing: sigma }, report) => {
      if (picture === null) throw noPicture(names);
      return namingPart(source, inputs, () => {
        const options = { smoothing: sigma, ...(source === 'part' && { region }) };
        return namingSmoothing(sigma, () =>
          measureRipples(picture, options, report ? { progress: report } : {}),
        );
      });
    },
    shownAs: ({ main }) => (main ? `${main.period.toFixed(2)} pixels apart` : 'none'),
    formula: '\\max|\\mathcal F\\{G\\}|^2',
    source: 'common practice',
    heavy: 'search',
  });
  const preview = derived({
    id: `${prefix}.preview`,
    name: `picture of micrograph ${letter}`,
    symbol: '\\text{preview}',
    unit: 'none',
    about:
      'The part of the picture that is measured, without rows that are written on, averaged over blocks of pixels, for showing.',
    from: { picture: inputs.picture, found },
    compute: ({ picture, found }) => {
      if (picture === null) throw noPicture(names);
      return previewImage(partOf(picture, found.region), 320);
    },
    formula: '\\text{mean over blocks}',
    source: 'definition',
  });
  return { ...inputs, found, preview };
}

/** The smoothing is the input to change where the part is too small for it. */
function namingSmoothing<T>(sigma: number, compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof Problem) || error.parts.value !== String(sigma)) throw error;
    throw new Problem(error.kind, error.message, { ...error.parts, input: smoothing.id });
  }
}

/** A micrograph: inputs, what is found in it, and results. */
function micrograph(letter: MicrographLetter, prefix: string) {
  const measured = measurement(letter, prefix);
  const { found, pitch, scanAngle, picture } = measured;
  const results = resultsOf(measured, prefix, letter);
  const main = mainResults(results);
  return {
    ...measured,
    ...main,
    ...regularityResults(results, picture.id),
    ...secondResults(results, picture.id),
    ridgesToScan: derived({
      id: `${prefix}.ridgesToScan`,
      name: `measured direction of the ridges (${letter})`,
      symbol: `\\beta_\\text{${letter}}`,
      unit: 'rad',
      display: 'deg',
      about:
        'Direction in which the ridges run against the scan, counter-clockwise, 0 to 180°, for the direction of the scan in the picture as typed.',
      from: { direction: main.direction, scan: scanAngle },
      compute: ({ direction, scan }) => lineAngle(direction + Math.PI / 2 - scan),
      formula: '\\varphi+90°-\\alpha_\\text{scan}',
      source: 'definition',
    }),
    knownPitch: ifThere({
      id: `${prefix}.knownPitch`,
      name: `pixel pitch, where it is known (${letter})`,
      symbol: 'p',
      unit: 'm',
      display: 'auto:m',
      about: 'The pitch of the picture, where it has been said: without it lengths stay in pixels.',
      of: pitch,
    }),
    foundIfThere: ifThere({
      id: `${prefix}.foundIfThere`,
      name: `what micrograph ${letter} says, where there is one`,
      symbol: '\\text{ripples}',
      unit: 'none',
      about: 'What was found in the micrograph, for what can do without it.',
      of: found,
      shownAs: ({ main }) => (main ? `${main.period.toFixed(2)} pixels apart` : 'none'),
    }),
    previewIfThere: ifThere({
      id: `${prefix}.previewIfThere`,
      name: `picture of micrograph ${letter}, where there is one`,
      symbol: '\\text{preview}',
      unit: 'none',
      about: 'The part that is measured, for what can do without it.',
      of: measured.preview,
    }),
  };
}

export const firstMicrograph = micrograph('A', 'micrograph');
export const otherMicrograph = micrograph('B', 'otherMicrograph');
export type Micrograph = typeof firstMicrograph;

export const predictedDirection = ifThere({
  id: 'ripples.directionIfThere',
  name: 'predicted direction of the ridges, where there is one',
  symbol: '\\beta',
  unit: 'rad',
  display: 'deg',
  about: 'Direction of the ridges against the scan, where the polarisation gives them one.',
  of: rippleDirection,
});
