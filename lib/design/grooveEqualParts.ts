import { derived } from '../graph/define.ts';
import { Problem } from '../problem.ts';
import { type EqualGroove, type EqualGrooves, equalGroove } from './grooveEqual.ts';
import { wallIs } from './grooveWords.ts';

/** Numbers of one of the grooves held against each other: name, unit, unit shown, symbol, meaning, and where it is read. */
const numbers = {
  scale: [
    'size of the focus',
    '1',
    '1',
    's',
    'Size of the focus over today’s: what another lens or expander must bring',
    (one: EqualGroove) => one.scale,
  ],
  peakFluence: [
    'peak fluence',
    'J/m^2',
    'J/cm^2',
    'F_\\text{peak}',
    'Peak fluence of one pulse on the fresh surface',
    (one: EqualGroove) => one.peakFluence,
  ],
  passes: ['passes', '1', '1', 'n', 'Passes, the last one by its part', (one: EqualGroove) => one.passes],
  topWidth: [
    'width at the top',
    'm',
    'um',
    'b_\\text{top}',
    'Width at the surface',
    (one: EqualGroove) => one.shape.topWidth,
  ],
  meanDepth: [
    'mean depth',
    'm',
    'um',
    '\\bar d',
    'Area of the cross-section inside the top width over that width',
    (one: EqualGroove) => one.shape.meanDepth,
  ],
  depth: [
    'depth of the groove',
    'm',
    'um',
    'd',
    'Greatest depth of the groove',
    (one: EqualGroove) => one.shape.depth,
  ],
  bottomWidth: [
    'width at the bottom',
    'm',
    'um',
    'b_\\text{bottom}',
    'Width over which the groove is deeper than nine tenths of its greatest depth',
    (one: EqualGroove) => one.shape.bottomWidth,
  ],
  wallAngle: [
    'angle of the walls',
    'rad',
    'deg',
    '\\beta',
    `Angle of the walls ${wallIs}`,
    (one: EqualGroove) => one.shape.wallAngle,
  ],
  centreToMeanDepth: [
    'centre against mean depth',
    '1',
    '1',
    'd_0/\\bar d',
    'Depth in the middle over mean depth',
    (one: EqualGroove) => one.shape.centreToMeanDepth,
  ],
} as const;

type Part = keyof typeof numbers;

/** What stands beside the first plane, and what would help where no such groove was found. */
const beams = {
  first: ['cut in the first plane', '1', 'groove.firstPlane'],
  second: ['cut in the second plane with a focus that fits', '2', 'groove.secondPlane'],
  plain: ['of the plain beam with a focus that fits', '\\text{u}', 'laser.pulseEnergy'],
  plainSameLens: ['of the plain beam with today’s lens', '\\text{u,lens}', 'groove.firstPlane'],
} as const;

function part(beam: keyof EqualGrooves, key: Part) {
  const [name, unit, display, symbol, about, read] = numbers[key];
  const [words, mark, input] = beams[beam];
  return derived({
    id: `groove.equal.${beam}.${key}`,
    name: `${name} of the equal groove ${words}`,
    symbol: `${symbol}^{=,${mark}}`,
    unit,
    display,
    digits: 3,
    about: `${about}, ${words}; width at the top and mean depth are those of the first plane.`,
    from: { equal: equalGroove },
    compute: ({ equal }) => {
      const found = equal[beam];
      if (found) return read(found);
      throw new Problem(
        'absent',
        'No groove of that width at the top and that mean depth was found within fifty times of today’s setting: choose another plane, or fewer passes.',
        { input },
      );
    },
    formula: 'b_\\text{top},\\bar d\\ \\text{equal}',
    source: 'search',
  });
}

const partsOf = (beam: keyof EqualGrooves) => ({
  scale: part(beam, 'scale'),
  peakFluence: part(beam, 'peakFluence'),
  passes: part(beam, 'passes'),
  topWidth: part(beam, 'topWidth'),
  meanDepth: part(beam, 'meanDepth'),
  depth: part(beam, 'depth'),
  bottomWidth: part(beam, 'bottomWidth'),
  wallAngle: part(beam, 'wallAngle'),
  centreToMeanDepth: part(beam, 'centreToMeanDepth'),
});

export const equalFirst = partsOf('first');
export const equalSecond = partsOf('second');
export const equalPlain = partsOf('plain');
export const equalPlainSameLens = partsOf('plainSameLens');
