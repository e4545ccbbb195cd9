import { constant, derived } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import { alongOffset, placesAcross, riseOverHigher } from '../optics/offCentre.ts';
import { roundFocusAt } from '../optics/roundSpot.ts';
import type { Zone } from '../optics/zones.ts';
import { light, workpieceZ } from './focus.ts';
import { stepRatio } from './match.ts';
import { zones } from './plate.ts';

/** Places along the line of the offset. */
const count = 161;

/** Below this the two sides are alike: what is left is lost in the sum. */
const alike = 1e-6;
const percent = (value: number) => formatQuantity(value < alike ? 0 : value, '1', '%', 2);

export const offsetTried = constant({
  id: 'explain.offsetTried',
  name: 'offset tried',
  symbol: '\\delta_\\text{off}',
  unit: '1',
  display: '%',
  about: 'How far beside the middle of the plate the beam is taken to stand, in parts of its 1/e² radius.',
  value: 0.05,
  source: 'common practice',
});

/** Zones of the plate in units of the beam's 1/e² radius at the plate. */
export function zonesInRadii(zones: readonly Zone[], ratio: number): readonly Zone[] {
  const step = zones[0]!.outer;
  return zones.map(({ outer, phase }) => ({ outer: (outer / step) * ratio, phase }));
}

export const offCentre = derived({
  id: 'explain.offCentre',
  name: 'spot of a beam beside the middle of the plate',
  symbol: 'I_\\text{off}(\\xi)',
  unit: {
    place: '1',
    centred: '1',
    here: '1',
    focus: '1',
    hereImbalance: '1',
    focusImbalance: '1',
  },
  about:
    'Irradiance along the line on which the beam stands beside the middle of the plate, in the plane of the workpiece and in the focus, and with the beam in the middle; places in units of the unshaped focus radius there. And how much higher one side rises than the other, over the higher one. Coherent light, relative to the unshaped focus.',
  from: { light, z: workpieceZ, ratio: stepRatio, zones, offset: offsetTried },
  compute: ({ light, z, ratio, zones, offset }) => {
    const { defocus } = roundFocusAt(light, z);
    const place = placesAcross(defocus, count);
    const parts = zonesInRadii(zones, ratio);
    const centred = alongOffset(parts, 0, defocus, place);
    const here = alongOffset(parts, offset, defocus, place);
    const focus = alongOffset(parts, offset, 0, place);
    const [hereImbalance, focusImbalance] = [here, focus].map((values) => riseOverHigher(place, values));
    return {
      place,
      centred,
      here,
      focus,
      hereImbalance: hereImbalance!,
      focusImbalance: focusImbalance!,
    };
  },
  shownAs: ({ hereImbalance, focusImbalance }) =>
    `${percent(hereImbalance)} higher on one side here, ${percent(focusImbalance)} in the focus`,
  formula: '|U(\\xi,0;x_0)|^2',
  source: 'collins1970',
  heavy: 'picture',
});

export const offCentreHere = derived({
  id: 'explain.offCentreHere',
  name: 'one side higher than the other at the workpiece',
  symbol: '\\Delta_\\text{off}',
  unit: '1',
  display: '%',
  digits: 2,
  zeroBelow: alike,
  about:
    'How much higher one side of the spot rises than the other at the workpiece, over the higher one, with the beam 5\u202f% of its 1/e² radius beside the middle of the plate; coherent light.',
  from: { offCentre },
  compute: ({ offCentre }) => offCentre.hereImbalance,
  formula: '\\frac{|I_\\text{right}-I_\\text{left}|}{\\max(I_\\text{right},I_\\text{left})}',
  source: 'definition',
});

export const offCentreFocus = derived({
  id: 'explain.offCentreFocus',
  name: 'one side higher than the other in the focus',
  symbol: '\\Delta_\\text{off,0}',
  unit: '1',
  display: '%',
  digits: 2,
  zeroBelow: alike,
  about:
    'The same in the focus: nothing there with a step of half a wave, where every spot is alike on both sides.',
  from: { offCentre },
  compute: ({ offCentre }) => offCentre.focusImbalance,
  formula: '\\frac{|I_\\text{right}-I_\\text{left}|}{\\max(I_\\text{right},I_\\text{left})}',
  source: 'definition',
});
