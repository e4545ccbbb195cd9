import { choice, derived, file } from '../graph/define.ts';
import type { ChoiceInput, FileInput } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import type { CameraImage } from '../measured/cameraImage.ts';
import type { PictureRegion } from '../measured/markLevels.ts';
import { Problem } from '../problem.ts';
import { fromCorner, noPicture, type PictureNames, pictureScale, pixelInputs } from './pictureScale.ts';

const rounded = 'whole pixels, else rounded';

/** The part of the picture that counts. */
function regionInputs(names: PictureNames) {
  const place = pixelInputs(names);
  const { prefix, suffix, sought, holds, leastSide, side: initialSide } = names;
  const edge = (id: string, name: string, symbol: string, about: string) =>
    place(id, name, symbol, `${about}; ${rounded}.`, 0);
  const side = (id: string, name: string, symbol: string, about: string) =>
    place(id, name, symbol, `${about}, in pixels; ${rounded}.`, initialSide, leastSide);
  const measured = 'of the part that is measured';
  return {
    regionSource: choice({
      id: `${prefix}.regionSource`,
      name: `part of the picture${suffix}`,
      symbol: '\\text{region}',
      about: `${sought}: the whole picture, or a part that holds ${holds}.`,
      initial: 'whole',
      options: { whole: 'the whole picture', part: 'a part of it' },
    }),
    regionLeft: edge(
      'regionLeft',
      'left edge of the part',
      'x_\\text{part}',
      `Left edge ${measured}, ${fromCorner}`,
    ),
    regionTop: edge(
      'regionTop',
      'upper edge of the part',
      'y_\\text{part}',
      `Upper edge ${measured}, ${fromCorner}, downwards`,
    ),
    regionWidth: side('regionWidth', 'width of the part', 'w_\\text{part}', `Width ${measured}`),
    regionHeight: side('regionHeight', 'height of the part', 'h_\\text{part}', `Height ${measured}`),
  };
}

function pictureRegion(names: PictureNames, picture: FileInput<CameraImage>) {
  const inputs = regionInputs(names);
  const { regionSource: source, regionLeft: left, regionTop: top } = inputs;
  const region = derived({
    id: `${names.prefix}.region`,
    name: `part of the picture that is measured${names.suffix}`,
    symbol: '\\text{part}',
    unit: { left: '1', top: '1', width: '1', height: '1' },
    about:
      'Left and upper edge, width and height in pixels of the part that is measured; the whole picture where none is chosen.',
    from: { picture, source, left, top, width: inputs.regionWidth, height: inputs.regionHeight },
    compute: ({ picture, source, left, top, width, height }): PictureRegion => {
      if (picture === null) throw noPicture(names);
      if (source === 'whole') return { left: 0, top: 0, width: picture.width, height: picture.height };
      const [x, y] = [Math.round(left), Math.round(top)];
      return { left: x, top: y, width: Math.round(width), height: Math.round(height) };
    },
    shownAs: ({ left, top, width, height }) =>
      `${width} × ${height} pixels at ${formatReadable(left, '1', '1')}, ${formatReadable(top, '1', '1')}`,
    formula: '(x_\\text{part}, y_\\text{part}, w_\\text{part}, h_\\text{part})',
    source: 'definition',
  });
  return { ...inputs, region };
}

/** A picture with its scale and the part of it that counts; `about` and `name` are those of the picture. */
export function pictureInputs(names: PictureNames, { name, about }: { name: string; about: string }) {
  const picture = file<CameraImage>({
    id: `${names.prefix}.picture`,
    name,
    symbol: '\\text{picture}',
    about,
    shownAs: ({ name, width, height }) => `${name}, ${width} × ${height} pixels`,
  });
  return { picture, ...pictureScale(names, picture), ...pictureRegion(names, picture) };
}

export type PictureInputs = ReturnType<typeof pictureInputs>;

/** Names the input that a problem of a picture is mended by: the part chosen in it, else the picture. */
export function namingPart<T>(
  chosen: 'whole' | 'part',
  inputs: { readonly picture: FileInput<CameraImage>; readonly regionSource: ChoiceInput<'whole' | 'part'> },
  compute: () => T,
): T {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof Problem) || error.parts.input !== undefined) throw error;
    const input = chosen === 'part' ? inputs.regionSource.id : inputs.picture.id;
    throw new Problem(error.kind, error.message, { ...error.parts, input });
  }
}

/** What a result measured in a picture says of itself; `id` without what all ids of the picture begin with. */
export interface ResultText {
  readonly id: string;
  readonly name: string;
  readonly symbol: string;
  readonly about: string;
  readonly formula: string;
  readonly digits?: number;
}
