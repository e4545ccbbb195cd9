import { derived, ifThere } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import type { LimitKind, ScanLimit } from '../process/scanLimits.ts';
import { areaRate, scanLimits } from '../process/scanLimits.ts';
import { burstPulses } from './burst.ts';
import { hatch, motion } from './hatch.ts';
import { maxHeatRate } from './heat.ts';
import { maxPower, maxRepetitionRate } from './laserLimits.ts';
import { usedPulseEnergy } from './losses.ts';
import { pulseSpacing } from './scanInputs.ts';

const limitUnits = { kind: 'none', speed: 'm/s', rate: 'm^2/s' } as const;

export const hottestRateIfThere = ifThere<number | null>({
  id: 'scan.hottestRate',
  name: 'repetition rate at the limit of heat, where there is one',
  symbol: 'f_\\text{heat}',
  unit: 'Hz',
  about:
    'Repetition rate at which the temperature rise comes to its limit, or nothing where it never does, nothing is known of the material’s heat or pulses crowd at the turns.',
  of: maxHeatRate,
  waits: true,
});

export const limits = derived({
  id: 'scan.limits',
  name: 'limits of the scan speed',
  symbol: '\\{v_i\\}',
  unit: limitUnits,
  about:
    'What stops the field from being written faster with pulse spacing and line spacing held, the first to be met in front: speed and acceleration of the scanner, repetition rate and power of the laser, heat. With each its speed and the area processing rate there.',
  from: {
    hatch,
    motion,
    pulseSpacing,
    maxRepetitionRate,
    maxPower,
    energy: usedPulseEnergy,
    burst: burstPulses,
    hottest: hottestRateIfThere,
  },
  compute: ({ hatch, motion, energy, burst, hottest, ...laser }): ScanLimit[] =>
    scanLimits(hatch, motion, { ...laser, energy: energy * burst, hottestRate: hottest ?? undefined }),
  shownAs: (limits) =>
    limits.map(({ kind, speed }) => `${kind} ${formatQuantity(speed, 'm/s', 'm/s', 3)}`).join(', '),
  formula:
    'v_\\text{max},\\ \\sqrt{a_\\text{scan}F/2},\\ p f_\\text{max},\\ p f_\\text{heat},\\ pP_\\text{max}/(n_\\text{b}E)',
  source: 'definition',
});

function limitOf(place: 0 | 1, text: { id: string; name: string; symbol: string; about: string }) {
  return derived({
    ...text,
    unit: 'none',
    from: { limits },
    compute: ({ limits }): LimitKind => limits[place]!.kind,
    shownAs: (kind) => kind,
    formula: `\\text{${place + 1}. of}\\ \\{v_i\\}`,
    source: 'definition',
  });
}

export const scanLimit = limitOf(0, {
  id: 'scan.limit',
  name: 'what limits the field',
  symbol: '\\text{limit}',
  about: 'What is met first as the scan speed rises with pulse spacing and line spacing held.',
});

export const nextScanLimit = limitOf(1, {
  id: 'scan.nextLimit',
  name: 'what would limit it next',
  symbol: '\\text{limit}_2',
  about: 'What would be met first if the first limit were gone.',
});

export const fastestSpeed = derived({
  id: 'scan.fastestSpeed',
  name: 'fastest useful scan speed',
  symbol: 'v_\\text{best}',
  unit: 'm/s',
  display: 'm/s',
  digits: 3,
  about: 'Scan speed at the first limit, pulse spacing and line spacing held.',
  from: { limits },
  compute: ({ limits }) => limits[0]!.speed,
  formula: '\\min_i v_i',
  source: 'definition',
});

export const fastestAreaRate = derived({
  id: 'scan.fastestAreaRate',
  name: 'highest area processing rate',
  symbol: '\\dot A_\\text{best}',
  unit: 'm^2/s',
  display: 'mm^2/s',
  digits: 3,
  about: 'Area processing rate at the first limit, pulse spacing and line spacing held.',
  from: { limits },
  compute: ({ limits }) => limits[0]!.rate,
  formula: '\\dot A(v_\\text{best})',
  source: 'definition',
});

/** Places of the curve of the rate against the speed. */
const places = 121;

export const rateBySpeed = derived({
  id: 'scan.rateBySpeed',
  name: 'area processing rate against the scan speed',
  symbol: '\\dot A(v)',
  unit: { speed: 'm/s', rate: 'm^2/s' },
  about:
    'Area processing rate against the scan speed, pulse spacing and line spacing held, so that repetition rate and power rise with it; from a fifth of today’s speed or of the first limit to three times the last limit, whether laser and scanner reach it or not.',
  from: { hatch, motion, limits },
  compute: ({ hatch, motion, limits }) => {
    const low = Math.min(motion.speed, limits[0]!.speed) / 5;
    const high = 3 * Math.max(motion.speed, limits.at(-1)!.speed);
    const speed = Float64Array.from({ length: places }, (_, i) => low * (high / low) ** (i / (places - 1)));
    return { speed, rate: speed.map((one) => areaRate(hatch, { ...motion, speed: one })) };
  },
  shownAs: ({ speed }) => `${speed.length} speeds`,
  formula: 'F\\,G/t_\\text{field}(v)',
  source: 'definition',
});
