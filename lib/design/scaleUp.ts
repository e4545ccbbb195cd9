import { constant, derived } from '../graph/define.ts';
import { formatQuantity, formatReadable } from '../graph/units.ts';
import { lineCount } from '../process/hatch.ts';
import { netArea, type ScaledField, type ScaleLimit, scaledField } from '../process/scaleUp.ts';
import { scansOf } from '../process/spotScans.ts';
import { fieldWidth } from './depthInUse.ts';
import { hatch } from './hatch.ts';
import { fieldOverlap, moveTime, spotDistance } from './scaleUpInputs.ts';
import { mostSpots, shotEnergy, wholeSpots, work } from './scaleUpWork.ts';
import { fieldHeight } from './scannerInputs.ts';

/** What limits, in a few words. */
export const limitInWords = (kind: ScaleLimit): string => (kind === 'stitching' ? 'moves' : kind);

export const scaled = derived({
  id: 'scaleUp.field',
  name: 'field on the larger machine',
  symbol: '\\text{field}_\\text{L}',
  unit: {
    speed: 'm/s',
    repetitionRate: 'Hz',
    power: 'W',
    fieldTime: 's',
    writingTime: 's',
    rate: 'm^2/s',
    energyPerArea: 'J/m^2',
    limit: 'none',
    next: 'none',
  },
  about:
    'The recipe at the fastest speed that the larger machine has for it: pulses and lines on their places, as many lines at a time as there are spots, and the move to the next field.',
  from: { work, shot: shotEnergy },
  // The energy of a pulse is a bound of its own: with more spots than it serves nothing is written.
  compute: ({ work, shot: _shot }): ScaledField => scaledField(work),
  shownAs: ({ rate, limit }) =>
    `${formatQuantity(rate, 'm^2/s', 'm^2/h', 3)}, limited by ${limitInWords(limit)}`,
  formula: '\\max_v \\dot A(v)',
  source: 'definition',
});

/** A number of the field on the larger machine. */
function partOf(
  key: Exclude<keyof ScaledField, 'limit' | 'next'>,
  text: {
    readonly id: string;
    readonly name: string;
    readonly symbol: string;
    readonly unit: string;
    readonly display?: string;
    readonly about: string;
    readonly formula: string;
  },
) {
  return derived({
    digits: 3,
    source: 'definition',
    ...text,
    from: { field: scaled },
    compute: ({ field }): number => field[key],
  });
}

export const scaledFieldTime = partOf('fieldTime', {
  id: 'scaleUp.fieldTime',
  name: 'time for one field on the larger machine',
  symbol: 't_\\text{field,L}',
  unit: 's',
  display: 'auto:s',
  about:
    'Time for all scans of all passes of one field, turning round and delays counted, the move to the next not.',
  formula: 'n_\\text{pass}n_\\text{scan}\\,t_\\text{line}',
});

export const areaPerHour = derived({
  id: 'scaleUp.areaPerHour',
  name: 'area per hour on the larger machine',
  symbol: '\\dot A_\\text{L}',
  unit: 'm^2/s',
  display: 'm^2/h',
  digits: 3,
  about:
    'Area that the larger machine finishes per hour with all spots, moves between fields and overlap counted.',
  from: {
    width: fieldWidth,
    height: fieldHeight,
    overlap: fieldOverlap,
    time: scaledFieldTime,
    move: moveTime,
    spots: wholeSpots,
    most: mostSpots,
    distance: spotDistance,
  },
  compute: ({ width, height, overlap, time, move }) =>
    netArea({ width, height }, { overlap, moveTime: move }) / (time + move),
  enteredFor: () => ({ keys: ['width', 'height', 'overlap', 'time', 'move'] }),
  valid: ({ spots, most, distance }) =>
    spots <= most.height
      ? undefined
      : `${spots} spots ${formatReadable(distance, 'm', 'um', 3)} apart reach beyond the height of the field, where no more than ${most.height} stand: the outer ones would write beside it. Set them closer, or write a higher field.`,
  formula: '\\frac{(F-o)(G-o)}{t_\\text{field}+t_\\text{move}}',
  source: 'definition',
});

export const squareMetre = constant({
  id: 'scaleUp.squareMetre',
  name: 'a square metre',
  symbol: '1\\,\\mathrm{m^2}',
  unit: 'm^2',
  about: 'The area that times are given for.',
  value: 1,
  source: 'definition',
});

export const timePerSquareMetre = derived({
  id: 'scaleUp.timePerSquareMetre',
  name: 'time for a square metre on the larger machine',
  symbol: 't_{\\mathrm{m^2}}',
  unit: 's',
  display: 'h',
  digits: 3,
  about: 'A square metre over the area per hour.',
  from: { area: squareMetre, rate: areaPerHour },
  compute: ({ area, rate }) => area / rate,
  formula: '1\\,\\mathrm{m^2}/\\dot A_\\text{L}',
  source: 'definition',
});

export const scaleLimit = derived({
  id: 'scaleUp.limit',
  name: 'what limits the larger machine',
  symbol: '\\text{limit}_\\text{L}',
  unit: 'none',
  about:
    'What is met first as the speed rises with pulses and lines on their places; moves between fields where they take longer than the fields.',
  from: { field: scaled },
  compute: ({ field }): ScaleLimit => field.limit,
  shownAs: (kind) => limitInWords(kind),
  formula: '\\arg\\min_i v_i',
  source: 'definition',
});

export const nextScaleLimit = derived({
  id: 'scaleUp.nextLimit',
  name: 'what would limit the larger machine next',
  symbol: '\\text{limit}_\\text{L,2}',
  unit: 'none',
  about: 'What would be met first if that limit were gone.',
  from: { field: scaled },
  compute: ({ field }): ScaleLimit => field.next,
  shownAs: (kind) => limitInWords(kind),
  formula: '\\text{2. of}\\ \\{v_i\\}',
  source: 'definition',
});

export const scaledSpeed = partOf('speed', {
  id: 'scaleUp.speed',
  name: 'scan speed on the larger machine',
  symbol: 'v_\\text{used}',
  unit: 'm/s',
  about: 'Speed of the spots along a line at the first limit.',
  formula: '\\min_i v_i',
});

export const scaledRepetitionRate = partOf('repetitionRate', {
  id: 'scaleUp.repetitionRate',
  name: 'repetition rate on the larger machine',
  symbol: 'f_\\text{used}',
  unit: 'Hz',
  display: 'kHz',
  about: 'Pulses per second (with bursts, bursts per second) at that speed, pulses on their places.',
  formula: 'v_\\text{used}/p',
});

export const scaledPower = partOf('power', {
  id: 'scaleUp.power',
  name: 'average power used on the larger machine',
  symbol: 'P_\\text{used}',
  unit: 'W',
  display: 'auto:W',
  about: 'Average power of the laser while it writes: all spots, bursts and the losses of the splitter.',
  formula: 'n_\\text{b}E_\\text{shot}f_\\text{used}',
});

export const energyPerSquareMetre = partOf('energyPerArea', {
  id: 'scaleUp.energyPerSquareMetre',
  name: 'laser energy for a square metre',
  symbol: '(E/A)_\\text{L}',
  unit: 'J/m^2',
  display: 'kJ/m^2',
  about: 'Energy of the laser, where it is measured, per area: splitter losses and overlap count.',
  formula: 'P_\\text{used}t_\\text{write}/((F-o)(G-o))',
});

export const scans = derived({
  id: 'scaleUp.scans',
  name: 'lines that are scanned in the first pass',
  symbol: 'n_\\text{scan}',
  unit: '1',
  about:
    'Times that the scanner goes along a line in the first pass, each time with all spots: groups of N k lines take k scans each, k lines from spot to spot, and what is left of the field up to k more, in which some spots write beside it.',
  from: { hatch, spots: wholeSpots, distance: spotDistance },
  compute: ({ hatch, ...row }) => scansOf(hatch, row)(lineCount(hatch, 0)),
  formula:
    'k\\left\\lfloor\\frac{n_\\text{lines}}{Nk}\\right\\rfloor+\\min(k,\\ n_\\text{lines}\\bmod Nk),\\quad k=\\operatorname{round}(s/\\Delta y)',
  source: 'definition',
});
