import type { Case } from './sentenceCases.ts';

const lens = (focalLength: number) => ({ 'lens.focalLength': focalLength });
const energy = (pulseEnergy: number) => ({ 'laser.pulseEnergy': pulseEnergy });
/** Lowest of a published study, 8 × 10¹² W/cm². */
const threshold = 8e16;
const irradiances = (value: (id: string) => number) => [
  value('spot.peakIrradiance') >= threshold,
  value('unshaped.spot.peakIrradiance') >= threshold,
];

const noSpot = { 'plate.apertureDiameter': 5e-3 };
const noBeam = { 'laser.beamSource': 'measured' };

/** Half a beam of 10 mm over the focal length: 0.05, 0.25 and 1. */
export const limitCases: readonly Case[] = [
  {
    says: 'paraxialSaid',
    text: /^$/,
    truth: (value) => value('lens.paraxialError') < 0.02,
  },
  {
    says: 'paraxialSaid',
    design: lens(20e-3),
    text: /converges steeply, at a sine of 0\.25.*off by about 3\.1\s%/,
    truth: (value) => Math.abs(value('lens.convergence') - 5e-3 / 20e-3) < 1e-12,
  },
  {
    says: 'paraxialSaid',
    design: lens(5e-3),
    text: /^No lens focuses like this: half the beam over the focal length is 1\./,
    truth: (value) => value('lens.convergence') === 1,
  },
  {
    says: 'paraxialSaid',
    design: noBeam,
    text: /^How steeply the beam converges cannot be worked out for this design\..* are off\.$/,
    truth: (value) => Number.isNaN(value('lens.convergence')),
  },
  {
    says: 'irradiancesSaid',
    text: /^Peak irradiance on the workpiece, the highest power per area .*: .* with the plate, .* without it\.$/,
    truth: (value) => value('spot.peakIrradiance') > 0,
  },
  {
    says: 'irradiancesSaid',
    design: noSpot,
    text: /^The peak irradiance .* cannot be worked out for this design\.$/,
    truth: (value) => Number.isNaN(value('spot.peakIrradiance')),
  },
  {
    says: 'xRaysSaid',
    design: noSpot,
    text: /^X-rays .* studied from 8 × 10¹²\sW\/cm² on, .* no all-clear: speak with radiation protection/,
    truth: (value) => Number.isNaN(value('spot.peakIrradiance')),
  },
  {
    says: 'xRaysSaid',
    text: /^Both lie above the 8 × 10¹²\sW\/cm² from which on X-rays/,
    truth: (value) => irradiances(value).join() === 'true,true',
  },
  {
    says: 'xRaysSaid',
    design: energy(5e-6),
    text: /^Without the plate it lies above/,
    truth: (value) => irradiances(value).join() === 'false,true',
  },
  {
    says: 'xRaysSaid',
    design: energy(0.2e-6),
    text: /^The higher of the two lies within a factor of a hundred below the 8 × 10¹²\sW\/cm² .* before the first pulse\.$/,
    truth: (value) => {
      const plain = value('unshaped.spot.peakIrradiance');
      return irradiances(value).join() === 'false,false' && plain >= threshold / 100;
    },
  },
  {
    says: 'xRaysSaid',
    design: energy(1e-9),
    text: /^That is further than a factor of a hundred below the .* no all-clear\.$/,
    truth: (value) => value('unshaped.spot.peakIrradiance') < threshold / 100,
  },
  {
    says: 'xRaysSaid',
    pins: { 'spot.peakIrradiance': 2e17, 'unshaped.spot.peakIrradiance': 0.5e17 },
    text: /^With the plate it lies above .* first pulse\. And without the plate it lies just below that, by less than a factor of two\.$/,
    truth: () => 0.5e17 / threshold > 0.5,
  },
  {
    says: 'xRaysSaid',
    pins: { 'spot.peakIrradiance': 7.4e16, 'unshaped.spot.peakIrradiance': 2.5e17 },
    text: /^Without the plate it lies above .* first pulse\. And with the plate it lies just below that, by less than a factor of two\.$/,
    truth: () => 7.4e16 / threshold > 0.5,
  },
  {
    says: 'xRaysSaid',
    pins: { 'spot.peakIrradiance': 2e17, 'unshaped.spot.peakIrradiance': 0.3e17 },
    text: /^With the plate it lies above .* first pulse\.$/,
    truth: () => 0.3e17 / threshold < 0.5,
  },
  {
    says: 'xRaysSaid',
    pins: { 'spot.peakIrradiance': 2e16, 'unshaped.spot.peakIrradiance': 7e16 },
    text: /^The higher of the two lies just below, by less than a factor of two, the 8 × 10¹²/,
    truth: () => 7e16 / threshold > 0.5,
  },
];
