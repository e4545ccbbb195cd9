import { describe, expect, it } from 'vitest';
import { fitNonlinear } from '../../lib/numerics/leastSquares.ts';
import { fitLinear } from '../../lib/numerics/linearLeastSquares.ts';
import { Problem } from '../../lib/problem.ts';
import { expectClose } from '../close.ts';
import { fitSet, linear, nonlinear } from './strdSets.ts';

describe('NIST StRD, nonlinear', () => {
  const runs = nonlinear.flatMap((set) => [
    { set, start: set.start1, title: `${set.name} from start 1` },
    { set, start: set.start2, title: `${set.name} from start 2` },
  ]);
  it.each(runs)('$title', ({ set, start }) => {
    const fit = fitSet(set, start);
    const source = `NIST StRD ${set.name}`;
    fit.parameters.forEach((value, i) => {
      expectClose(value, set.certified[i]!, { relative: 1e-7, source });
    });
    fit.standardUncertainties.forEach((value, i) => {
      expectClose(value, set.certified_sd[i]!, { relative: 1e-6, source });
    });
    expectClose(Math.sqrt(fit.reducedChiSquare), set.residual_sd, { relative: 1e-8, source });
  });
});

describe('NIST StRD, linear', () => {
  it.each(linear.map((set) => ({ set, title: set.name })))('$title', ({ set }) => {
    const columns = set.certified.length;
    const design = set.x.flatMap((x) => Array.from({ length: columns }, (_, j) => x ** j));
    const fit = fitLinear(design, set.y, columns);
    const source = `NIST StRD ${set.name}`;
    fit.parameters.forEach((value, i) => {
      expectClose(value, set.certified[i]!, { relative: 1e-9, source });
    });
    fit.standardUncertainties.forEach((value, i) => {
      expectClose(value, set.certified_sd[i]!, { relative: 1e-9, source });
    });
  });
});

describe('uncertainties and limits', () => {
  const x = [0, 1, 2, 3, 4];
  const y = [1.1, 2.9, 5.2, 6.8, 9.1];
  const design = x.flatMap((value) => [1, value]);

  it('gives absolute uncertainties of a mean: u/√n', () => {
    const fit = fitLinear([1, 1, 1, 1], [3, 4, 5, 6], 1, { uncertainties: [2, 2, 2, 2], absolute: true });
    expectClose(fit.parameters[0]!, 4.5, { relative: 1e-14 });
    expectClose(fit.standardUncertainties[0]!, 1, { relative: 1e-14, source: 'u/√n' });
  });

  it('agrees between both routes on a weighted line at micrometre size', () => {
    const uncertainties = [1e-7, 2e-7, 1e-7, 3e-7, 1e-7];
    const small = y.map((value) => value * 1e-6);
    const straight = fitLinear(design, small, 2, { uncertainties, absolute: true });
    const stepped = fitNonlinear({
      observed: small,
      start: [1e-5, 1e-5],
      uncertainties,
      absolute: true,
      model: (b, into) =>
        x.forEach((value, i) => {
          into[i] = b[0]! + b[1]! * value;
        }),
    });
    for (const i of [0, 1]) {
      expectClose(stepped.parameters[i]!, straight.parameters[i]!, {
        relative: 1e-9,
        source: 'linear route',
      });
      expectClose(stepped.covariance[0]![i]!, straight.covariance[0]![i]!, {
        relative: 1e-9,
        source: 'linear route',
      });
    }
  });

  it('refuses what is not determined', () => {
    expect(() => fitLinear([1, 2, 1, 2, 1, 2], [1, 2, 3], 2)).toThrow(Problem);
    expect(() => fitLinear([1, 0, 0, 1], [1, 2], 2)).toThrow(/at least 3/);
    const model = (b: Float64Array, into: Float64Array) => into.fill(Math.log(b[0]!));
    expect(() => fitNonlinear({ observed: [1, 2], start: [-1], model })).toThrow(/cannot start/);
  });
});
