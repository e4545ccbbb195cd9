import { derived } from '../graph/define.ts';
import type { Report, ValuesOf } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import { portion } from '../numerics/progress.ts';
import type { Light } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { countingLevel } from '../process/cuttingLaw.ts';
import { widenedLight } from '../process/cuttingLight.ts';
import type { GrooveShape } from '../process/grooveShape.ts';
import { type MatchedGroove, matchGroove, type WidenedBeam } from '../process/matchedGroove.ts';
import { light, unshapedPeak } from './focus.ts';
import { grooveAt, shapeUnits } from './grooveCut.ts';
import { firstPlane, groovePasses, secondPlane } from './grooveInputs.ts';
import { pulseTrain } from './grooveLaw.ts';
import { focusOf, grooveLight, plainOf } from './grooveLight.ts';

/** One of the grooves of equal width and mean depth. */
export interface EqualGroove {
  /** Size of its focus over today's. */
  readonly scale: number;
  /** Peak fluence on the fresh surface, one pulse, J/m². */
  readonly peakFluence: number;
  readonly passes: number;
  readonly shape: GrooveShape;
}

/** What is held against each other; null where no groove of that width and mean depth was found. */
export interface EqualGrooves {
  /** Cut in the first plane, as it is. */
  readonly first: EqualGroove;
  /** The second plane and the plain beam in its focus, at the same peak fluence, with foci of the size that fits. */
  readonly second: EqualGroove | null;
  readonly plain: EqualGroove | null;
  /** The plain beam with today's lens, at the energy that fits. */
  readonly plainSameLens: EqualGroove | null;
}

/** Half as fine as a groove that is shown: widths, depths and angles are right to a few thousandths. */
const steps = { across: 48, along: 48 };

const demand = { light, first: firstPlane, second: secondPlane, unit: unshapedPeak, train: pulseTrain };

function equalGrooves(values: ValuesOf<typeof demand>, passes: number, report?: Report): EqualGrooves {
  const { light, first, second, unit, train } = values;
  // As fine as it is shown beside today’s, so that the same groove has the same numbers.
  const groove = grooveAt(light, first, { ...train, unit }, passes);
  const peakFluence = unit * spotAt(light, first).peak;
  const { topWidth, meanDepth } = groove.shape;
  const at = (beam: WidenedBeam, row: (found: MatchedGroove) => EqualGroove, part: number) => {
    const found = matchGroove(beam, train, { topWidth, meanDepth }, portion(report, part, part + 1 / 3));
    return found ? row(found) : null;
  };
  const widened = (one: Light, z: number): WidenedBeam => {
    const own = peakFluence / spotAt(one, z).peak;
    const base = grooveLight(one, z, countingLevel(train.law) / own, steps);
    return (setting) => ({ light: widenedLight(base, Math.exp(setting)), unit: own });
  };
  const sized = ({ setting, passes, shape }: MatchedGroove) => ({
    scale: Math.exp(setting),
    peakFluence,
    passes,
    shape,
  });
  const plain = plainOf(light);
  const focus = focusOf(plain);
  const axis = spotAt(plain, focus).peak;
  const stronger: WidenedBeam = (setting) => {
    const own = (Math.exp(setting) * peakFluence) / axis;
    return { light: grooveLight(plain, focus, countingLevel(train.law) / own, steps), unit: own };
  };
  return {
    first: { scale: 1, peakFluence, passes: Math.max(1, Math.round(passes)), shape: groove.shape },
    second: at(widened(light, second), sized, 0),
    plain: at(widened(plain, focus), sized, 1 / 3),
    plainSameLens: at(
      stronger,
      ({ setting, passes, shape }) => ({
        scale: 1,
        peakFluence: Math.exp(setting) * peakFluence,
        passes,
        shape,
      }),
      2 / 3,
    ),
  };
}

const row = { scale: '1', peakFluence: 'J/m^2', passes: '1', shape: shapeUnits } as const;
const units = { first: row, second: row, plain: row, plainSameLens: row } as const;
const about =
  'Grooves of the same width at the top and the same mean depth: that of the first plane, and beside it those of the second plane and of the plain beam in its focus with another size of focus at the same peak fluence, and of the plain beam with today’s lens at another energy.';
const inWords = ({ first, plain }: EqualGrooves) =>
  `walls of ${formatReadable(first.shape.wallAngle, 'rad', 'deg', 3)}${plain ? ` against ${formatReadable(plain.shape.wallAngle, 'rad', 'deg', 3)}` : ''}`;

export const equalGroove = derived({
  id: 'groove.equal',
  name: 'grooves of equal width and mean depth',
  symbol: '\\text{equal}',
  unit: units,
  about: `${about} After today’s passes.`,
  from: { ...demand, passes: groovePasses },
  compute: ({ passes, ...values }, report): EqualGrooves => equalGrooves(values, passes, report),
  shownAs: (equal) => inWords(equal),
  formula: 'b_\\text{top},\\bar d\\ \\text{equal}',
  source: 'search',
  heavy: 'search',
});

export const equalShallow = derived({
  id: 'groove.equalShallow',
  name: 'grooves of equal width and mean depth after one pass',
  symbol: '\\text{equal}_1',
  unit: units,
  about: `${about} After the first pass only, while the walls are shallow.`,
  from: demand,
  compute: (values, report): EqualGrooves => equalGrooves(values, 1, report),
  shownAs: (equal) => inWords(equal),
  formula: 'b_\\text{top},\\bar d\\ \\text{equal}',
  source: 'search',
  heavy: 'search',
});
