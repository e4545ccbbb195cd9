/** Places of pulses, m; both of the same length. */
export interface PulsePlaces {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** Points `step` apart from (left, bottom), m; row by row from the bottom. */
export interface MapGrid {
  readonly left: number;
  readonly bottom: number;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}

/** The square that a map repeats over, m. */
export interface MapBox {
  readonly left: number;
  readonly bottom: number;
  readonly side: number;
}
