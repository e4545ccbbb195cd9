import { choice, derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { niceEnd } from '../numerics/niceEnd.ts';
import { axisThroughFocus, blurOfMap, familyMap, type MapPlan, planMap } from '../optics/familyMap.ts';
import { spaced } from '../optics/focusMaps.ts';
import { focusRadius as focusRadiusOf, type Light, planeOfDefocus } from '../optics/light.ts';
import { roundPlateOf } from '../optics/roundSpot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { Problem } from '../problem.ts';
import { light, searchedDefocus } from './focus.ts';

/** Planes and radii of the map. */
export const mapPlanes = 401;
export const mapRadii = 512;
/** The map reaches out to this many 1/e² radii of the unshaped focus. */
const shownFocusRadii = 5;

export const mapScale = choice({
  id: 'focus.mapScale',
  name: 'colours of the map',
  symbol: '\\text{scale}',
  about:
    'How the map through the focus is coloured: in proportion to the fluence, or by powers of ten of it.',
  initial: 'linear',
  options: { linear: 'linear', logarithmic: 'logarithmic' },
});

/** What the map covers: z from `low` to `high`, radii out to `radius`, all in metres. */
export interface MapExtent {
  readonly low: number;
  readonly high: number;
  readonly radius: number;
}

export const mapExtent = derived({
  id: 'focus.mapExtent',
  name: 'extent of the map',
  symbol: '(z_-, z_+, \\rho_\\text{max})',
  // Round numbers of metres: they do not scale with the unit.
  unit: 'none',
  about:
    'What the map through the focus covers: at least seven Rayleigh lengths of the unshaped beam either way, and five of its focus radii, to round numbers.',
  from: { light },
  compute: ({ light }): MapExtent => {
    const [low, high] = [-searchedDefocus, searchedDefocus].map((zeta) => planeOfDefocus(light, zeta));
    if (!(low! < high!)) {
      throw new Problem(
        'outside',
        'With this wavefront and this distance from plate to lens the light has no seven Rayleigh lengths either side of its focus; make the wavefront flatter or move the plate to one focal length before the lens.',
        { input: 'lens.typedPlateDistance' },
      );
    }
    const reach = shownFocusRadii * focusRadiusOf(light) * spreadOf(light);
    return { ...roundedOut(low!, high!), radius: niceEnd(reach) };
  },
  shownAs: ({ low, high, radius }) =>
    `z from ${formatReadable(low, 'm', 'mm', 3)} to ${formatReadable(high, 'm', 'mm', 3)}, radii to ${formatReadable(radius, 'm', 'um', 3)}`,
  formula: '|\\zeta|\\le 7,\\ \\varrho\\le 5',
  source: 'definition',
});

/** How many times as wide as the unshaped focus a spot of this light is, roughly: by M², and by a stop within the beam. */
export function spreadOf(light: Light): number {
  const stop = roundPlateOf(light).zones.at(-1)!.outer / light.beamRadius;
  return Math.max(1, light.beamPropagationRatio / 2, 1 / stop);
}

/** Round ends around a span: the same either side where it is symmetric to a tenth, so that they stay while values move. */
function roundedOut(low: number, high: number): { low: number; high: number } {
  if (Math.abs(high + low) < 0.1 * (high - low)) {
    const end = niceEnd(Math.max(high, -low));
    return { low: -end, high: end };
  }
  const step = niceEnd((high - low) / 20);
  return { low: Math.floor(low / step) * step, high: Math.ceil(high / step) * step };
}

const plan = derived({
  id: 'focus.mapPlan',
  name: 'where the map is computed',
  symbol: '\\text{plan}',
  unit: 'none',
  about: 'Radii in the focus at which the map is computed, as text; equal texts share one blur.',
  from: { light, extent: mapExtent },
  compute: ({ light, extent }) => JSON.stringify(planMap(light, [extent.low, extent.high], extent.radius)),
  formula: '\\text{plan}(\\text{light}, z_-, z_+, \\rho_\\text{max})',
  source: 'scaling',
});

const blur = derived({
  id: 'focus.mapBlur',
  name: 'blur of the map',
  symbol: 'G_{M^2}',
  unit: 'none',
  about:
    'The matrix that blurs the coherent light of a plane for M² above 1; does not depend on beam or plate.',
  from: { plan },
  compute: ({ plan }) => ({ matrix: blurOfMap(JSON.parse(plan) as MapPlan) }),
  shownAs: ({ matrix }) => (matrix ? 'a blur for M² above 1' : 'no blur, M² = 1'),
  formula: '\\frac{2}{\\pi w_b^2}e^{-2r^2/w_b^2},\\ w_b=w_0\\sqrt{M^4-1}\\,|B|/f',
  source: 'collett1978',
});

/** Relative irradiance over radius (rows, from the axis outwards) and z (columns), with the extent it belongs to. */
export interface FamilyMap {
  readonly extent: MapExtent;
  readonly columns: number;
  readonly rows: number;
  readonly values: Float64Array;
  /** Highest value, and that of each plane. */
  readonly highest: number;
  readonly highestByPlane: Float64Array;
}

export const map = derived({
  id: 'focus.map',
  name: 'irradiance through the focus',
  symbol: 'I(\\rho,z)',
  unit: 'none',
  about:
    'Irradiance over radius and z behind the plate, M² included, relative to the axis of the unshaped, unclipped, M² = 1 beam in its focus.',
  from: { light, extent: mapExtent, plan, blur },
  compute: ({ light, extent, plan, blur }): FamilyMap => {
    const planes = spaced(extent.low, extent.high, mapPlanes);
    const radii = spaced(0, extent.radius, mapRadii);
    const byPlane = familyMap(light, planes, radii, JSON.parse(plan) as MapPlan, blur.matrix);
    return { extent, columns: mapPlanes, rows: mapRadii, ...turned(byPlane) };
  },
  shownAs: () => `${mapRadii} radii in ${mapPlanes} planes`,
  formula: '(f/B)^2\\,|U(\\varrho,\\zeta)|^2 \\ast \\text{blur}(M^2)',
  source: 'collins1970',
  heavy: 'picture',
});

/** From a row a plane to a row a radius, as the picture is drawn. */
function turned(byPlane: Float64Array): Pick<FamilyMap, 'values' | 'highest' | 'highestByPlane'> {
  const values = new Float64Array(byPlane.length);
  const highestByPlane = new Float64Array(mapPlanes);
  // In blocks of eight planes: a whole column at a stride of 3 kB would miss the cache at each step.
  for (let block = 0; block < mapPlanes; block += 8) {
    const end = Math.min(mapPlanes, block + 8);
    for (let radius = 0; radius < mapRadii; radius++) {
      for (let plane = block; plane < end; plane++) {
        const value = byPlane[plane * mapRadii + radius]!;
        values[radius * mapPlanes + plane] = value;
        if (value > highestByPlane[plane]!) highestByPlane[plane] = value;
      }
    }
  }
  return { values, highest: Math.max(...highestByPlane), highestByPlane };
}

/** Relative irradiance on the axis, with the plate and with its step taken away, over `extent` in `mapPlanes` planes. */
export interface AxisCurves {
  readonly extent: MapExtent;
  readonly shaped: Float64Array;
  readonly unshaped: Float64Array;
}

export const axisCurves = derived({
  id: 'focus.axisCurves',
  name: 'irradiance on the axis through the focus',
  symbol: 'I(0,z)',
  unit: 'none',
  about:
    'Irradiance on the axis over z with the plate, and with the plate taken out and the stop left in; M² included.',
  from: { light, extent: mapExtent },
  compute: ({ light, extent }): AxisCurves => {
    const planes = spaced(extent.low, extent.high, mapPlanes);
    return {
      extent,
      shaped: axisThroughFocus(light, planes),
      unshaped: axisThroughFocus(withPhaseScaled(light, 0), planes),
    };
  },
  shownAs: () => `two curves of ${mapPlanes} planes`,
  formula: '(f/B)^2\\,|U(0,\\zeta)|^2 \\ast \\text{blur}(M^2)',
  source: 'collins1970',
  heavy: 'picture',
});
