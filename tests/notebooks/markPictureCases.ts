import { measureMark } from '../../lib/measured/markPicture.ts';
import type { NamedSpots } from '../../lib/measured/spotTable.ts';
import { addMark } from '../../notebooks/addMark.ts';
import { markForTable } from '../../notebooks/markPictureSentences.ts';
import { readFileAsPatch } from '../../notebooks/measuredFiles.ts';
import { drawnMark, markPictures } from '../design/files.ts';
import { drawMark } from '../measured/drawMark.ts';
import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const um = 1e-6;
const picture = (name: string): Values => ({
  'markPicture.picture': markPictures.find((one) => one.name === name),
  'markPicture.scaleSource': 'typed',
  'markPicture.pixelPitch': 0.3 * um,
});
const bright = {
  ...picture('ring'),
  'markPicture.picture': drawMark({ ...drawnMark, background: 0.2, mark: 0.7 }),
};
const ring = picture('ring');
const disc = picture('disc');
/** Predicted diameters beside a picture; the rest of the prediction is the design's. */
const predicted = (diameter: number, inner: number): Values => ({
  'spot.markDiameter': diameter * um,
  'spot.markInnerDiameter': inner * um,
  'spot.markStretches': [{ angle: 0, marked: [{ from: inner / 2, to: diameter / 2 }] }],
});
const table = (text: string): Values => {
  const patch = readFileAsPatch('threshold.spotTable', new TextEncoder().encode(text), 'spots.csv');
  return { ...ring, 'laser.pulseEnergy': 12 * um, 'threshold.spotTable': patch['threshold.spotTable'] };
};
/** A picture whose mark was added to a table of its own. */
const addedAlready: Values = {
  ...disc,
  ...addMark(
    markForTable({
      found: measureMark(markPictures[1]!, { pixelPitch: 1 }),
      pitch: 0.3 * um,
      energy: 20 * um,
      rate: 200e3,
      pulses: 1,
      z: 0,
      table: null,
    }),
    null,
  ),
};
const drawnDiameter = 2 * Math.sqrt(drawnMark.halfX * drawnMark.halfY) * 0.3;

/** Cases of the sentences about a mark in a picture: a ring of 20 × 18 pixels with a hole of radius 8, pixels of 0.3 µm. */
export const markPictureCases: readonly Case[] = [
  {
    says: 'pictureMarkSaid',
    design: ring,
    text: /^The mark is darker .* 11\.\d\d\sµm ± 0\.\d+\sµm wide, .* Its centre stays unmarked over 4\.\d+\sµm ± /,
    truth: (value) =>
      Math.abs(value('markPicture.outerDiameter') / (drawnDiameter * um) - 1) < 0.01 &&
      Math.abs(value('markPicture.innerDiameter') / (4.8 * um) - 1) < 0.03,
  },
  {
    says: 'pictureMarkSaid',
    design: disc,
    text: /^The mark is darker .* It has no unmarked centre\./,
    truth: (value) => value('markPicture.innerDiameter') === 0,
  },
  {
    says: 'pictureMarkSaid',
    design: bright,
    text: /^The mark is brighter than its surroundings/,
    truth: (value) => Math.abs(value('markPicture.outerDiameter') / (drawnDiameter * um) - 1) < 0.01,
  },
  {
    says: 'pictureMarkWarning',
    design: ring,
    text: /^$/,
    truth: (value) => value('markPicture.outerDiameter') > 0,
  },
  {
    says: 'pictureMarkWarning',
    design: picture('tiny'),
    text: /^The mark is \d\.\d pixels across: take the picture at a larger magnification\.$/,
    truth: (value) => value('markPicture.extentX') < 10 * 0.3 * um,
  },
  {
    says: 'pictureAgainstSaid',
    design: { ...ring, 'laser.pulseEnergy': 0.3 * um },
    text: /^For 0\.3\sµJ at z\s=\s0\smm no mark is predicted, so there is nothing to compare with/,
    truth: (value) => value('spot.markDiameter') === 0,
  },
  {
    says: 'pictureAgainstSaid',
    design: ring,
    pins: predicted(11.5, 4.7),
    text: /a diameter of 11\.5\sµm is predicted; the measured one agrees with it within what the edge leaves open\. The unmarked centre agrees with the predicted 4\.7\sµm as well\.$/,
    truth: (value) =>
      Math.abs(value('markPicture.outerDiameter') - 11.5 * um) <=
        value('markPicture.outerDiameterUncertainty') &&
      Math.abs(value('markPicture.innerDiameter') - 4.7 * um) <=
        value('markPicture.innerDiameterUncertainty'),
  },
  {
    says: 'pictureAgainstSaid',
    design: disc,
    pins: predicted(14, 0),
    text: /the measured one is (18|19|20)\s% smaller\. If the mark was made .* Neither has an unmarked centre\.$/,
    truth: (value) => Math.abs(value('markPicture.outerDiameter') / (14 * um) - 0.81) < 0.01,
  },
  {
    says: 'pictureAgainstSaid',
    design: ring,
    pins: predicted(9, 0),
    text: /the measured one is 27\s% larger\. If .* look at the scale of the picture first, then at the threshold\. No unmarked centre is predicted, but the picture shows one/,
    truth: (value) => Math.abs(value('markPicture.outerDiameter') / (9 * um) - 1.27) < 0.005,
  },
  {
    says: 'pictureAgainstSaid',
    design: disc,
    pins: predicted(11.4, 4),
    text: /agrees with it.* The predicted unmarked centre of 4\sµm is not found in the picture\.$/,
    truth: (value) => value('markPicture.innerDiameter') === 0,
  },
  {
    says: 'pictureAgainstSaid',
    design: disc,
    pins: predicted(11.4, 0.5),
    text: /centre of 0\.5\sµm is not found in the picture, where one as small as that would not be counted\.$/,
    truth: (value) => (0.5 * um) ** 2 < 0.004 * value('markPicture.outerDiameter') ** 2,
  },
  {
    says: 'pictureAgainstSaid',
    design: ring,
    pins: predicted(11.4, 3),
    text: /The unmarked centre is \d\d\s% larger than the predicted 3\sµm\.$/,
    truth: (value) =>
      value('markPicture.innerDiameter') - 3 * um > value('markPicture.innerDiameterUncertainty'),
  },
  {
    says: 'pictureAgainstSaid',
    design: ring,
    text: /a diameter of 42\.61\sµm is predicted; .* smaller\..* The predicted diameter takes in side lobes apart from the middle/,
    truth: (value) => value('spot.markArea') < (Math.PI / 4) * value('spot.markDiameter') ** 2 * 0.9,
  },
  {
    says: 'pictureRowSaid',
    design: { ...ring, 'laser.pulseEnergy': 12 * um },
    text: /^There is no table yet; it would begin with the heading “energy \(µJ\);dx .*” and the row “12;11\.9\d*;10\.\d+;4\.\d+;0\.\d+;1;0”\.$/,
    truth: (value) => value('markPicture.extentX') > value('markPicture.extentY'),
  },
  {
    says: 'pictureRowSaid',
    design: table('N;E (µJ);A (µm²);remark\n1;10,5;80;\n'),
    text: /^In the columns of "spots\.csv" the row is “1;12;8\d,\d+;”\.$/,
    truth: (value) => Math.abs(value('markPicture.area') * 1e12 - 85) < 5,
  },
  {
    says: 'pictureRowSaid',
    design: addedAlready,
    text: /^It stands as the last row of "marks in pictures\.csv" already\.$/,
    truth: (value) => (value('threshold.spots') as unknown as NamedSpots).rows.length === 1,
  },
  {
    says: 'pictureRowSaid',
    design: table('E (µJ);d (µm)\n10;12\n'),
    text: /^The table of spots has no column for the unmarked centre, such as "inner diameter \(µm\)"\./,
    truth: (value) => value('markPicture.innerDiameter') > 0,
  },
  {
    says: 'pictureRowSaid',
    design: { ...table('E (µJ);d (µm);di (µm)\n10;12;0\n'), 'threshold.pulses': 5 },
    text: /has no column for the pulses on a place, such as "N"/,
    truth: (value) => value('threshold.pulses') === 5,
  },
];
