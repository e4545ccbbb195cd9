/** One mark on the workpiece as it was measured: a row of the table. SI units. */
export interface SpotMark {
  /** Line number in the table, for messages and for leaving it out. */
  readonly row: number;
  /** Pulse energy as typed in the table, before the losses of the design, J. */
  readonly energy: number;
  /** Marked area, m²; 0 where no mark was seen. */
  readonly area: number;
  /** Standard uncertainty of the area, m². */
  readonly areaUncertainty?: number;
  /** Pulses on this place, 1 or more. */
  readonly pulses: number;
  /** Position of the workpiece as read off, m. */
  readonly z: number;
  /** Extent of the mark along x and y, m. */
  readonly diameters?: readonly [number, number];
}
