/** A rational number in lowest terms; `under` is above 0. */
export interface Fraction {
  readonly over: number;
  readonly under: number;
}

/** Throws nothing: both must be whole and `under` not 0. */
export function fraction(over: number, under = 1): Fraction {
  const common = commonFactor(Math.abs(over), Math.abs(under)) * Math.sign(under);
  return { over: over === 0 ? 0 : over / common, under: over === 0 ? 1 : under / common };
}

function commonFactor(a: number, b: number): number {
  return b === 0 ? a : commonFactor(b, a % b);
}

export function addFractions(a: Fraction, b: Fraction): Fraction {
  return fraction(a.over * b.under + b.over * a.under, a.under * b.under);
}

export function multiplyFractions(a: Fraction, b: Fraction): Fraction {
  return fraction(a.over * b.over, a.under * b.under);
}

export function sameFraction(a: Fraction, b: Fraction): boolean {
  return a.over === b.over && a.under === b.under;
}

/** `1/2`, `−3`: with a typographic minus sign. */
export function fractionText({ over, under }: Fraction): string {
  const size = under === 1 ? `${Math.abs(over)}` : `${Math.abs(over)}/${under}`;
  return over < 0 ? `−${size}` : size;
}

/** The fraction with the least denominator up to `most` that a number is, to its rounding; undefined where none is. */
export function fractionOf(value: number, most: number): Fraction | undefined {
  for (let under = 1; under <= most; under++) {
    const over = Math.round(value * under);
    if (Math.abs(value * under - over) <= 1e-12 * Math.max(1, Math.abs(over))) return fraction(over, under);
  }
  return undefined;
}
