import { describe, it } from 'vitest';
import { fitLinear } from '../../lib/numerics/linearLeastSquares.ts';
import { expectClose } from '../close.ts';
import { fitSet, linear, nonlinear } from './strdSets.ts';

/**
 * Powers of x and y in the unit of each parameter, b = x^p·y^q, where all follow from those of x and y: then metres and
 * micrometres differ by factors alone. In the other sets a power law or a sum ties x to a pure number: y alone changes.
 */
const units: Record<string, readonly (readonly [number, number])[]> = {
  Misra1a: [
    [0, 1],
    [-1, 0],
  ],
  Misra1b: [
    [0, 1],
    [-1, 0],
  ],
  Chwirut2: [
    [-1, 0],
    [0, -1],
    [-1, -1],
  ],
  Gauss1: [
    [0, 1],
    [-1, 0],
    [0, 1],
    [1, 0],
    [1, 0],
    [0, 1],
    [1, 0],
    [1, 0],
  ],
  Eckerle4: [
    [1, 1],
    [1, 0],
    [1, 0],
  ],
  MGH09: [
    [0, 1],
    [1, 0],
    [1, 0],
    [2, 0],
  ],
  MGH10: [
    [0, 1],
    [1, 0],
    [1, 0],
  ],
  Thurber: [
    [0, 1],
    [-1, 1],
    [-2, 1],
    [-3, 1],
    [-1, 0],
    [-2, 0],
    [-3, 0],
  ],
  Rat42: [
    [0, 1],
    [0, 0],
    [-1, 0],
  ],
  Rat43: [
    [0, 1],
    [0, 0],
    [-1, 0],
    [0, 0],
  ],
  BoxBOD: [
    [0, 1],
    [-1, 0],
  ],
  Lanczos3: [
    [0, 1],
    [-1, 0],
    [0, 1],
    [-1, 0],
    [0, 1],
    [-1, 0],
  ],
  DanWood: [
    [0, 1],
    [0, 0],
  ],
  Bennett5: [
    [0, 1],
    [0, 0],
    [0, 0],
  ],
};
const tied = ['DanWood', 'Bennett5'];

describe('NIST StRD in metres and in micrometres', () => {
  const runs = nonlinear.flatMap((set) => [
    { set, start: set.start1, title: `${set.name} from start 1` },
    { set, start: set.start2, title: `${set.name} from start 2` },
  ]);
  it.each(runs)('$title', ({ set, start }) => {
    const micro = 1e-6;
    const scale = units[set.name]!.map(([p, q]) => micro ** (p + q));
    const x = tied.includes(set.name) ? set.x : set.x.map((value) => value * micro);
    const inMetres = fitSet(
      { ...set, x, y: set.y.map((value) => value * micro) },
      start.map((b, j) => b * scale[j]!),
    );
    const source = `NIST StRD ${set.name}`;
    inMetres.parameters.forEach((value, j) => {
      expectClose(value / scale[j]!, set.certified[j]!, { relative: 1e-6, source });
    });
    inMetres.standardUncertainties.forEach((value, j) => {
      expectClose(value / scale[j]!, set.certified_sd[j]!, { relative: 1e-4, source });
    });
  });
});

describe('NIST StRD, linear, in metres and in micrometres', () => {
  it.each(linear.map((set) => ({ set, title: set.name })))('$title', ({ set }) => {
    const columns = set.certified.length;
    const design = set.x.flatMap((x) => Array.from({ length: columns }, (_, j) => (x * 1e-6) ** j));
    const fit = fitLinear(
      design,
      set.y.map((y) => y * 1e-6),
      columns,
    );
    const source = `NIST StRD ${set.name}`;
    for (let j = 0; j < columns; j++) {
      const scale = 1e-6 ** (1 - j);
      expectClose(fit.parameters[j]! / scale, set.certified[j]!, { relative: 1e-9, source });
      expectClose(fit.standardUncertainties[j]! / scale, set.certified_sd[j]!, { relative: 1e-9, source });
    }
  });
});
