import { derived, ifThere } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { portion } from '../numerics/progress.ts';
import { engravedFloor } from '../process/engravedFloor.ts';
import type { Engraved } from '../process/engraving.ts';
import { layerMaps } from '../process/engravingMaps.ts';
import { fieldWidth } from './depthInUse.ts';
import { engravedLayers, unshapedEngravedLayers } from './engraving.ts';
import { patchOf } from './engravingFloor.ts';
import { engravingBeam, layerPlan } from './engravingParts.ts';
import { engravingLayers } from './grooveInputs.ts';
import { spotDiameter } from './pulsesOnPlace.ts';
import { lineSpacing, pulseSpacing } from './scanInputs.ts';
import { fieldHeight, hatchAngle } from './scannerInputs.ts';

/** Points of a curve. */
const mostPoints = 200;

/** Mean depth after some of the layers, from none on. */
export interface DepthCurve {
  readonly layers: Float64Array;
  readonly depth: Float64Array;
}

/** All layers of an engraving, or as many spread evenly, the last always. */
function curveOf({ depth }: Engraved): DepthCurve {
  const last = depth.length - 1;
  const count = Math.min(last, mostPoints);
  const layers = Float64Array.from({ length: count + 1 }, (_, i) =>
    count === 0 ? 0 : Math.round((i * last) / count),
  );
  return { layers, depth: layers.map((layer) => depth[layer]!) };
}

const plainLayers = ifThere({
  id: 'unshaped.engraving.layeredIfThere',
  name: 'depth layer by layer without the step, where there is one',
  symbol: 'd_\\text{u}(n)',
  unit: { depth: 'm', before: '1', end: 'none' },
  about: 'Mean depth of the floor after each layer with the plate taken out, where it can be worked out.',
  of: unshapedEngravedLayers,
  waits: true,
});

export const depthByLayer = derived({
  id: 'engraving.depthByLayer',
  name: 'depth against layers',
  symbol: 'd(n)',
  unit: { shaped: { layers: '1', depth: 'm' }, plain: { layers: '1', depth: 'm' } },
  about: 'Mean depth after each layer with the plate, and with the plate taken out at the same settings.',
  from: { layered: engravedLayers, plain: plainLayers },
  compute: ({ layered, plain }): { shaped: DepthCurve; plain: DepthCurve | null } => ({
    shaped: curveOf(layered),
    plain: plain && curveOf(plain),
  }),
  shownAs: ({ shaped }) => `up to ${formatReadable(shaped.depth.at(-1)!, 'm', 'um', 3)}`,
  formula: 'd(n),\\ d_\\text{u}(n)',
  source: 'definition',
});

/** Turns from layer to layer that are looked at beside the one set, degrees. */
const usualTurns = [0, 45, 60, 67, 90].map((degrees) => (degrees * Math.PI) / 180);
/** Turns that are one, rad. */
const sameTurn = 1e-6;

export const turns = derived({
  id: 'engraving.turns',
  name: 'roughness against the turn from layer to layer',
  symbol: 'S_q(\\theta)',
  unit: { turn: 'rad', roughness: 'm', highestToLowest: 'm' },
  about:
    'Roughness of the floor, and its highest to its lowest point, after all layers for usual turns of the hatch from layer to layer and the one set; all else alike.',
  from: {
    beam: engravingBeam,
    plan: layerPlan,
    layered: engravedLayers,
    layers: engravingLayers,
    set: hatchAngle,
    width: fieldWidth,
    height: fieldHeight,
    along: pulseSpacing,
    across: lineSpacing,
    diameter: spotDiameter,
  },
  compute: ({ beam, plan, layered, layers, set, width, height, along, across, diameter }, report) => {
    const others = usualTurns.filter((turn) => Math.abs(turn - set) > sameTurn);
    const turn = Float64Array.from([...others, set]).sort();
    const maps = layerMaps(beam, plan);
    const patch = patchOf({ width, height }, [along, across], diameter);
    const floors = Array.from(turn, (angle, i) => {
      const part = portion(report, i / turn.length, (i + 1) / turn.length);
      return engravedFloor(maps, layered, Math.round(layers), angle, patch, part);
    });
    return {
      turn,
      roughness: Float64Array.from(floors, ({ rms }) => rms),
      highestToLowest: Float64Array.from(floors, (floor) => floor.highestToLowest),
    };
  },
  shownAs: ({ turn }) => `${turn.length} turns`,
  formula: 'S_q(\\theta_\\text{hatch})',
  source: 'search',
  heavy: 'search',
});
