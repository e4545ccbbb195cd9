import { measuredPixelPitch } from '../../lib/design/measuredSpot.ts';
import { readTyped } from '../../lib/graph/typedInput.ts';
import { formatQuantity } from '../../lib/graph/units.ts';
import type { PictureRegion } from '../../lib/measured/markLevels.ts';
import { measureMark } from '../../lib/measured/markPicture.ts';
import { decodeMarkPicture } from '../../lib/measured/micrograph.ts';
import { Problem } from '../../lib/problem.ts';
import type { CommandIo } from './commandIo.ts';
import { readBytes } from './openDesign.ts';
import { onlyWord, readOptions, required } from './options.ts';

/** `measure mark FILE --pixel LENGTH [--region LEFT,TOP,WIDTH,HEIGHT] [--level SHARE]`: JSON of a mark in a microscope’s picture. */
export function measureMarkFile(args: readonly string[], io: CommandIo): string {
  const options = readOptions(args, ['pixel', 'region', 'level']);
  const path = onlyWord(options, 'picture');
  const pixelPitch = readTyped(measuredPixelPitch, required(options, 'pixel', '"0.2 um"'));
  const region = options.one('region');
  const level = options.one('level');
  const mark = measureMark(decodeMarkPicture(readBytes(io, path), path), {
    pixelPitch,
    ...(region !== undefined && { region: readRegion(region) }),
    ...(level !== undefined && { level: readLevel(level) }),
  });
  const length = (value: number, uncertainty?: number) => ({
    value,
    unit: 'm',
    ...(uncertainty !== undefined && { uncertainty }),
    shown: formatQuantity(value, 'm', 'um'),
  });
  const result = {
    area: {
      value: mark.area,
      unit: 'm^2',
      uncertainty: mark.areaUncertainty,
      shown: formatQuantity(mark.area, 'm^2', 'um^2'),
    },
    outerDiameter: length(mark.outerDiameter, mark.outerDiameterUncertainty),
    innerDiameter: length(mark.innerDiameter, mark.innerDiameterUncertainty),
    diameterX: length(mark.diameters[0]),
    diameterY: length(mark.diameters[1]),
    centreX: length(mark.centre[0]),
    centreY: length(mark.centre[1]),
    dark: mark.dark,
    notes: mark.notes,
    outerContour: mark.contours.outer,
    innerContours: mark.contours.holes,
  };
  return `${JSON.stringify(result, (_, value) => (typeof value === 'number' ? Number(value.toPrecision(8)) : value))}\n`;
}

/** A region written LEFT,TOP,WIDTH,HEIGHT in whole pixels, or a Problem. */
export function readRegion(text: string): PictureRegion {
  const numbers = text.split(/[,;x\s]+/).map(Number);
  const [left, top, width, height] = numbers as [number, number, number, number];
  if (numbers.length === 4 && numbers.every(Number.isInteger)) return { left, top, width, height };
  throw new Problem(
    'unreadable',
    `The region '${text}' cannot be; write LEFT,TOP,WIDTH,HEIGHT in pixels, e.g. 100,80,200,200.`,
  );
}

function readLevel(text: string): number {
  const level = Number(text.replace(',', '.'));
  if (text.trim() !== '' && Number.isFinite(level)) return level;
  throw new Problem('unreadable', `The level '${text}' is no number; write a share such as 0.5.`);
}
