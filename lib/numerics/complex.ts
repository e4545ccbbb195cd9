/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** a·b. */
export function multiply(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}
