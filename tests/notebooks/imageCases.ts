import { measureBeam } from '../../lib/measured/measureBeam.ts';
import { images } from '../design/files.ts';
import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const image = (name: string): Values => ({
  'laser.beamImage': images.find((one) => one.name === name),
  'laser.beamSource': 'measured',
});
const unfitted = {
  ...measureBeam(images[0]!, 5.5e-6),
  fitDiameter: undefined,
  fitDiameterX: undefined,
  fitDiameterY: undefined,
};

export const imageCases: readonly Case[] = [
  {
    says: 'imageSaid',
    design: image('round'),
    text: /^The second moments give 0\.142\d*\smm by 0\.136\d*\smm.* A Gaussian fit reads 0\.139\d*\smm\.$/,
    truth: (value) =>
      // Drawn with radii of 13 and 12.4 pixels of 5.5 µm.
      Math.abs(value('laser.measuredDiameterX') / (26 * 5.5e-6) - 1) < 0.01 &&
      Math.abs(value('laser.measuredDiameterY') / (24.8 * 5.5e-6) - 1) < 0.01,
  },
  {
    says: 'imageSaid',
    design: image('round'),
    pins: { 'laser.measuredBeam': unfitted },
    text: /^The second moments give .* from noise and background alone\.$/,
    truth: (value) => Number.isNaN(value('laser.gaussianFitDiameter')),
  },
  ...(['clipped', 'saturated'] as const).map(
    (name): Case => ({
      says: 'imageSaid',
      design: image(name),
      text: /the design takes [\d.]+\smm\. How far this is off cannot be told from an image that does not hold the whole beam\. A/,
      truth: (value) =>
        Number.isNaN(value('laser.measuredUncertainty')) &&
        // Off by ten times what noise does here, 0.1 %: the drawn diameter is 2·√(13·12.4) pixels of 5.5 µm.
        Math.abs(value('laser.measuredDiameter') / (2 * Math.sqrt(13 * 12.4) * 5.5e-6) - 1) > 0.01,
    }),
  ),
  {
    says: 'imageSaid',
    design: { ...image('round'), 'laser.beamImagePitchUncertainty': 0.05e-6 },
    text: /standard uncertainty of 1\.3\sµm from noise, background and pixel pitch; photon noise is left out\. A Gaussian/,
    truth: (value) => {
      // The pitch's share of the diameter; noise and background of this picture add less than a tenth.
      const share = (0.05 / 5.5) * value('laser.measuredDiameter');
      return value('laser.measuredUncertainty') > share && value('laser.measuredUncertainty') < 1.1 * share;
    },
  },
  {
    says: 'imageWarning',
    design: image('round'),
    text: /^$/,
    truth: (value) => value('laser.measuredEllipticity') > 0.87,
  },
  {
    says: 'imageWarning',
    design: image('saturated'),
    text: /^\d+ pixels stand at the full scale .*The numbers of this beam, and all that follows from them, are doubtful\.$/,
    truth: () => images.find(({ name }) => name === 'saturated')!.samples.includes(4095 as never),
  },
  {
    says: 'imageWarning',
    design: image('clipped'),
    text: /^At the left edge .*The numbers of this beam, and all that follows from them, are doubtful\.$/,
    truth: (value) => value('laser.measuredCentroidX') < value('laser.measuredDiameterX') / 2,
  },
  {
    says: 'imageWarning',
    design: image('elliptical'),
    text: /^The beam is not round: 175\.9 µm by 121 µm, ellipticity 0\.6[89]\d?; .*then the other\.$/,
    truth: (value) => Math.abs(value('laser.measuredEllipticity') / (11 / 16) - 1) < 0.01,
  },
  {
    says: 'imageNotes',
    design: image('round'),
    text: /^The image shows no saturation, no clipping and enough pixels, and a round Gaussian fits it\.$/,
    truth: (value) =>
      Math.abs(value('laser.gaussianFitDiameter') / value('laser.measuredDiameter') - 1) < 0.01,
  },
  {
    says: 'imageNotes',
    design: image('saturated'),
    text: /^$/,
    truth: () => images.find(({ name }) => name === 'saturated')!.samples.includes(4095 as never),
  },
  {
    says: 'imageNotes',
    design: image('noisy'),
    text: /The peak uses only/,
    truth: () => Math.max(...images.find(({ name }) => name === 'noisy')!.samples) < 0.25 * 4095,
  },
];
