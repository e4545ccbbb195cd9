import type { NumberInput } from '../lib/graph/quantity.ts';

/** A place along x that the hand moves: dragging it, or pressing arrow keys on it, sets a number. */
export interface MoveSpec {
  readonly input: NumberInput;
  /** Where it is now, in the unit of the axis. */
  readonly at: number;
  /** SI a unit of the axis. */
  readonly perUnit: number;
  /** Only whole multiples of this along the axis are set, and an arrow key goes by one; any place where left out. */
  readonly step?: number;
}
