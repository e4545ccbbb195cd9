import { heatRise, unshapedHeatRise } from '../lib/design/heat.ts';
import { alongFirstLine, lineByLine, variations } from '../lib/design/heatCharts.ts';
import { riseLimit } from '../lib/design/heatInputs.ts';
import { pulseEnergy, repetitionRate } from '../lib/design/laser.ts';
import { energySource, usedPulseEnergy } from '../lib/design/losses.ts';
import { lineSpacing, scanSpeed } from '../lib/design/scanInputs.ts';
import { interlacing, lineDelay } from '../lib/design/scannerInputs.ts';
import type { NumberInput } from '../lib/graph/quantity.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import type { HeatChange, HeatVariation } from '../lib/process/heatVariations.ts';
import type { ChoiceRow, ChoicesSpec } from './choicesSpec.ts';
import { largest } from './columns.ts';
import { choices, type FigureSpec, figure, type MarkSpec } from './document.ts';
import { lengthText } from './shortTexts.ts';

const kelvin = (value: number) => formatReadable(value, 'K', 'K', 3);

/** The limit as a line, where it lies on the chart; the end of the axis. */
function limitOn(limit: number, top: number): { marks: MarkSpec[]; end: number } {
  const end = niceEnd(1.1 * (limit < 3 * top ? Math.max(top, limit) : top));
  return {
    end,
    marks: limit < end ? [{ kind: 'horizontal', y: limit, label: 'your limit', role: 'reference' }] : [],
  };
}

/** Domain of a logarithmic axis of counts. */
const countDomain = (last: number): readonly [number, number] => [1, Math.max(2, last)];

/** Rise before the next pulse along the first line, pulse by pulse. */
export const firstLineFigure = figure({
  id: 'heat-along-line',
  from: { line: alongFirstLine, limit: riseLimit },
  view: ({ line: { pulses, shaped, plain }, limit }): FigureSpec => {
    const { marks, end } = limitOn(limit, largest(shaped, plain));
    return {
      title: 'Rise just before the next pulse, along the first line',
      x: {
        label: 'pulses before, in the line',
        unit: '1',
        domain: countDomain(pulses.at(-1)!),
        logarithmic: true,
      },
      y: { label: 'temperature rise', unit: 'K', domain: [0, end] },
      series: [
        { label: 'with the plate', role: 'main', x: pulses, y: shaped },
        { label: 'plate taken out', role: 'reference', x: pulses, y: plain },
      ],
      marks,
      summary: `After one pulse ${kelvin(shaped[0]!)} are left with the plate when the next comes, after ${pulses.at(-1)} pulses ${kelvin(shaped.at(-1)!)}; without the plate ${kelvin(plain[0]!)} and ${kelvin(plain.at(-1)!)}.`,
    };
  },
});

/** Rise before a pulse from line to line. */
export const lineByLineFigure = figure({
  id: 'heat-line-by-line',
  from: { rows: lineByLine, limit: riseLimit, rise: heatRise, plain: unshapedHeatRise },
  view: ({ rows: { lines, shaped, plain }, limit, rise, plain: plainRise }): FigureSpec => {
    const { marks, end } = limitOn(limit, Math.max(rise, plainRise, largest(shaped, plain)));
    return {
      title: 'Rise just before a pulse, from line to line',
      x: {
        label: 'whole lines before, first round',
        unit: '1',
        domain: countDomain(lines.at(-1)!),
        logarithmic: true,
      },
      y: { label: 'temperature rise', unit: 'K', domain: [0, end] },
      series: [
        { label: 'with the plate', role: 'main', x: lines, y: shaped },
        { label: 'plate taken out', role: 'reference', x: lines, y: plain },
      ],
      marks,
      summary: `At one place along the lines: after one line ${kelvin(shaped[0]!)} with the plate, after ${lines.at(-1)} ${kelvin(shaped.at(-1)!)}; in the hottest state of the whole field, later rounds and passes included, ${kelvin(rise)}. Without the plate ${kelvin(plain[0]!)}, ${kelvin(plain.at(-1)!)} and ${kelvin(plainRise)}.`,
    };
  },
});

const names: Readonly<Record<HeatChange, string>> = {
  today: 'as it stands',
  wait: 'wait at each line as long again as it takes to write',
  rateHalf: 'half the rate and half the speed',
  rateDouble: 'twice the rate and twice the speed',
  pulsesDouble: 'twice the pulse spacing, by speed',
  linesDouble: 'twice the line spacing',
  interlaceOne: 'neighbouring lines in turn',
  interlaceTwo: 'every second line, then those between',
  interlaceFour: 'every fourth line, in four rounds',
  interlaceEight: 'every eighth line, in eight rounds',
};

/** Inputs that a row sets, and what to. */
function patchOf(row: HeatVariation, energy: number): ReadonlyMap<NumberInput, number> {
  if (row.change === 'wait') return new Map([[lineDelay, row.delay]]);
  if (row.change === 'rateHalf' || row.change === 'rateDouble')
    return new Map([
      [repetitionRate, row.rate],
      [scanSpeed, row.speed],
      [pulseEnergy, energy],
    ]);
  if (row.change === 'pulsesDouble') return new Map([[scanSpeed, row.speed]]);
  if (row.change === 'linesDouble') return new Map([[lineSpacing, row.lineSpacing]]);
  return row.change === 'today' ? new Map() : new Map([[interlacing, row.interlacing]]);
}

const inside = ({ range }: NumberInput, value: number) => value >= range.min && value <= range.max;

/** What other settings make of the rise; each can be taken. */
export const variationsTable = choices({
  id: 'heat-variations',
  from: { rows: variations, limit: riseLimit, energy: usedPulseEnergy },
  view: ({ rows, limit, energy }): ChoicesSpec => {
    const today = rows[0]!;
    const shown = rows.filter(
      (row) =>
        [...patchOf(row, energy)].every(([input, value]) => inside(input, value)) &&
        !(row.change.startsWith('interlace') && row.interlacing === today.interlacing),
    );
    const coolest = shown.reduce((best, row) => (row.rise < best.rise ? row : best), today);
    return {
      caption: 'What other settings make of the rise',
      columns: ['one thing changed', 'rise before the next pulse', 'time of the field', 'within your limit'],
      rows: shown.map((row) => rowOf(row, limit, energy)),
      summary: `With the plate, pulse energy held, all else as it stands. Least here: ${names[coolest.change]}, ${kelvin(coolest.rise)} against ${kelvin(today.rise)} as it stands. A longer wait or interlaced lines only take away what earlier lines left; the heat of the line being written falls with pulse spacing, rate and energy. Spacings change the accumulated fluence as well.`,
      hint: 'Choosing a row sets it.',
    };
  },
});

function rowOf(row: HeatVariation, limit: number, energy: number): ChoiceRow {
  const patch = Object.fromEntries([...patchOf(row, energy)].map(([input, value]) => [input.id, value]));
  const typed = pulseEnergy.id in patch ? { [energySource.id]: 'typed' } : {};
  return {
    key: row.change,
    name: names[row.change],
    does: row.change === 'today' ? 'Leave the field as it stands' : `Set this: ${names[row.change]}`,
    cells: [kelvin(row.rise), formatReadable(row.time, 's', 'auto:s', 3), row.rise <= limit ? 'yes' : 'no'],
    more: [
      [repetitionRate.name, formatReadable(row.rate, 'Hz', 'auto:Hz', 3)],
      [scanSpeed.name, formatReadable(row.speed, 'm/s', 'm/s', 3)],
      [lineSpacing.name, lengthText(row.lineSpacing)],
      [interlacing.name, String(row.interlacing)],
      [lineDelay.name, formatReadable(row.delay, 's', 'auto:s', 3)],
    ],
    about: 'Pulse energy and everything that is not named stay as they are.',
    patch: { ...patch, ...typed },
    chosen: row.change === 'today',
  };
}
