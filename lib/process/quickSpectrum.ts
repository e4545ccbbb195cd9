import type { Complex } from '../numerics/complex.ts';
import { panelNodes, valueAt } from '../numerics/panelledFunction.ts';
import type { Spot } from '../optics/askedSpot.ts';

/** A spectrum to ask a hundred thousand times, and the |q| from which it is below 3e-7, rad/m. */
export interface QuickSpectrum {
  readonly end: number;
  at(qx: number, qy: number): Complex;
}

const negligible = 3e-7;
const nodesPerPanel = 12;
const panels = 14;

/** Tabulates a spot's spectrum where asking it takes long: in |q| for a round spot, in |q| and angle for others. */
export function quickSpectrum(spot: Spot): QuickSpectrum {
  const end = lastFrequency(spot);
  if (spot.spectrumForm === 'straight') return { end, at: (qx, qy) => spot.spectrum(qx, qy) };
  return spot.spectrumForm === 'round' ? roundTable(spot, end) : polarTable(spot, end);
}

/** The highest |q| of eight directions at which the spectrum still counts, to a hundredth of its end. */
function lastFrequency(spot: Spot): number {
  const turns = spot.spectrumForm === 'round' ? 1 : 4;
  let last = 0;
  for (let turn = 0; turn < turns; turn++) {
    const direction = (Math.PI * turn) / 4;
    const end = spot.spectrumEnd(direction);
    for (let i = 100; i > 0 && (i * end) / 100 > last; i--) {
      const { re, im } = spot.spectrum(
        (i * end * Math.cos(direction)) / 100,
        (i * end * Math.sin(direction)) / 100,
      );
      if (Math.hypot(re, im) > negligible) last = (Math.min(100, i + 1) * end) / 100;
    }
  }
  return last;
}

/** From q = 0 one-sided: there the spectrum of a hard edge has a cusp, and 3/2 powers where rings separate. */
function roundTable(spot: Spot, end: number): QuickSpectrum {
  const width = end / panels;
  const grid = panelNodes(width, panels, nodesPerPanel);
  const values = grid.nodes.map((q) => spot.spectrum(q, 0).re);
  const table = { ...grid, width, count: nodesPerPanel, values };
  return { end, at: (qx, qy) => ({ re: valueAt(table, Math.hypot(qx, qy)), im: 0 }) };
}

const angles = 32;
/** Read linearly between so many radii: 1e-5 at the bend of a spectrum that ends at 17 over its width. */
const radiiRead = 2048;

/** On 32 angles, 16 of them asked: M(−q) is the conjugate of M(q). Read by the harmonics of the angle. */
function polarTable(spot: Spot, end: number): QuickSpectrum {
  const width = (2 * end) / panels;
  const grid = panelNodes(width, panels / 2, nodesPerPanel);
  const harmonics = harmonicsAt(spot, grid.nodes).map((values) => {
    const table = { ...grid, width, count: nodesPerPanel, values };
    return Float64Array.from({ length: radiiRead + 1 }, (_, i) => valueAt(table, (i * end) / radiiRead));
  });
  const kept = harmonics.flatMap((values, i) =>
    values.some((value) => Math.abs(value) > negligible) ? [{ order: i >> 1, odd: i % 2 === 1, values }] : [],
  );
  const at = (qx: number, qy: number): Complex => {
    const angle = Math.atan2(qy, qx);
    const place = Math.min((Math.hypot(qx, qy) / end) * radiiRead, radiiRead - 1e-9);
    const first = Math.floor(place);
    let [re, im] = [0, 0];
    // Even harmonics make the real part, odd ones the imaginary part.
    for (const { order, odd, values } of kept) {
      const value = values[first]! + (place - first) * (values[first + 1]! - values[first]!);
      const turned = value * (odd ? Math.sin(order * angle) : Math.cos(order * angle));
      if (order % 2 === 0) re += turned;
      else im += turned;
    }
    return { re, im };
  };
  return { end, at };
}

/** For m = 0, 1, … the radial functions of cos(mφ) and sin(mφ), one after the other. */
function harmonicsAt(spot: Spot, radii: Float64Array): Float64Array[] {
  const tables = Array.from({ length: angles }, () => new Float64Array(radii.length));
  radii.forEach((radius, i) => {
    for (let turn = 0; turn < angles / 2; turn++) {
      const angle = (2 * Math.PI * turn) / angles;
      const { re, im } = spot.spectrum(radius * Math.cos(angle), radius * Math.sin(angle));
      for (let m = 0; m < angles / 2; m++) {
        const size = ((m === 0 ? 2 : 4) / angles) * (m % 2 === 0 ? re : im);
        tables[2 * m]![i]! += size * Math.cos(m * angle);
        tables[2 * m + 1]![i]! += size * Math.sin(m * angle);
      }
    }
  });
  return tables;
}
