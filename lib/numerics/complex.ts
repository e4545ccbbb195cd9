/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}
