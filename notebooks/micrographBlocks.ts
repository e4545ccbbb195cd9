import { smoothing } from '../lib/design/micrographInputs.ts';
import { firstMicrograph, type Micrograph, otherMicrograph } from '../lib/design/micrographs.ts';
import type { InputQuantity } from '../lib/graph/quantity.ts';
import type { Block } from './document.ts';
import { micrographPictures, regularityFigures } from './micrographFigures.ts';
import {
  micrographsCompared,
  micrographWarning,
  otherMicrographWarning,
  otherRegularSaid,
  otherRippledSaid,
  regularSaid,
  rippledSaid,
} from './micrographSentences.ts';
import { orientationFigure, spectrumFigures } from './micrographSpectra.ts';
import {
  againstDirection,
  againstExpected,
  otherAgainstDirection,
  otherAgainstExpected,
} from './micrographVerdicts.ts';
import { drawnOn, pictureControls } from './pictureSpec.ts';
import { prose, type Sentence, term } from './prose.ts';

/** What is said of one picture. */
interface Said {
  readonly rippled: Sentence;
  readonly regular: Sentence;
  readonly warning: Sentence;
  readonly expected: Sentence;
  readonly direction: Sentence;
}

/** Where a micrograph is given and drawn on, and what is said of it. */
function blocksOf(m: Micrograph, id: string, heading: string, more: InputQuantity[], said: Said): Block[] {
  return [
    {
      kind: 'controls',
      id: `${id}-controls`,
      heading,
      inputs: [...pictureControls(m), m.scanAngle, ...more],
    },
    { kind: 'picture', id: `${id}-drawn`, ...drawnOn(m, 'the ripples') },
    // Empty, and then not shown, where there is nothing to warn of.
    { kind: 'caution', id: `${id}-warning`, needs: [m.found], prose: prose`${said.warning}` },
    { kind: 'prose', id: `${id}-said`, prose: prose`${said.rippled} ${said.regular}` },
    { kind: 'prose', id: `${id}-expected`, needs: [m.period], prose: prose`${said.expected}` },
    { kind: 'prose', id: `${id}-direction`, needs: [m.ridgesToScan], prose: prose`${said.direction}` },
  ];
}

/** Ripples measured in one or two micrographs with the same treatment, beside the prediction. */
export const micrographBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'micrograph',
    prose: prose`
      ## Ripples in a micrograph

      Give a picture of the rippled surface from above, and its scale: the pixel pitch, which is the width of one pixel on the surface, or the scale bar in the picture. Draw a part where the picture holds more than the field; rows that the microscope wrote on are noticed and left out. The period and the direction come from the power spectrum of the picture, which tells how strong a pattern of each period and direction is in it; it is averaged over tiles whose edges are faded out. Behind ± stand ${term('standard uncertainties', 'standard-uncertainty')} from the spread over the picture and from how much of the spectrum’s peak counts; an error of the scale comes on top. Directions count counter-clockwise from the picture’s x axis, which points to the right. The local orientation is the direction in which the grey changes most at a place; places count by how much it changes. Its half-width, half the width of its distribution at half height, depends on the smoothing (I. Gnilitskyi et al., Sci. Rep. 7, 8485 (2017), memory), so compare pictures of one magnification. Nothing in the design changes by it.
    `,
  },
  ...blocksOf(firstMicrograph, 'micrograph-a', 'Micrograph A', [smoothing], {
    rippled: rippledSaid,
    regular: regularSaid,
    warning: micrographWarning,
    expected: againstExpected,
    direction: againstDirection,
  }),
  {
    kind: 'prose',
    id: 'micrograph-other',
    prose: prose`
      ### A second micrograph beside it

      Another picture gets the same treatment, with the same smoothing in pixels.
    `,
  },
  ...blocksOf(otherMicrograph, 'micrograph-b', 'Micrograph B', [], {
    rippled: otherRippledSaid,
    regular: otherRegularSaid,
    warning: otherMicrographWarning,
    expected: otherAgainstExpected,
    direction: otherAgainstDirection,
  }),
  {
    kind: 'prose',
    id: 'micrographs-compared',
    needs: [firstMicrograph.found, otherMicrograph.found],
    prose: prose`${micrographsCompared}`,
  },
  micrographPictures,
  spectrumFigures,
  orientationFigure,
  regularityFigures,
];
