import { panelNodes, valueAt } from '../../lib/numerics/panelledFunction.ts';
import { energyOutside, energyOutsideStraight } from '../../lib/optics/farTail.ts';
import { type CrossedPlate, collinsB, defocusAt, focusRadius, type Light } from '../../lib/optics/light.ts';
import { radiusScale, roundIrradianceAt, roundPlateOf } from '../../lib/optics/roundSpot.ts';
import { axisFunctions, layOutAxis } from '../../lib/optics/separableIrradiance.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import type { FarSpot } from '../../lib/process/doseBySum.ts';

/** ∫ of the relative irradiance, m²: the incident energy that passes the stop. */
function energyOf(light: Light, z: number): number {
  return (spotAt(light, z).transmission * Math.PI * focusRadius(light) ** 2) / 2;
}

/** A round spot far out, from the edges of its zones; `reach` in w0·B/f. */
export function farRoundSpot(light: Light, z: number, reach: number): FarSpot {
  const scale = radiusScale(light, z);
  const edge = Math.min(3.2, roundPlateOf(light).zones.at(-1)!.outer / light.beamRadius);
  const width = (2.25 / edge) * scale;
  const panels = Math.ceil((reach * scale) / width);
  const rule = panelNodes(width, panels, 16);
  const values = new Float64Array(rule.nodes.length);
  // In parts: the matrix of the blur grows with the square of their length.
  for (let i = 0; i < values.length; i += 160)
    values.set(roundIrradianceAt(light, z, rule.nodes.slice(i, i + 160)), i);
  const profile = { ...rule, width, count: 16, values };
  const zones = roundPlateOf(light).zones.map((zone) => ({ ...zone, outer: zone.outer / light.beamRadius }));
  const { transmission } = spotAt(light, z);
  return {
    irradianceAt: (x, y) => valueAt(profile, Math.hypot(x, y)),
    energy: energyOf(light, z),
    tail: {
      outside: (radius) => energyOutside(zones, radius / scale, defocusAt(light, z)) / transmission,
    },
  };
}

/** A spot of crossed steps far out, of a round beam on the centre. */
export function farCrossedSpot(light: Light, plate: CrossedPlate, z: number, reach: number): FarSpot {
  const scale = radiusScale(light, z);
  const along = [plate.halfWidthX, plate.halfWidthY].map((halfWidth) => {
    const axis = layOutAxis({
      halfWidth: halfWidth / light.beamRadius,
      stop: plate.stop === 0 ? null : plate.stop / light.beamRadius,
      defocus: defocusAt(light, z),
      phase: plate.phase,
      beamPropagationRatio: light.beamPropagationRatio,
    });
    const far = { ...axis, reach: Math.ceil(reach / axis.width) * axis.width };
    return { axis, profile: axisFunctions('crossed', far)[0]!.re };
  });
  const [x, y] = along as [(typeof along)[0], (typeof along)[0]];
  const strength = (light.focalLength / collinsB(light, z)) ** 2;
  return {
    irradianceAt: (atX, atY) =>
      strength * valueAt(x.profile, Math.abs(atX) / scale) * valueAt(y.profile, Math.abs(atY) / scale),
    energy: energyOf(light, z),
    tail: {
      outsideX: (distance) => energyOutsideStraight(x.axis, distance / scale),
      outsideY: (distance) => energyOutsideStraight(y.axis, distance / scale),
      arm: 40 * scale,
    },
  };
}
