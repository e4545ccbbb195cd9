/** Bounds of the incident fluence of a pulse, J/m²; of the lower one for the fewest pulses that are enough. */
export interface FluenceBounds {
  readonly low: number;
  readonly high: number;
}

/** How many pulses a place must get, and what pulses do to one another. */
export interface PulseCounts {
  /** Bounds of the number of pulses that reach the lower bound, 1 or more. */
  readonly pulsesLow: number;
  readonly pulsesHigh: number;
  /** S of the incubation: with n pulses, more than `pulsesLow`, both bounds are (n/pulsesLow)^(S−1) of theirs; 1 leaves them. */
  readonly exponent: number;
}

/** What a place of a field must get so that the wanted structure appears there. */
export type PulseWindow = FluenceBounds & PulseCounts;
