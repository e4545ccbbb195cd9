import { markPictureInputs, markPitch } from '../lib/design/markPicture.ts';
import { foundMark } from '../lib/design/pictureMark.ts';
import { addMark } from './addMark.ts';
import type { Block } from './document.ts';
import { markPictureFigure } from './markPictureFigure.ts';
import {
  markForTable,
  pictureAgainstSaid,
  pictureMarkSaid,
  pictureMarkWarning,
  pictureRowSaid,
  rowParts,
} from './markPictureSentences.ts';
import { drawnOn, pictureControls } from './pictureSpec.ts';
import { prose, sets } from './prose.ts';

const addLink = sets(
  'Add this mark to the table of spots',
  (values) => addMark(markForTable(values), values.table),
  rowParts,
);

/** A mark measured in a microscope picture: where it is given, its contours, and its place in the table of spots. */
export const markPictureBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'mark-picture',
    prose: prose`
      ## A mark measured in a picture

      Give a microscope picture of one mark with some of its surroundings, and the scale: the pixel pitch, which is the width of one pixel on the surface, or a scale bar in the picture. Where the picture holds more than the mark, draw a part about it. The contour lies half way between the grey of the surroundings and that of the mark, and is drawn over the picture for you to judge. Nothing in the design changes by it.
    `,
  },
  {
    kind: 'controls',
    id: 'mark-picture-controls',
    heading: 'Picture of a mark',
    inputs: pictureControls(markPictureInputs),
  },
  { kind: 'picture', id: 'mark-picture-drawn', ...drawnOn(markPictureInputs, 'the mark') },
  // Empty, and then not shown, where there is nothing to warn of.
  {
    kind: 'caution',
    id: 'mark-picture-warning',
    needs: [foundMark],
    prose: prose`${pictureMarkWarning}`,
  },
  { kind: 'prose', id: 'mark-picture-said', prose: prose`${pictureMarkSaid}` },
  markPictureFigure,
  {
    kind: 'prose',
    id: 'mark-picture-against',
    needs: [foundMark, markPitch],
    prose: prose`${pictureAgainstSaid}`,
  },
  {
    kind: 'prose',
    id: 'mark-picture-row',
    needs: [foundMark, markPitch],
    prose: prose`${addLink}, with the pulse energy, the plane and the pulses of the design. Its uncertainty is the one from which the table works out that of the marked area, as the contours leave it; it need not be that of the outer diameter. ${pictureRowSaid}`,
  },
];
