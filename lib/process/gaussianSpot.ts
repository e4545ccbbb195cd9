import type { Spot } from '../optics/askedSpot.ts';

/** A Gaussian without stop in closed form, 1/e² radius in m: what shaped spots are compared with. */
export function gaussianSpot(radius: number): Spot {
  const area = (Math.PI * radius * radius) / 2;
  return {
    irradianceAt: (x, y) => Math.exp((-2 * (x * x + y * y)) / (radius * radius)),
    areaAbove: (level) => (level < 1 ? area * Math.log(1 / level) : 0),
    peak: 1,
    effectiveArea: area,
    transmission: 1,
    spectrum: (qx, qy) => ({ re: Math.exp((-(qx * qx + qy * qy) * radius * radius) / 8), im: 0 }),
    spectrumForm: 'round',
    // e^{−q²w²/8} = 2e-17
    spectrumEnd: () => 17.6 / radius,
  };
}
