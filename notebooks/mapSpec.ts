/** Values over a grid, row by row from the lower edge of the chart; drawn as a picture in one hue, from the paper's colour (low) to deep ink. */
export interface MapSpec {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float64Array;
  /** Units of the chart a unit of `values`; 1 where left out. A drag would spend milliseconds on multiplying them all. */
  readonly perValue?: number;
  /** Lowest and highest value of the colour scale, in the unit of the chart. */
  readonly range: readonly [number, number];
  /** Values go beyond the top of the range, whose colour they take; the scale then says "and more". */
  readonly openEnd?: boolean;
  /** Colours follow the logarithm; the range is above 0 then. */
  readonly logarithmic?: boolean;
  /** The first row lies in the middle of the chart, and all are drawn to either side of it. */
  readonly mirrored?: boolean;
  /** A photograph: dark to light as it was taken, by day and by night, pale enough by day and dark enough by night for lines on it. */
  readonly grey?: boolean;
  readonly label: string;
  readonly unit: string;
}
