import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import type { HeatInput } from '../process/heatPulse.ts';
import { crowdsAtTurns, heatedField, hottestRise, rateReaching } from '../process/heatRate.ts';
import { fieldTime } from './hatch.ts';
import { type HeatBeam, shapedBeam, unshapedBeam } from './heatBeam.ts';
import { riseLimit, thickness } from './heatInputs.ts';
import { diffusivity } from './heatMaterial.ts';
import { heatInput, unshapedHeatInput } from './heatPulses.ts';
import { crowded, heatedScan, scanSettings } from './heatScan.ts';
import { maxRepetitionRate } from './laserLimits.ts';
import { hatchAngle, turnRound } from './scannerInputs.ts';

/** How many times the highest rate of the laser the limit is looked for: beyond, the rate tells nothing. */
export const farAbove = 10;

const said = { turnRound, angle: hatchAngle, time: fieldTime, thickness, diffusivity };

/** What the sums of a field leave out; undefined where nothing. */
function fieldNote(values: {
  readonly turnRound: string;
  readonly angle: number;
  readonly time: number;
  readonly thickness: number;
  readonly diffusivity: number;
}): string | undefined {
  const { turnRound, angle, time, thickness, diffusivity } = values;
  const through = thickness ** 2 / diffusivity;
  const notes = [
    ...(time > 0.1 * through
      ? [
          `Heat is through the thickness in about ${formatReadable(through, 's', 'auto:s', 2)}, and the field takes longer: the back counts as insulated and the part as wide, so that a small part gets hotter and a clamped one stays cooler.`,
        ]
      : []),
    ...(turnRound === 'inside'
      ? ['Pulses that crowd where the scanner turns, one or two at each turn, are left out.']
      : []),
    ...(angle !== 0 ? ['Earlier passes count as if their lines lay along those of the last.'] : []),
  ];
  return notes.join(' ') || undefined;
}

/** The rise of the whole field, of one of the two beams. */
function risesOf({ before, words, mark }: HeatBeam, heat: Derived<Required<HeatInput>>) {
  const named = (what: string) => `\\Delta T_{${mark}\\text{${what}}}`;
  const hottest = derived({
    id: `${before}heat.hottest`,
    name: `hottest state of the field${words}`,
    symbol: `(\\Delta T, i, j)_{${mark}\\text{hottest}}`,
    unit: { rise: 'K', own: 'K', lines: 'K', pulse: '1', line: '1', behind: 'm' },
    about:
      'Highest rise just before a pulse, with the spot at eleven places along a line in the last round of the last pass, where the next pulse comes and where the line being written is hottest behind it; with its parts from that line and from all lines before, the numbers of pulse and line, and how far behind the next pulse the place lies.',
    from: { heat, field: heatedScan },
    compute: ({ heat, field }) => hottestRise(heat, field),
    shownAs: ({ rise, pulse }) => `${formatReadable(rise, 'K', 'K', 3)} at pulse ${pulse} of the line`,
    formula: `\\max\\left(${named('own')}+${named('lines')}\\right)`,
    source: 'weber2014',
    heavy: 'search',
  });
  const part = (
    key: 'rise' | 'lines' | 'own',
    text: { id: string; name: string; about: string; symbol: string },
  ) =>
    derived({
      ...text,
      id: before + text.id,
      name: text.name + words,
      unit: 'K',
      digits: 3,
      from: { hottest, ...said },
      compute: ({ hottest }) => hottest[key],
      enteredFor: () => ({ keys: ['hottest'] }),
      valid: fieldNote,
      formula: text.symbol,
      source: 'weber2014',
    });
  const rise = part('rise', {
    id: 'heat.rise',
    name: 'rise just before the next pulse',
    symbol: named('next'),
    about:
      'Temperature rise of the hottest place of the surface just before the next pulse, in the hottest state of the field: from all pulses before, the spot taken as the Gaussian with its effective area. The place is where the next pulse comes or behind it, up to where the last ones came.',
  });
  const lines = part('lines', {
    id: 'heat.lineRise',
    name: 'rise left by earlier lines',
    symbol: named('lines'),
    about:
      'Part of the rise just before the next pulse that all lines before the one being written have left.',
  });
  const own = part('own', {
    id: 'heat.ownRise',
    name: 'rise from the line being written',
    symbol: named('own'),
    about:
      'Part of the rise just before the next pulse that comes from the line being written, at the same place.',
  });
  const within = derived({
    id: `${before}heat.withinLimit`,
    name: `whether the rise keeps to its limit${words}`,
    symbol: `${named('next')}\\le\\Delta T_\\text{max}`,
    unit: 'none',
    about: 'True where the rise just before the next pulse does not pass the limit that you set.',
    from: { rise, limit: riseLimit },
    compute: ({ rise, limit }): boolean => rise <= limit,
    shownAs: (within) => (within ? 'yes' : 'no'),
    formula: `${named('next')}\\le\\Delta T_\\text{max}`,
    source: 'definition',
  });
  const maxRate = derived({
    id: `${before}heat.maxRepetitionRate`,
    name: `repetition rate at the limit of heat${words}`,
    symbol: `f_{${mark}\\text{heat}}`,
    unit: 'Hz',
    display: 'auto:Hz',
    digits: 3,
    about:
      'Repetition rate at which the rise just before the next pulse comes to the limit, with pulse energy, pulse spacing and line spacing held, so that the scan speed rises with it; none where that is more than ten times the highest rate of the laser, up to which heat then does not limit the field.',
    from: {
      heat,
      settings: scanSettings,
      field: heatedScan,
      limit: riseLimit,
      highest: maxRepetitionRate,
      ...said,
    },
    compute: ({ heat, settings, field, limit, highest }, report) => {
      const riseAt = (rate: number) => hottestRise(heat, heatedField(settings, rate)).rise;
      const most = Math.max(farAbove * highest, field.rate);
      const rate = riseAt(most) <= limit ? undefined : rateReaching(riseAt, limit, field.rate, report);
      if (rate === undefined && crowdsAtTurns(settings, most)) throw crowded(settings, most);
      if (rate === undefined) throw neverReached(limit, highest);
      if (crowdsAtTurns(settings, rate)) throw crowded(settings, rate);
      return rate;
    },
    enteredFor: () => ({ keys: ['heat', 'settings', 'field', 'limit', 'highest'] }),
    valid: fieldNote,
    formula: `${named('next')}(f)=\\Delta T_\\text{max}`,
    source: 'search',
    heavy: 'search',
  });
  return { hottest, rise, lines, own, within, maxRate };
}

function neverReached(limit: number, highest: number): Problem {
  return new Problem(
    'absent',
    `Up to the highest repetition rate of the laser, ${formatReadable(highest, 'Hz', 'auto:Hz', 3)}, and far above it the surface does not become ${formatReadable(limit, 'K', 'K', 3)} warmer: heat does not limit this field.`,
    { input: riseLimit.id, value: formatReadable(limit, 'K', 'K', 3) },
  );
}

export const {
  hottest: hottestState,
  rise: heatRise,
  lines: lineRise,
  own: ownRise,
  within: withinLimit,
  maxRate: maxHeatRate,
} = risesOf(shapedBeam, heatInput);

export const {
  hottest: unshapedHottestState,
  rise: unshapedHeatRise,
  lines: unshapedLineRise,
  own: unshapedOwnRise,
  within: unshapedWithinLimit,
  maxRate: unshapedMaxHeatRate,
} = risesOf(unshapedBeam, unshapedHeatInput);
