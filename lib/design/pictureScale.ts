import { choice, derived, number, picked } from '../graph/define.ts';
import type { FileInput } from '../graph/quantity.ts';
import type { CameraImage } from '../measured/cameraImage.ts';
import { Problem } from '../problem.ts';

/** What tells the inputs of one picture from those of another. */
export interface PictureNames {
  /** First part of every id. */
  readonly prefix: string;
  /** Behind every name where there are several such pictures, as in " (A)"; else empty. */
  readonly suffix: string;
  /** What a part of the picture is chosen for, as in "Where the mark is looked for". */
  readonly sought: string;
  /** What a part holds, as in "this mark and no other". */
  readonly holds: string;
  /** Fewest pixels along the sides of a part. */
  readonly leastSide: number;
  /** Initial pitch in m, with its usual span, and initial length of the scale bar. */
  readonly pitch: number;
  readonly usualPitch: readonly [number, number];
  readonly barLength: number;
  /** Initial x of the end of the line along the bar, which begins at 20; 20 for a line that must be drawn before it counts. */
  readonly barEnd: number;
  /** Initial width and height of a part, in pixels. */
  readonly side: number;
  /** The problem where there is no picture, a sentence. */
  readonly missing: string;
}

/** The problem of a page without that picture. */
export function noPicture({ prefix, missing }: PictureNames): Problem {
  return new Problem('absent', missing, { input: `${prefix}.picture` });
}

/** Pictures are no larger than this, in pixels. */
const most = 1e5;
export const fromCorner = 'in pixels from the upper left corner of the picture';

/** Makes places in the picture and lengths on it, in pixels. */
export function pixelInputs({ prefix, suffix }: PictureNames) {
  return (id: string, name: string, symbol: string, about: string, initial: number, min = 0) => {
    const pixels = { unit: '1', display: 'px', digits: 6, range: { min, max: most } } as const;
    return number({ ...pixels, id: `${prefix}.${id}`, name: `${name}${suffix}`, symbol, about, initial });
  };
}

/** The ends of the line along the scale bar. */
function barInputs(names: PictureNames) {
  const place = pixelInputs(names);
  const end = (id: string, name: string, symbol: string, verb: string, initial: number) => {
    const [axis, down] = id.endsWith('X') ? ['x', ''] : ['y', ', downwards'];
    const about = `Where the scale bar ${verb} along ${axis}, ${fromCorner}${down}.`;
    return place(id, `${name}, ${axis}`, symbol, about, initial);
  };
  return {
    barStartX: end('barStartX', 'one end of the bar', 'x_1', 'begins', 20),
    barStartY: end('barStartY', 'one end of the bar', 'y_1', 'begins', 20),
    barEndX: end('barEndX', 'other end of the bar', 'x_2', 'ends', names.barEnd),
    barEndY: end('barEndY', 'other end of the bar', 'y_2', 'ends', 20),
  };
}

/** Where the length of a pixel comes from. */
function scaleInputs(names: PictureNames) {
  const { prefix, suffix } = names;
  return {
    scaleSource: choice({
      id: `${prefix}.scaleSource`,
      name: `scale of the picture${suffix}`,
      symbol: '\\text{scale}',
      about:
        'Where the length of a pixel comes from: typed, or a line drawn along the scale bar in the picture.',
      initial: 'unknown',
      options: {
        unknown: 'not said yet',
        typed: 'typed pixel pitch',
        bar: 'a scale bar in the picture',
      },
    }),
    typedPitch: number({
      id: `${prefix}.pixelPitch`,
      name: `pixel pitch of the microscope${suffix}`,
      symbol: 'p_\\text{typed}',
      unit: 'm',
      display: 'um',
      about:
        'Distance between neighbouring pixels as they lie on the workpiece, the camera’s pitch divided by the magnification; square pixels.',
      initial: names.pitch,
      range: { min: 1e-9, max: 1e-3 },
      typical: names.usualPitch,
    }),
    barLength: number({
      id: `${prefix}.barLength`,
      name: `length of the scale bar${suffix}`,
      symbol: 'L_\\text{bar}',
      unit: 'm',
      display: 'um',
      about: 'The length that the scale bar in the picture stands for, as written beside it.',
      initial: names.barLength,
      range: { min: 1e-8, max: 0.1 },
      typical: [5e-6, 200e-6],
    }),
    ...barInputs(names),
  };
}

/** Inputs that say how long a pixel is, and the pitch that follows. */
export function pictureScale(names: PictureNames, picture: FileInput<CameraImage>) {
  const inputs = scaleInputs(names);
  const { prefix, suffix } = names;
  const { scaleSource, typedPitch, barLength, barStartX, barStartY, barEndX, barEndY } = inputs;
  const length = { unit: 'm', display: 'um' } as const;
  const barPitch = derived({
    ...length,
    id: `${prefix}.barPitch`,
    name: `pixel pitch from the scale bar${suffix}`,
    symbol: 'p_\\text{bar}',
    about: 'Length of the scale bar over the pixels of the line drawn along it.',
    from: { length: barLength, x1: barStartX, y1: barStartY, x2: barEndX, y2: barEndY },
    compute: ({ length, x1, y1, x2, y2 }) => {
      const pixels = Math.hypot(x2 - x1, y2 - y1);
      if (pixels >= 1) return length / pixels;
      if (pixels === 0)
        throw new Problem(
          'absent',
          'No line has been drawn along the scale bar yet: draw it from one end of the bar to the other.',
          { input: barEndX.id },
        );
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
    ...length,
    id: `${prefix}.unknownPitch`,
    name: `pixel pitch that nobody has said${suffix}`,
    symbol: '\\text{?}',
    about: 'Stands for the pitch of a picture until its scale is given: there is none that could be assumed.',
    from: { picture },
    compute: ({ picture }): number => {
      if (!picture) throw noPicture(names);
      throw new Problem(
        'absent',
        'How large a pixel of this picture is has not been said: type its pitch, or draw a line along the scale bar and type the length that stands beside it.',
        { input: scaleSource.id },
      );
    },
    formula: '\\text{?}',
    source: 'definition',
  });
  const pitch = picked<'unknown' | 'typed' | 'bar', number>({
    ...length,
    id: `${prefix}.usedPixelPitch`,
    name: `pixel pitch of the picture${suffix}`,
    symbol: 'p',
    about: 'Distance between neighbouring pixels as they lie on the workpiece, typed or from the scale bar.',
    by: scaleSource,
    cases: { unknown: unknownPitch, typed: typedPitch, bar: barPitch },
    formula: '\\begin{cases} \\text{?} \\\\ p_\\text{typed} \\\\ p_\\text{bar} \\end{cases}',
  });
  return { ...inputs, barPitch, unknownPitch, pitch };
}
