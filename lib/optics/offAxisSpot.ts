import { panelledRule } from '../numerics/gaussLegendre.ts';
import { Problem } from '../problem.ts';
import type { Spot } from './askedSpot.ts';
import type { OffAxisBeam } from './azimuthalHarmonics.ts';
import { gridSpot, gridStep, usableDefocus } from './gridSpot.ts';
import { collinsB, type Light, type RoundPlate } from './light.ts';
import { type OffAxisTable, readOffAxisTable, tabulateOffAxis } from './offAxisTable.ts';
import { radiusScale } from './roundSpot.ts';
import { spectrumOfRound } from './spotSpectrum.ts';
import { gaussianReach, type Zone } from './zones.ts';

/** The spot of a decentred or elliptical beam on round zones; M² = 1 only. 0.1 to 2 s, growing with |ζ|. */
export function offAxisSpot(light: Light, plate: RoundPlate, z: number): Spot {
  if (light.beamPropagationRatio !== 1) {
    throw new Problem(
      'outside',
      `A decentred or elliptical beam on round zones is computed for M² = 1 only, not for ${light.beamPropagationRatio}: its spot is not round, and the blur for M² is prepared for round spots. Centre a round beam, or set M² to 1.`,
      { input: 'laser.beamPropagationRatio', value: `${light.beamPropagationRatio}`, allowed: '1' },
    );
  }
  const defocus = usableDefocus(light, z);
  const zones = plate.zones.map((zone) => ({ outer: zone.outer / light.beamRadius, phase: zone.phase }));
  const beam = beamOf(light);
  const reach = reachOffAxis(zones, beam, defocus);
  const table = tabulateOffAxis(zones, beam, defocus, reach);
  const scale = radiusScale(light, z);
  const strength = (light.focalLength / collinsB(light, z)) ** 2 / (beam.ax * beam.ay);
  const irradianceAt = (x: number, y: number) => strength * squareAt(table, x / scale, y / scale);
  // At most 601 samples a side: far from the focus spots are wide, and 0.1 still resolves their finest ripple, period 0.5.
  const step = Math.max(gridStep / Math.min(1, zones.at(-1)!.outer), reach / 300);
  const transmission = energyThroughRound(zones.at(-1)!.outer, beam);
  return gridSpot(light, {
    irradianceAt,
    sample: () => sampleAround(irradianceAt, beam.qx * scale, beam.qy * scale, reach * scale, step * scale),
    copies: 1,
    transmission,
    ...spectrumOfRound(light, plate, z, beam, transmission),
  });
}

/**
 * The beam in units of w. Its wavefront is curved about its own centre: against one curved about the plate's centre,
 * which ζ holds, that is a tilt of −(πw²/λR_b)·x0.
 */
function beamOf(light: Light): Required<Omit<OffAxisBeam, 'alpha'>> {
  const { beamRadius, wavelength, wavefrontCurvature, beamAspect } = light;
  const curvature = (Math.PI * beamRadius * beamRadius * wavefrontCurvature) / wavelength;
  const x0 = light.decentreX / beamRadius;
  const y0 = light.decentreY / beamRadius;
  const ay = Math.sqrt(beamAspect);
  return { x0, y0, ax: 1 / ay, ay, qx: 0 - curvature * x0, qy: 0 - curvature * y0 };
}

/** Radius about (qx, qy) that holds the spot: the round one's, with the farther part of beam and decentre. */
function reachOffAxis(zones: readonly Zone[], beam: ReturnType<typeof beamOf>, defocus: number): number {
  const last = zones.at(-1)!.outer;
  const widest = Math.max(beam.ax, beam.ay);
  const lit = Math.min(last, 2.2 * widest + Math.hypot(beam.x0, beam.y0));
  return (7 * widest) / Math.min(1, last) + Math.abs(defocus) * lit;
}

/** |U|², 0 beyond the table. */
function squareAt(table: OffAxisTable, xi: number, eta: number): number {
  if (Math.hypot(xi - table.qx, eta - table.qy) > table.largestRadius) return 0;
  const { re, im } = readOffAxisTable(table, xi, eta);
  return re * re + im * im;
}

function sampleAround(
  f: (x: number, y: number) => number,
  x0: number,
  y0: number,
  reach: number,
  step: number,
) {
  const half = Math.ceil(reach / step);
  const columns = 2 * half + 1;
  const [x, y] = [x0 - half * step, y0 - half * step];
  const values = new Float64Array(columns * columns);
  for (let i = 0; i < values.length; i++)
    values[i] = f(x + (i % columns) * step, y + Math.floor(i / columns) * step);
  return { grid: { columns, rows: columns, stepX: step, stepY: step, values }, x, y };
}

/**
 * Part of the beam's energy inside a round stop of radius `stop`, units of w, by 24-node panels of half a radius and
 * 256 angles: 1e-13 for aspects from ½ to 2 and decentres up to w.
 */
export function energyThroughRound(stop: number, beam: ReturnType<typeof beamOf>): number {
  const { x0, y0, ax, ay } = beam;
  const end = Math.min(stop, (gaussianReach / Math.SQRT2) * Math.max(ax, ay) + Math.hypot(x0, y0));
  const panels = Math.ceil(2 * end);
  const rule = panelledRule(
    Array.from({ length: panels + 1 }, (_, i) => (i * end) / panels),
    24,
  );
  let sum = 0;
  rule.nodes.forEach((r, i) => {
    for (let k = 0; k < 256; k++) {
      const x = (r * Math.cos((k * Math.PI) / 128) - x0) / ax;
      const y = (r * Math.sin((k * Math.PI) / 128) - y0) / ay;
      sum += rule.weights[i]! * r * Math.exp(-2 * (x * x + y * y));
    }
  });
  return (sum * 4) / (256 * ax * ay);
}
