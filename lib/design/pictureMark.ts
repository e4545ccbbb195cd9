import { derived, ifThere } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { previewImage } from '../measured/imagePreview.ts';
import { takeRegion } from '../measured/markLevels.ts';
import { measureMark, type PictureMark } from '../measured/markPicture.ts';
import {
  markPicture,
  markPictureInputs,
  markPictureNames,
  markPitch,
  markRegion,
  markRegionSource,
} from './markPicture.ts';
import { marked } from './marks.ts';
import { namingPart, type ResultText } from './pictureInputs.ts';
import { noPicture } from './pictureScale.ts';

export const foundMark = derived({
  id: 'markPicture.found',
  name: 'mark found in the picture',
  symbol: '\\text{contours}',
  unit: 'none',
  about:
    'Contours of the mark half way between the grey of its surroundings and its own, with areas and lengths in pixels, and what tells against them.',
  from: { picture: markPicture, region: markRegion, source: markRegionSource },
  compute: ({ picture, region, source }): PictureMark => {
    if (picture === null) throw noPicture(markPictureNames);
    return namingPart(source, markPictureInputs, () =>
      measureMark(picture, { pixelPitch: 1, ...(source === 'part' && { region }) }),
    );
  },
  shownAs: ({ outerDiameter, dark }) =>
    `${dark ? 'darker' : 'brighter'} than its surroundings, ${outerDiameter.toFixed(1)} pixels wide`,
  formula: 'G(x,y)=\\tfrac12(G_\\text{mark}+G_\\text{background})',
  source: 'common practice',
  heavy: 'search',
});

export const markPreview = derived({
  id: 'markPicture.preview',
  name: 'picture of the mark',
  symbol: '\\text{preview}',
  unit: 'none',
  about: 'The part of the picture that is measured, averaged over blocks of pixels, for showing.',
  from: { picture: markPicture, region: markRegion, source: markRegionSource },
  compute: ({ picture, region, source }) => {
    if (picture === null) throw noPicture(markPictureNames);
    const part = namingPart(source, markPictureInputs, () =>
      takeRegion(picture, source === 'part' ? region : undefined),
    );
    return previewImage({ ...picture, ...part }, 320);
  },
  formula: '\\text{mean over blocks}',
  source: 'definition',
});

/** What tells against the numbers of the mark. */
const doubtOf = ({ notes }: PictureMark) => (notes.length === 0 ? undefined : notes.join(' '));

/** A result in metres or square metres from one in pixels: `power` of the pitch. */
function result(units: { readonly unit: string; readonly display: string }, power: 1 | 2) {
  return (text: ResultText, pixels: (mark: PictureMark) => number) =>
    derived({
      ...text,
      ...units,
      id: `markPicture.${text.id}`,
      from: { mark: foundMark, pitch: markPitch },
      compute: ({ mark, pitch }): number => pixels(mark) * pitch ** power,
      valid: ({ mark }) => doubtOf(mark),
      source: 'definition',
    });
}

const length = result({ unit: 'm', display: 'um' }, 1);
const area = result({ unit: 'm^2', display: 'um^2' }, 2);

export const pictureArea = area(
  {
    id: 'area',
    name: 'measured area of the mark',
    symbol: 'A_\\text{pic}',
    about: 'Area inside the outer contour without the unmarked parts.',
    formula: 'A_\\text{out}-\\sum A_\\text{hole}',
  },
  (mark) => mark.area,
);

export const pictureAreaUncertainty = area(
  {
    id: 'areaUncertainty',
    name: 'uncertainty of the measured area',
    symbol: 'u(A_\\text{pic})',
    digits: 2,
    about:
      'Half of how much the area changes from a contour at 0.35 of the way from background to mark to one at 0.65: what the width of the edge leaves open. The scale is not in it.',
    formula: '\\tfrac12|A_{0.35}-A_{0.65}|',
  },
  (mark) => mark.areaUncertainty,
);

export const pictureOuterArea = area(
  {
    id: 'outerArea',
    name: 'area inside the outer contour',
    symbol: 'A_\\text{out}',
    about: 'Area inside the outer contour, unmarked parts included.',
    formula: 'A\\{\\text{outer contour}\\}',
  },
  (mark) => mark.contours.outerArea,
);

export const pictureInnerArea = area(
  {
    id: 'innerArea',
    name: 'area of the unmarked centre',
    symbol: 'A_\\text{in}',
    about:
      'Area inside the largest inner contour; 0 where there is none. Holes below 0.4\u202f% of the mark do not count.',
    formula: 'A\\{\\text{inner contour}\\}',
  },
  (mark) => mark.contours.innerArea,
);

export const pictureDiameter = length(
  {
    id: 'outerDiameter',
    name: 'measured diameter of the mark',
    symbol: 'D_\\text{pic}',
    about: 'Diameter of a disc with the area inside the outer contour.',
    formula: '2\\sqrt{A_\\text{out}/\\pi}',
  },
  (mark) => mark.outerDiameter,
);

export const pictureInnerDiameter = length(
  {
    id: 'innerDiameter',
    name: 'measured diameter of the unmarked centre',
    symbol: 'D_\\text{pic,in}',
    about: 'Diameter of a disc with the area inside the largest inner contour; 0 where there is none.',
    formula: '2\\sqrt{A_\\text{in}/\\pi}',
  },
  (mark) => mark.innerDiameter,
);

export const pictureDiameterUncertainty = length(
  {
    id: 'outerDiameterUncertainty',
    name: 'uncertainty of the measured diameter',
    symbol: 'u(D_\\text{pic})',
    digits: 2,
    about:
      'Half of how much the diameter changes from a contour at 0.35 to one at 0.65: what the width of the edge leaves open. The scale is not in it.',
    formula: '\\tfrac12|D_{0.35}-D_{0.65}|',
  },
  (mark) => mark.outerDiameterUncertainty,
);

export const pictureInnerUncertainty = length(
  {
    id: 'innerDiameterUncertainty',
    name: 'uncertainty of the measured centre',
    symbol: 'u(D_\\text{pic,in})',
    digits: 2,
    about:
      'Half of how much the diameter of the unmarked centre changes from a contour at 0.35 to one at 0.65. The scale is not in it.',
    formula: '\\tfrac12|D_{\\text{in},0.35}-D_{\\text{in},0.65}|',
  },
  (mark) => mark.innerDiameterUncertainty,
);

const extent = (axis: 'x' | 'y', index: 0 | 1) =>
  length(
    {
      id: `extent${axis.toUpperCase()}`,
      name: `extent of the mark along ${axis}`,
      symbol: `D_${axis}`,
      about: `From one end of the outer contour to the other along ${axis} of the picture.`,
      formula: `${axis}_\\text{max}-${axis}_\\text{min}`,
    },
    (mark) => mark.diameters[index],
  );

const centre = (axis: 'x' | 'y', index: 0 | 1, edge: string) =>
  length(
    {
      id: `centre${axis.toUpperCase()}`,
      name: `centre of the mark along ${axis}`,
      symbol: `${axis}_c`,
      about: `Centroid of what the outer contour encloses, from the ${edge} edge of the whole picture.`,
      formula: `\\bar ${axis}`,
    },
    (mark) => mark.centre[index],
  );

export const pictureExtentX = extent('x', 0);
export const pictureExtentY = extent('y', 1);
export const pictureCentreX = centre('x', 0, 'left');
export const pictureCentreY = centre('y', 1, 'upper');

export const predictedMark = ifThere({
  id: 'markPicture.predicted',
  name: 'predicted mark beside the picture',
  symbol: '\\text{predicted}',
  unit: 'none',
  about:
    'The mark predicted for the workpiece as it stands, where there is one, to be drawn over the picture.',
  of: marked,
  shownAs: ({ outerDiameter }) => formatReadable(outerDiameter, 'm', 'um'),
});
