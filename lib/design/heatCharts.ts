import { derived } from '../graph/define.ts';
import { roundsOf } from '../process/heatField.ts';
import { crowdsAtTurns } from '../process/heatRate.ts';
import {
  type HeatVariation,
  heatVariations,
  riseAlongLine,
  riseByLines,
  risingCounts,
} from '../process/heatVariations.ts';
import { hottestState, unshapedHottestState } from './heat.ts';
import { heatInput, unshapedHeatInput } from './heatPulses.ts';
import { crowded, heatedScan, scanSettings } from './heatScan.ts';
import { repetitionRate } from './laser.ts';

export const alongFirstLine = derived({
  id: 'heat.alongFirstLine',
  name: 'rise along the first line',
  symbol: '\\Delta T(n)',
  unit: { pulses: '1', shaped: 'K', plain: 'K' },
  about:
    'Rise of the hottest place of the surface just before the next pulse after 1, 2, … pulses of the first line, with the plate and without it.',
  from: { heat: heatInput, plain: unshapedHeatInput, field: heatedScan },
  compute: ({ heat, plain, field }) => {
    const pulses = risingCounts(Math.max(1, field.pulses - 1));
    return {
      pulses,
      shaped: riseAlongLine(heat, field, pulses),
      plain: riseAlongLine(plain, field, pulses),
    };
  },
  shownAs: ({ pulses }) => `up to ${pulses.at(-1)} pulses`,
  formula: '\\Delta T_\\text{spot}(n)',
  source: 'weber2014',
});

export const lineByLine = derived({
  id: 'heat.lineByLine',
  name: 'rise from line to line',
  symbol: '\\Delta T(j)',
  unit: { lines: '1', shaped: 'K', plain: 'K' },
  about:
    'Rise just before a pulse after 1, 2, … whole lines of the first round, at the place that is hottest at the end of the field, with the plate and without it.',
  from: {
    heat: heatInput,
    plain: unshapedHeatInput,
    field: heatedScan,
    hottest: hottestState,
    plainHottest: unshapedHottestState,
  },
  compute: ({ heat, plain, field, hottest, plainHottest }) => {
    const lines = risingCounts(Math.max(1, roundsOf(field).linesIn(0) - 1));
    return {
      lines,
      shaped: riseByLines(heat, field, hottest, lines),
      plain: riseByLines(plain, field, plainHottest, lines),
    };
  },
  shownAs: ({ lines }) => `up to ${lines.at(-1)} lines`,
  formula: '\\Delta T_\\text{own}+\\Delta T_\\text{lines}(j)',
  source: 'weber2014',
  heavy: 'search',
});

export const variations = derived({
  id: 'heat.variations',
  name: 'what other settings make of the rise',
  symbol: '\\{\\Delta T_i\\}',
  unit: {
    change: 'none',
    rise: 'K',
    time: 's',
    rate: 'Hz',
    speed: 'm/s',
    delay: 's',
    lineSpacing: 'm',
    interlacing: '1',
  } as const,
  about:
    'Rise just before the next pulse in the hottest state of the field, and time of the field, with one thing changed: a longer wait, other rates, spacings and interlaced lines, pulse energy held; without those with which pulses would crowd at turns with the laser on.',
  from: { heat: heatInput, settings: scanSettings, rate: repetitionRate },
  compute: ({ heat, settings, rate }): HeatVariation[] => {
    if (crowdsAtTurns(settings, rate)) throw crowded(settings, rate);
    return heatVariations(heat, settings, rate);
  },
  shownAs: (rows) => `${rows.length} settings`,
  formula: '\\Delta T_\\text{next}',
  source: 'scaling',
  heavy: 'search',
});
