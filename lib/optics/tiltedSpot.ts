import type { Spot } from './askedSpot.ts';

/**
 * The spot on a surface tilted by `incidence` θ (rad, below 90°) in the plane at `direction` φ (rad from x), in
 * coordinates along the surface: stretched by 1/cos θ along the plane of incidence, its irradiance per surface lower by
 * cos θ. The change along z over the spot is left out: good where the spot's half-width times tan θ is far below the
 * Rayleigh length.
 */
export function tiltedSpot(spot: Spot, incidence: number, direction: number): Spot {
  if (incidence === 0) return spot;
  const [lower, cosine, sine] = [Math.cos(incidence), Math.cos(direction), Math.sin(direction)];
  return {
    irradianceAt: (x, y) => {
      const along = lower * (x * cosine + y * sine);
      const across = y * cosine - x * sine;
      return lower * spot.irradianceAt(along * cosine - across * sine, along * sine + across * cosine);
    },
    areaAbove: (level) => spot.areaAbove(level / lower) / lower,
    peak: lower * spot.peak,
    effectiveArea: spot.effectiveArea / lower,
    transmission: spot.transmission,
    spectrum: (qx, qy) => {
      // Stretched along the surface, the spot holds lower frequencies there.
      const along = (qx * cosine + qy * sine) / lower;
      const across = qy * cosine - qx * sine;
      return spot.spectrum(along * cosine - across * sine, along * sine + across * cosine);
    },
    spectrumForm: spot.spectrumForm === 'straight' ? 'straight' : 'integrated',
    spectrumEnd: (towards) => {
      const along = Math.cos(towards - direction) / lower;
      const across = Math.sin(towards - direction);
      return spot.spectrumEnd(Math.atan2(across, along) + direction) / Math.hypot(along, across);
    },
  };
}
