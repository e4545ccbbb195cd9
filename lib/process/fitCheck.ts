/** One way in which marks can speak against a model. */
export interface FitCheck {
  readonly kind: 'scatter' | 'runs' | 'shape' | 'plane' | 'pulses' | 'z' | 'axes' | 'radius' | 'unmarked';
  /** How probable deviations this large are where the model holds. */
  readonly probability: number;
  readonly passed: boolean;
  /** A sentence with the numbers. */
  readonly text: string;
}
