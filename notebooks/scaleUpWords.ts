import { formatReadable } from '../lib/graph/units.ts';
import type { ScaleLimit } from '../lib/process/scaleUp.ts';
import type { ScaleStep } from '../lib/process/scaleUpSteps.ts';

/** Area per time as it is shown in this document; m²/s in. */
export const areaText = (rate: number, digits = 3) => formatReadable(rate, 'm^2/s', 'm^2/h', digits);

/** What binds on the larger machine, in words that stand after "is". */
export const scaleLimitWords: Readonly<Record<ScaleLimit, string>> = {
  power: 'the average power of the larger laser',
  'repetition rate': 'the repetition rate of the larger laser',
  'scanner speed': 'the speed of the larger scanner',
  acceleration: 'the acceleration of the larger scanner, with which it turns round',
  heat: 'the temperature rise that is allowed',
  stitching: 'the move from field to field',
};

/** The same beside a point of a chart. */
export const limitLabels: Readonly<Record<ScaleLimit, string>> = {
  power: 'power',
  'repetition rate': 'repetition rate',
  'scanner speed': 'scanner speed',
  acceleration: 'acceleration',
  heat: 'heat',
  stitching: 'moves',
};

/** What would help where that binds. */
export const scaleLimitHelp: Readonly<Record<ScaleLimit, string>> = {
  power:
    'Every spot takes its share of the power: more spots do not help, more power does, or a recipe with less energy to the same area.',
  'repetition rate':
    'More spots help, as each writes lines of its own, or a laser with more pulses a second; more power or a faster scanner does not.',
  'scanner speed': 'More spots help, or a faster scanner; more power does not.',
  acceleration: 'Longer lines help, or more spots, which leave fewer turns; more power does not.',
  heat: 'The surface bears no more heat: all spots share what it may take, so that more of them bring less than their number; a recipe with less heat to the same place helps, more power does not.',
  stitching:
    'Larger fields help, or a quicker stage; whatever writes the field faster brings little from here on.',
};

/** The steps from today’s machine to the larger one. */
export const stepWords: Readonly<Record<ScaleStep, string>> = {
  today: 'as it is set',
  fastest: 'today’s machine at its fastest',
  power: 'the power of the larger laser',
  'repetition rate': 'its repetition rate',
  scanner: 'the larger scanner',
  spots: 'the further spots',
};

/** The second step where heat slows today’s machine down. */
export const heldToHeat = 'held to the allowed temperature';
