import type { Light } from './light.ts';

/** The same light with the beam at the plate made larger by `factor`; plate, stop and lens stay. */
export function withBeamScaled(light: Light, factor: number): Light {
  return { ...light, beamRadius: light.beamRadius * factor };
}

/** The same light with every zone's phase multiplied by `factor`; 0 takes the plate out and leaves the stop in. */
export function withPhaseScaled(light: Light, factor: number): Light {
  const plate = light.plate;
  if (plate.kind !== 'round') return { ...light, plate: { ...plate, phase: plate.phase * factor } };
  const zones = plate.zones.map((zone) => ({ ...zone, phase: zone.phase * factor }));
  return { ...light, plate: { kind: 'round', zones } };
}
