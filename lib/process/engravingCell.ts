import { groupDepth } from './cuttingGroup.ts';
import { type CuttingLaw, countingLevel } from './cuttingLaw.ts';
import type { FluenceTable } from './fluenceTable.ts';
import { requireSpacing } from './lineDose.ts';

/** Pulses of one layer: on a lattice, all lines beginning at one place, written one after another. SI. */
export interface LayerLattice {
  /** From pulse to pulse along a line. */
  readonly along: number;
  /** From line to line. */
  readonly across: number;
  /** Pulses that fall on each point of the lattice one after another: those of a burst. */
  readonly pulses: number;
}

/** Points of the cell that a layer repeats over; those of pulses so close that the spot does not tell them apart. */
export interface CellGrid extends LayerLattice {
  readonly columns: number;
  readonly rows: number;
}

/** Steps of the grid to a diameter of the spot: 32 to its radius. */
const stepsPerDiameter = 64;
/** Points of a cell each way: 16, or two to a step where that is less; but not more than 200, a few spots are seen well. */
const [usualPoints, perStep, mostPoints] = [16, 2, 200];

/**
 * The grid for a spot of that diameter: 32 points to its radius and 16 to a cell, up to 200. Pulses, and lines, closer than
 * half a step are taken together, as many as fit into a step. `fineness` multiplies the points.
 */
export function cellGrid({ along, across, pulses }: LayerLattice, diameter: number, fineness = 1): CellGrid {
  requireSpacing(along, 'pulse spacing', 'scan.speed');
  requireSpacing(across, 'line spacing', 'scan.lineSpacing');
  const step = diameter / stepsPerDiameter;
  const together = (spacing: number) => Math.max(1, Math.floor(step / spacing));
  const points = (spacing: number) => {
    if (spacing <= step) return 1;
    const steps = Math.ceil(spacing / step);
    return fineness * Math.min(mostPoints, Math.max(steps, Math.min(usualPoints, perStep * steps)));
  };
  const [pulsesOf, linesOf] = [together(along), together(across)];
  return {
    along: along * pulsesOf,
    across: across * linesOf,
    pulses: pulses * pulsesOf * linesOf,
    columns: points(along),
    rows: points(across),
  };
}

/** Fluence by place, asked where it counts. */
export type PlaceTable = Pick<FluenceTable, 'reach' | 'at'>;

/** What one layer removes from a cell, row by row; the first point lies under a pulse, columns run along the lines. */
export interface LayerCell {
  readonly grid: CellGrid;
  /** Depth in m. */
  readonly removed: Float64Array;
  /** Pulses counted, each at or above the level of the law. */
  readonly counted: Float64Array;
  /** Mean over the cell, m. */
  readonly meanRemoved: number;
  readonly meanCounted: number;
}

/**
 * One layer in the middle of a wide field: at every point of the cell all pulses that reach it, in the order in which they
 * fall, line after line. `before` is the number of pulses that each point has counted already, one for all or one each.
 * The mean is the volume of a pulse over along·across where incubation changes nothing, to the error of the grid, which
 * falls with the square of its step.
 */
export function layerCell(
  table: PlaceTable,
  law: CuttingLaw,
  grid: CellGrid,
  before: number | Float64Array,
): LayerCell {
  const { columns, rows, along, across, pulses } = grid;
  const [removed, counted] = [new Float64Array(columns * rows), new Float64Array(columns * rows)];
  const [depth, level, { reach }] = [groupDepth(law), countingLevel(law), table];
  for (let point = 0; point < removed.length; point++) {
    const x = ((point % columns) * along) / columns;
    const y = (Math.floor(point / columns) * across) / rows;
    const start = typeof before === 'number' ? before : before[point]!;
    let [sum, count] = [0, 0];
    for (let line = Math.ceil((y - reach) / across); line <= (y + reach) / across; line++) {
      const dy = y - line * across;
      const half = Math.sqrt(Math.max(0, reach * reach - dy * dy));
      for (let i = Math.ceil((x - half) / along); i <= (x + half) / along; i++) {
        const fluence = table.at(x - i * along, dy);
        if (fluence < level || fluence === 0) continue;
        sum += depth(fluence, start + count, pulses);
        count += pulses;
      }
    }
    removed[point] = sum;
    counted[point] = count;
  }
  return { grid, removed, counted, meanRemoved: meanOf(removed), meanCounted: meanOf(counted) };
}

export function meanOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
