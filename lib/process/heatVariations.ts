import { fieldRiseAt, type HeatedField } from './heatField.ts';
import { hottestBehind, ownLineRise } from './heatLine.ts';
import type { HeatInput } from './heatPulse.ts';
import { crowdsAtTurns, type Hottest, heatedField, hottestRise, type ScanSettings } from './heatRate.ts';

/** What is changed against the field as it stands. */
export type HeatChange =
  | 'today'
  | 'wait'
  | 'rateHalf'
  | 'rateDouble'
  | 'pulsesDouble'
  | 'linesDouble'
  | 'interlaceOne'
  | 'interlaceTwo'
  | 'interlaceFour'
  | 'interlaceEight';

/** A field with one thing changed, what it becomes and how long it takes. */
export interface HeatVariation {
  readonly change: HeatChange;
  /** K, just before the next pulse in the hottest state. */
  readonly rise: number;
  /** s. */
  readonly time: number;
  /** What the inputs would be. */
  readonly rate: number;
  readonly speed: number;
  readonly delay: number;
  readonly lineSpacing: number;
  readonly interlacing: number;
}

/** The settings and the rate with one thing changed. */
function changed(settings: ScanSettings, rate: number, change: HeatChange) {
  const { hatch, motion, pulseSpacing } = settings;
  const hatched = (more: Partial<typeof hatch>) => ({
    settings: { ...settings, hatch: { ...hatch, ...more } },
    rate,
  });
  switch (change) {
    case 'today':
      return { settings, rate };
    case 'wait': {
      const delay = motion.delay + hatch.width / (pulseSpacing * rate);
      return { settings: { ...settings, motion: { ...motion, delay } }, rate };
    }
    case 'rateHalf':
      return { settings, rate: rate / 2 };
    case 'rateDouble':
      return { settings, rate: 2 * rate };
    case 'pulsesDouble':
      return { settings: { ...settings, pulseSpacing: 2 * pulseSpacing }, rate };
    case 'linesDouble':
      return hatched({ lineSpacing: 2 * hatch.lineSpacing });
    case 'interlaceOne':
      return hatched({ interlacing: 1 });
    case 'interlaceTwo':
      return hatched({ interlacing: 2 });
    case 'interlaceFour':
      return hatched({ interlacing: 4 });
    case 'interlaceEight':
      return hatched({ interlacing: 8 });
  }
}

const changes: readonly HeatChange[] = [
  'today',
  'wait',
  'rateHalf',
  'rateDouble',
  'pulsesDouble',
  'linesDouble',
  'interlaceOne',
  'interlaceTwo',
  'interlaceFour',
  'interlaceEight',
];

/**
 * What a longer wait, other rates and spacings and interlaced lines make of the rise, pulse energy held; without those with
 * which pulses would crowd at the turns.
 */
export function heatVariations(heat: HeatInput, settings: ScanSettings, rate: number): HeatVariation[] {
  return changes.flatMap((change) => {
    const { settings: varied, rate: at } = changed(settings, rate, change);
    if (crowdsAtTurns(varied, at)) return [];
    const field = heatedField(varied, at);
    return {
      change,
      rise: hottestRise(heat, field).rise,
      time: field.passTime * field.passes,
      rate: at,
      speed: varied.pulseSpacing * at,
      delay: varied.motion.delay,
      lineSpacing: varied.hatch.lineSpacing,
      interlacing: varied.hatch.interlacing,
    };
  });
}

/** Numbers from 1 to `last`, close to equal ratios, each once. */
export function risingCounts(last: number, most = 48): Float64Array {
  const counts = Array.from({ length: most }, (_, i) => Math.round(last ** (i / (most - 1))));
  return Float64Array.from(new Set(counts.map((count) => Math.max(1, count))));
}

/** Rise, K, of the hottest place of the first line just before its next pulse, after `counts` pulses of it. */
export function riseAlongLine(heat: HeatInput, field: HeatedField, counts: Float64Array): Float64Array {
  const { pulseSpacing, rate } = field;
  return counts.map((count) => {
    const behind = hottestBehind(heat, pulseSpacing, rate, count);
    return ownLineRise(heat, pulseSpacing, rate, count, behind);
  });
}

/** Rise, K, just before a pulse of the first round, that pulse's number and the place given, after `counts` whole lines of it. */
export function riseByLines(
  heat: HeatInput,
  field: HeatedField,
  { pulse, behind }: Pick<Hottest, 'pulse' | 'behind'>,
  counts: Float64Array,
): Float64Array {
  const round = {
    ...field,
    lines: counts.at(-1)! + 1,
    lineSpacing: field.lineSpacing * Math.min(field.interlacing, field.lines),
    interlacing: 1,
    passes: 1,
  };
  return counts.map((line) => {
    const { own, lines } = fieldRiseAt(heat, round, { pulse, line, behind });
    return own + lines;
  });
}
