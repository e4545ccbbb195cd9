import { fitNonlinear } from '../../lib/numerics/leastSquares.ts';
import { reference } from '../reference.ts';

const { exp } = Math;
type Model = (b: number[], x: number) => number;
const models: Record<string, Model> = {
  Misra1a: ([b1, b2], x) => b1! * (1 - exp(-b2! * x)),
  Misra1b: ([b1, b2], x) => b1! * (1 - (1 + (b2! * x) / 2) ** -2),
  DanWood: ([b1, b2], x) => b1! * x ** b2!,
  Chwirut2: ([b1, b2, b3], x) => exp(-b1! * x) / (b2! + b3! * x),
  Gauss1: ([b1, b2, b3, b4, b5, b6, b7, b8], x) =>
    b1! * exp(-b2! * x) + b3! * exp(-(((x - b4!) / b5!) ** 2)) + b6! * exp(-(((x - b7!) / b8!) ** 2)),
  Eckerle4: ([b1, b2, b3], x) => (b1! / b2!) * exp(-0.5 * ((x - b3!) / b2!) ** 2),
  MGH09: ([b1, b2, b3, b4], x) => (b1! * (x * x + x * b2!)) / (x * x + x * b3! + b4!),
  MGH10: ([b1, b2, b3], x) => b1! * exp(b2! / (x + b3!)),
  Thurber: ([b1, b2, b3, b4, b5, b6, b7], x) =>
    (b1! + x * (b2! + x * (b3! + x * b4!))) / (1 + x * (b5! + x * (b6! + x * b7!))),
  Rat42: ([b1, b2, b3], x) => b1! / (1 + exp(b2! - b3! * x)),
  Rat43: ([b1, b2, b3, b4], x) => b1! / (1 + exp(b2! - b3! * x)) ** (1 / b4!),
  BoxBOD: ([b1, b2], x) => b1! * (1 - exp(-b2! * x)),
  Bennett5: ([b1, b2, b3], x) => b1! * (b2! + x) ** (-1 / b3!),
  Lanczos3: ([b1, b2, b3, b4, b5, b6], x) => b1! * exp(-b2! * x) + b3! * exp(-b4! * x) + b5! * exp(-b6! * x),
};

export interface StrdSet {
  readonly name: string;
  readonly x: number[];
  readonly y: number[];
  readonly certified: number[];
  readonly certified_sd: number[];
  readonly residual_sd: number;
}
export type NonlinearSet = StrdSet & { readonly start1: number[]; readonly start2: number[] };
export const nonlinear: NonlinearSet[] = reference('nist-strd').nonlinear;
export const linear: StrdSet[] = reference('nist-strd').linear;

/** A nonlinear set fitted from a start. */
export function fitSet(set: StrdSet, start: number[]) {
  const model = models[set.name]!;
  return fitNonlinear({
    observed: set.y,
    start,
    model: (b, into) => {
      const parameters = [...b];
      for (let i = 0; i < into.length; i++) into[i] = model(parameters, set.x[i]!);
    },
  });
}
