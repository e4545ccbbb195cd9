import { derived } from '../graph/define.ts';
import { previewImage } from '../measured/imagePreview.ts';
import { spoilingNotes } from '../measured/measuredBeam.ts';
import { Problem } from '../problem.ts';
import { beamImage, doubtOf, measuredBeam, noImage } from './laser.ts';

const length = { unit: 'm', display: 'mm', source: 'iso11146' } as const;

export const measuredDiameterX = derived({
  ...length,
  id: 'laser.measuredDiameterX',
  name: 'measured diameter along the first axis',
  symbol: 'd_x',
  about: 'Second-moment (1/e²-equivalent) diameter along the principal axis nearer to the image’s x.',
  from: { beam: measuredBeam },
  compute: ({ beam }) => beam.diameterX,
  valid: ({ beam }) => doubtOf(beam),
  formula: '4\\sigma_x',
});

export const measuredDiameterY = derived({
  ...length,
  id: 'laser.measuredDiameterY',
  name: 'measured diameter along the second axis',
  symbol: 'd_y',
  about: 'Second-moment (1/e²-equivalent) diameter along the principal axis nearer to the image’s y.',
  from: { beam: measuredBeam },
  compute: ({ beam }) => beam.diameterY,
  valid: ({ beam }) => doubtOf(beam),
  formula: '4\\sigma_y',
});

export const measuredAngle = derived({
  id: 'laser.measuredAngle',
  name: 'angle of the first axis',
  symbol: '\\alpha',
  unit: 'rad',
  display: 'deg',
  // No camera is turned that well, and round beams have no axis.
  zeroBelow: 1e-4,
  about: 'Angle of the first principal axis from the image’s x towards its y, which points down.',
  from: { beam: measuredBeam },
  compute: ({ beam }) => beam.angle,
  valid: ({ beam }) => doubtOf(beam),
  formula: '\\tfrac12\\arctan\\frac{2\\sigma_{xy}}{\\sigma_x^2-\\sigma_y^2}',
  source: 'iso11146',
});

export const measuredEllipticity = derived({
  id: 'laser.measuredEllipticity',
  name: 'ellipticity',
  symbol: '\\varepsilon',
  unit: '1',
  digits: 3,
  about: 'Smaller over larger measured diameter; above 0.87 a beam counts as round.',
  from: { beam: measuredBeam },
  compute: ({ beam }) => beam.ellipticity,
  valid: ({ beam }) => doubtOf(beam),
  formula: 'd_\\text{min}/d_\\text{max}',
  source: 'iso11146',
});

export const measuredCentroidX = derived({
  ...length,
  id: 'laser.measuredCentroidX',
  name: 'centroid along x',
  symbol: 'x_c',
  about: 'Distance of the beam’s centre from the left edge of the image.',
  from: { beam: measuredBeam },
  compute: ({ beam }) => beam.centroid.x,
  valid: ({ beam }) => doubtOf(beam),
  formula: '\\bar x',
});

export const measuredCentroidY = derived({
  ...length,
  id: 'laser.measuredCentroidY',
  name: 'centroid along y',
  symbol: 'y_c',
  about: 'Distance of the beam’s centre from the upper edge of the image.',
  from: { beam: measuredBeam },
  compute: ({ beam }) => beam.centroid.y,
  valid: ({ beam }) => doubtOf(beam),
  formula: '\\bar y',
});

export const gaussianFitDiameter = derived({
  id: 'laser.gaussianFitDiameter',
  name: 'diameter of a Gaussian fit',
  symbol: 'd_\\text{fit}',
  unit: 'm',
  display: 'mm',
  about:
    '1/e² diameter √(dx·dy) of an elliptical Gaussian fitted to the image; differs from the second-moment diameter where the beam is not Gaussian.',
  from: { beam: measuredBeam },
  compute: ({ beam }) => {
    if (beam.fitDiameter === undefined) {
      throw new Problem(
        'absent',
        'No Gaussian could be fitted to this image; use the second-moment diameter.',
        {
          input: 'laser.beamImage',
        },
      );
    }
    return beam.fitDiameter;
  },
  valid: ({ beam }) => doubtOf(beam),
  formula: '\\sqrt{d_{\\text{fit},x} d_{\\text{fit},y}}',
  source: 'fit',
});

export const measuredUncertainty = derived({
  ...length,
  id: 'laser.measuredUncertainty',
  display: 'um',
  digits: 2,
  name: 'standard uncertainty of the measured diameter',
  symbol: 'u(d)',
  about:
    'Standard uncertainty of √(dx·dy) from noise, background and the uncertainty of the pixel pitch; photon noise is left out. None is given for a saturated or clipped image.',
  from: { beam: measuredBeam },
  compute: ({ beam }) => {
    if (spoilingNotes(beam).length > 0) {
      throw new Problem(
        'outside',
        'Part of the beam is cut off in this image, at the top or at the side: how far the diameter is off cannot be told from it. Take another image.',
        { input: 'laser.beamImage' },
      );
    }
    return beam.uncertainty.equivalentDiameter;
  },
  formula: 'u(\\sqrt{d_x d_y})',
});

export const imagePreview = derived({
  id: 'laser.imagePreview',
  name: 'picture of the measured beam',
  symbol: '\\text{image}',
  unit: 'none',
  about: 'The camera image averaged over blocks of pixels, for showing.',
  from: { image: beamImage },
  compute: ({ image }) => {
    if (image === null) throw noImage();
    return previewImage(image);
  },
  formula: '\\text{mean over blocks}',
  source: 'definition',
});
