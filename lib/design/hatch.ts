import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { checkField } from '../process/fieldChecks.ts';
import { type Hatch, lineCount } from '../process/hatch.ts';
import { fieldTimes, lineTimes, overscan, type ScanMotion } from '../process/scanTime.ts';
import { fieldWidth } from './depthInUse.ts';
import { effectiveArea } from './marks.ts';
import { checkScan } from './scanChecks.ts';
import { lineSpacing, passes, scanSpeed } from './scanInputs.ts';
import {
  acceleration,
  directions,
  fieldHeight,
  hatchAngle,
  interlacing,
  lineDelay,
  maxSpeed,
  turnRound,
} from './scannerInputs.ts';

export const hatch = derived({
  id: 'scan.hatch',
  name: 'hatch of the field',
  symbol: '\\text{hatch}',
  unit: {
    width: 'm',
    height: 'm',
    lineSpacing: 'm',
    passes: '1',
    angle: 'rad',
    interlacing: '1',
    directions: 'none',
  },
  about: 'Field, lines and passes, whole numbers rounded.',
  from: {
    width: fieldWidth,
    height: fieldHeight,
    lineSpacing,
    passes,
    angle: hatchAngle,
    interlacing,
    directions,
  },
  compute: ({ passes, interlacing, ...rest }): Hatch => ({
    ...rest,
    passes: Math.round(passes),
    interlacing: Math.round(interlacing),
  }),
  shownAs: (hatch) =>
    `${lineCount(hatch, 0)} lines, ${hatch.passes} ${hatch.passes === 1 ? 'pass' : 'passes'}`,
  formula: '(F, G, \\Delta y, n_\\text{pass}, \\theta_\\text{hatch}, n_\\text{inter})',
  source: 'definition',
});

export const motion = derived({
  id: 'scan.motion',
  name: 'motion of the scanner',
  symbol: '\\text{motion}',
  unit: {
    speed: 'm/s',
    acceleration: 'm/s^2',
    maxSpeed: 'm/s',
    directions: 'none',
    turnRound: 'none',
    delay: 's',
  },
  about: 'How the scanner moves along the lines and turns round, checked against what it can do.',
  from: {
    speed: scanSpeed,
    acceleration,
    maxSpeed,
    directions,
    turnRound,
    delay: lineDelay,
    checked: checkScan,
  },
  compute: ({ checked: _checked, ...motion }): ScanMotion => motion,
  shownAs: ({ speed }) => formatReadable(speed, 'm/s', 'm/s', 3),
  formula: '(v, a_\\text{scan}, v_\\text{max}, t_\\text{delay})',
  source: 'definition',
});

export const lineNumber = derived({
  id: 'scan.lines',
  name: 'lines of the first pass',
  symbol: 'n_\\text{lines}',
  unit: '1',
  about: 'Lines that cover the field, each its own spacing wide.',
  from: { hatch },
  compute: ({ hatch }) => lineCount(hatch, 0),
  formula: '\\lceil G/\\Delta y\\rceil',
  source: 'definition',
});

export const lineTime = derived({
  id: 'scan.lineTime',
  name: 'time from line to line',
  symbol: 't_\\text{line}',
  unit: 's',
  display: 'auto:s',
  digits: 4,
  about:
    'From the beginning of a line of the first pass to that of the next: writing, turning round, way back and delay.',
  from: { width: fieldWidth, motion },
  compute: ({ width, motion }) => lineTimes(width, motion).total,
  formula: 'F/v+2v/a_\\text{scan}+t_\\text{delay}',
  source: 'definition',
});

export const scanTimes = derived({
  id: 'scan.times',
  name: 'times of the field',
  symbol: '(t_\\text{write}, t_\\text{field})',
  unit: { writing: 's', total: 's' },
  about: 'Time with the laser on and in all, over all passes; the field must not be smaller than the spot.',
  from: { hatch, motion, effectiveArea },
  compute: ({ hatch, motion, effectiveArea }) => {
    checkField(hatch, { effectiveArea });
    return fieldTimes(hatch, motion);
  },
  enteredFor: () => ({ keys: ['hatch', 'motion'] }),
  shownAs: ({ total }) => formatReadable(total, 's', 'auto:s', 4),
  formula: '\\sum_\\text{lines}\\left(L/v+2v/a_\\text{scan}+t_\\text{delay}\\right)',
  source: 'definition',
});

export const fieldTime = derived({
  id: 'scan.fieldTime',
  name: 'time for the field',
  symbol: 't_\\text{field}',
  unit: 's',
  display: 'auto:s',
  digits: 4,
  about: 'Time for all lines of all passes, with turning round, ways back and delays.',
  from: { times: scanTimes },
  compute: ({ times }) => times.total,
  formula: 't_\\text{field}',
  source: 'definition',
});

export const duty = derived({
  id: 'scan.duty',
  name: 'part of the time that is written',
  symbol: '\\text{duty}',
  unit: '1',
  display: '%',
  digits: 4,
  about: 'Time with the laser on over the whole time of the field.',
  from: { times: scanTimes },
  compute: ({ times }) => times.writing / times.total,
  formula: 't_\\text{write}/t_\\text{field}',
  source: 'definition',
});

export const scanAreaRate = derived({
  id: 'scan.areaRate',
  name: 'area processing rate',
  symbol: '\\dot A',
  unit: 'm^2/s',
  display: 'mm^2/s',
  digits: 3,
  about: 'Area of the field over the time for it, all passes done.',
  from: { width: fieldWidth, height: fieldHeight, time: fieldTime },
  compute: ({ width, height, time }) => (width * height) / time,
  formula: 'F\\,G/t_\\text{field}',
  source: 'definition',
});

export const overscanLength = derived({
  id: 'scan.overscan',
  name: 'overscan at each end of a line',
  symbol: 's_\\text{over}',
  unit: 'm',
  display: 'auto:m',
  digits: 3,
  about:
    'Way beyond the end of a line in which the scanner comes to rest, and from which it starts the next; with the turn at the edge, this much of the line at each end is written slower.',
  from: { motion },
  compute: ({ motion }) => overscan(motion.speed, motion.acceleration),
  formula: 'v^2/(2a_\\text{scan})',
  source: 'definition',
});
