import { pictureInputs } from './pictureInputs.ts';
import type { PictureNames } from './pictureScale.ts';

export const markPictureNames: PictureNames = {
  prefix: 'markPicture',
  suffix: '',
  sought: 'Where the mark is looked for',
  holds: 'this mark and no other',
  leastSide: 8,
  pitch: 0.2e-6,
  usualPitch: [0.05e-6, 2e-6],
  barLength: 20e-6,
  barEnd: 120,
  side: 100,
  missing: 'No picture of a mark has been given yet: choose one.',
};

/** The microscope picture of a mark: its scale and its part. */
export const markPictureInputs = pictureInputs(markPictureNames, {
  name: 'microscope picture of a mark',
  about:
    'A picture of one mark under the microscope, with its surroundings: PNG, TIFF, JPEG or a table of grey values, of colours their luminance; darker or brighter than what lies around it.',
});

export const {
  picture: markPicture,
  pitch: markPitch,
  region: markRegion,
  regionSource: markRegionSource,
} = markPictureInputs;
