/** A drawn number as somebody would set it: `digits` figures, no more. */
export const rounded = (value: number, digits: number): number => Number(value.toPrecision(digits));
