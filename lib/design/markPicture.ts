import { choice, derived, file, number, picked } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { CameraImage } from '../measured/cameraImage.ts';
import type { PictureRegion } from '../measured/markLevels.ts';
import { Problem } from '../problem.ts';

export const markPicture = file<CameraImage>({
  id: 'markPicture.picture',
  name: 'microscope picture of a mark',
  symbol: '\\text{picture}',
  about:
    'A picture of one mark under the microscope, with its surroundings: PNG, TIFF, JPEG or a table of grey values, of colours their luminance; darker or brighter than what lies around it.',
  shownAs: ({ name, width, height }) => `${name}, ${width} × ${height} pixels`,
});

export const scaleSource = choice({
  id: 'markPicture.scaleSource',
  name: 'scale of the picture',
  symbol: '\\text{scale}',
  about: 'Where the length of a pixel comes from: typed, or a line drawn along the scale bar in the picture.',
  initial: 'unknown',
  options: {
    unknown: 'not said yet',
    typed: 'typed pixel pitch',
    bar: 'a scale bar in the picture',
  },
});

export const typedMarkPitch = number({
  id: 'markPicture.pixelPitch',
  name: 'pixel pitch of the microscope',
  symbol: 'p_\\text{typed}',
  unit: 'm',
  display: 'um',
  about:
    'Distance between neighbouring pixels as they lie on the workpiece, the camera’s pitch divided by the magnification; square pixels.',
  initial: 0.2e-6,
  range: { min: 1e-9, max: 1e-3 },
  typical: [0.05e-6, 2e-6],
});

export const barLength = number({
  id: 'markPicture.barLength',
  name: 'length of the scale bar',
  symbol: 'L_\\text{bar}',
  unit: 'm',
  display: 'um',
  about: 'The length that the scale bar in the picture stands for, as written beside it.',
  initial: 20e-6,
  range: { min: 1e-8, max: 0.1 },
  typical: [5e-6, 200e-6],
});

/** Pictures are no larger than this, in pixels. */
const most = 1e5;

function place(id: string, name: string, symbol: string, about: string, initial: number, min = 0) {
  const pixels = { unit: '1', display: 'px', digits: 6, range: { min, max: most } } as const;
  return number({ ...pixels, id: `markPicture.${id}`, name, symbol, about, initial });
}

const fromCorner = 'in pixels from the upper left corner of the picture';
export const barStartX = place(
  'barStartX',
  'one end of the bar, x',
  'x_1',
  `Where the scale bar begins along x, ${fromCorner}.`,
  20,
);
export const barStartY = place(
  'barStartY',
  'one end of the bar, y',
  'y_1',
  `Where the scale bar begins along y, ${fromCorner}, downwards.`,
  20,
);
export const barEndX = place(
  'barEndX',
  'other end of the bar, x',
  'x_2',
  `Where the scale bar ends along x, ${fromCorner}.`,
  120,
);
export const barEndY = place(
  'barEndY',
  'other end of the bar, y',
  'y_2',
  `Where the scale bar ends along y, ${fromCorner}, downwards.`,
  20,
);

export const regionSource = choice({
  id: 'markPicture.regionSource',
  name: 'part of the picture',
  symbol: '\\text{region}',
  about: 'Where the mark is looked for: the whole picture, or a part that holds this mark and no other.',
  initial: 'whole',
  options: { whole: 'the whole picture', part: 'a part of it' },
});

const whole = 'whole pixels, else rounded';
export const regionLeft = place(
  'regionLeft',
  'left edge of the part',
  'x_\\text{part}',
  `Left edge of the part that is measured, ${fromCorner}; ${whole}.`,
  0,
);
export const regionTop = place(
  'regionTop',
  'upper edge of the part',
  'y_\\text{part}',
  `Upper edge of the part that is measured, ${fromCorner}, downwards; ${whole}.`,
  0,
);
export const regionWidth = place(
  'regionWidth',
  'width of the part',
  'w_\\text{part}',
  `Width of the part that is measured, in pixels; ${whole}.`,
  100,
  8,
);
export const regionHeight = place(
  'regionHeight',
  'height of the part',
  'h_\\text{part}',
  `Height of the part that is measured, in pixels; ${whole}.`,
  100,
  8,
);

export const barPitch = derived({
  id: 'markPicture.barPitch',
  name: 'pixel pitch from the scale bar',
  symbol: 'p_\\text{bar}',
  unit: 'm',
  display: 'um',
  about: 'Length of the scale bar over the pixels of the line drawn along it.',
  from: { length: barLength, x1: barStartX, y1: barStartY, x2: barEndX, y2: barEndY },
  compute: ({ length, x1, y1, x2, y2 }) => {
    const pixels = Math.hypot(x2 - x1, y2 - y1);
    if (pixels >= 1) return length / pixels;
    throw new Problem(
      'impossible',
      'The line along the scale bar is shorter than a pixel. Draw it from one end of the bar to the other.',
      { input: barEndX.id, value: `${pixels.toFixed(2)} pixels`, allowed: '1 pixel or more' },
    );
  },
  formula: 'L_\\text{bar}/\\sqrt{(x_2-x_1)^2+(y_2-y_1)^2}',
  source: 'definition',
});

const unknownPitch = derived({
  id: 'markPicture.unknownPitch',
  name: 'pixel pitch that nobody has said',
  symbol: '\\text{?}',
  unit: 'm',
  display: 'um',
  about: 'Stands for the pitch of a picture until its scale is given: there is none that could be assumed.',
  from: { picture: markPicture },
  compute: ({ picture }): number => {
    if (!picture) throw noPicture();
    throw new Problem(
      'absent',
      'How large a pixel of this picture is has not been said: type its pitch, or draw a line along the scale bar and type the length that stands beside it.',
      { input: scaleSource.id },
    );
  },
  formula: '\\text{?}',
  source: 'definition',
});

export const markPitch = picked<'unknown' | 'typed' | 'bar', number>({
  id: 'markPicture.usedPixelPitch',
  name: 'pixel pitch of the picture',
  symbol: 'p',
  unit: 'm',
  display: 'um',
  about: 'Distance between neighbouring pixels as they lie on the workpiece, typed or from the scale bar.',
  by: scaleSource,
  cases: { unknown: unknownPitch, typed: typedMarkPitch, bar: barPitch },
  formula: '\\begin{cases} \\text{?} \\\\ p_\\text{typed} \\\\ p_\\text{bar} \\end{cases}',
});

/** The problem of a page without a picture. */
export function noPicture(): Problem {
  return new Problem('absent', 'No picture of a mark has been given yet: choose one.', {
    input: markPicture.id,
  });
}

export const markRegion = derived({
  id: 'markPicture.region',
  name: 'part of the picture that is measured',
  symbol: '\\text{part}',
  unit: { left: '1', top: '1', width: '1', height: '1' },
  about:
    'Left and upper edge, width and height in pixels of the part that is measured; the whole picture where none is chosen.',
  from: {
    picture: markPicture,
    source: regionSource,
    left: regionLeft,
    top: regionTop,
    width: regionWidth,
    height: regionHeight,
  },
  compute: ({ picture, source, left, top, width, height }): PictureRegion => {
    if (picture === null) throw noPicture();
    if (source === 'whole') return { left: 0, top: 0, width: picture.width, height: picture.height };
    const [x, y] = [Math.round(left), Math.round(top)];
    return { left: x, top: y, width: Math.round(width), height: Math.round(height) };
  },
  shownAs: ({ left, top, width, height }) =>
    `${width} × ${height} pixels at ${formatReadable(left, '1', '1')}, ${formatReadable(top, '1', '1')}`,
  formula: '(x_\\text{part}, y_\\text{part}, w_\\text{part}, h_\\text{part})',
  source: 'definition',
});
