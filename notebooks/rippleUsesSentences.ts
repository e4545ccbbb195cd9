import {
  cassieAngle,
  flatAngle,
  rippleDepth,
  rippleRoughness,
  wenzelAngle,
} from '../lib/design/rippleUses.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';

const right = Math.PI / 2;
/** Contact angle above which a surface is called superhydrophobic, rad. */
const shedding = (150 * Math.PI) / 180;

/** Changes of an angle below this are none that could be measured, rad. */
const leastTurn = (0.05 * Math.PI) / 180;

/** What the estimates make of a drop of water. */
export const wettingSaid = says(
  { flat: flatAngle, filled: wenzelAngle, onAir: cassieAngle, roughness: rippleRoughness },
  ({ flat, filled, onAir, roughness }) => {
    const area = phrase`Ripples of ${rippleDepth} depth have ${rippleRoughness} times the flat area (estimate).`;
    const turned = `${formatNumber(Math.abs(filled - flat) * (180 / Math.PI), 2)}°`;
    if (roughness < 1.001) return phrase`${area} That changes no contact angle: they are too shallow.`;
    if (Math.abs(filled - flat) < leastTurn)
      return phrase`${area} With the valleys filled the contact angle stays at ${flatAngle} within 0.05° (Wenzel, estimate).`;
    if (flat < right)
      return phrase`${area} With the valleys filled the contact angle falls by ${turned}, from ${flatAngle} to ${wenzelAngle} (Wenzel, estimate): the surface wets more, not less.`;
    if (Math.max(filled, onAir) < shedding)
      return phrase`${area} The contact angle rises from ${flatAngle} to ${wenzelAngle} with the valleys filled (Wenzel), or to ${cassieAngle} with air in them (Cassie and Baxter), estimates both: water stands higher and does not run off by that alone.`;
    return phrase`${area} The contact angle rises from ${flatAngle} to ${wenzelAngle} with the valleys filled (Wenzel), or to ${cassieAngle} with air in them (Cassie and Baxter), estimates both. One of them is beyond 150°; whether drops roll off depends on how they cling as they move, which neither tells.`;
  },
  [rippleDepth],
);
