import { derived } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import { depthEnds } from './depthOfFocus.ts';
import { family } from './family.ts';
import { workpieceZ } from './focus.ts';

export const acceptedEnds = derived({
  id: 'spot.acceptedEnds',
  name: 'planes accepted for the workpiece',
  symbol: 'z_\\text{a}, z_\\text{b}',
  unit: { from: 'm', to: 'm' },
  about:
    'Nearest and furthest plane z around the workpiece in which the plateau keeps its fluence within the tolerance of the depth of focus and the profile stays of the kind it has where the workpiece stands. Outside the range searched for kinds, the depth of focus alone.',
  from: { ends: depthEnds, stretches: family, z: workpieceZ },
  compute: ({ ends, stretches, z }) => {
    const here = stretches.find(({ zFrom, zTo }) => zFrom <= z && z <= zTo);
    if (here === undefined) return ends;
    return { from: Math.max(ends.from, here.zFrom), to: Math.min(ends.to, here.zTo) };
  },
  // As the ends of the stretches are shown, beside which these stand.
  shownAs: ({ from, to }) => [from, to].map((z) => formatQuantity(z, 'm', 'mm', 3)).join(' to '),
  formula: '[z_1,z_2]\\cap\\{z:\\text{same kind}\\}',
  source: 'definition',
});
