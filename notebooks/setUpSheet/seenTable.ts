import { family } from '../../lib/design/family.ts';
import { unshapedPeak, workpieceZ } from '../../lib/design/focus.ts';
import type { ValueOf } from '../../lib/graph/quantity.ts';
import { formatQuantity } from '../../lib/graph/units.ts';
import type { ChoiceRow, ChoicesSpec } from '../choicesSpec.ts';
import { choices } from '../document.ts';
import { uses } from '../kindUses.ts';
import { fluenceText, lengthText, percentText } from '../shortTexts.ts';
import { looks } from './setUpSentences.ts';

type Stretch = ValueOf<typeof family>[number];

/** Stretches to either side of the workpiece that are listed. */
const beside = 2;

/** What the camera shows from plane to plane: at the workpiece, to either side of it, and in the focus. */
export const seenTable = choices({
  id: 'seen-table',
  from: { stretches: family, z: workpieceZ, peak: unshapedPeak },
  view: ({ stretches, z, peak }): ChoicesSpec => {
    const listed = stretchesToSee(stretches, z);
    const more = stretches.length - listed.length;
    return {
      caption: 'What the camera shows with the plate in, from plane to plane',
      columns: ['z', 'kind', 'what is seen', 'width', 'largest dip', 'peak fluence'],
      rows: listed.map((one) => rowOf(one, one.zFrom <= z && z <= one.zTo, peak)),
      summary: `Width and peak fluence are those of the middle of each stretch, at the pulse energy of the design.${moreSaid(more)}`,
      hint: 'Choosing a stretch moves the workpiece to its middle.',
    };
  },
});

function moreSaid(count: number): string {
  if (count === 0) return '';
  return count === 1 ? ' One more stretch lies further off.' : ` ${count} more stretches lie further off.`;
}

/** The stretch of the workpiece with its neighbours, and the one that holds the focus; along z. */
export function stretchesToSee(stretches: readonly Stretch[], z: number): Stretch[] {
  const nearest = (place: number) =>
    stretches.reduce(
      (best, one, i) => (distance(one, place) < distance(stretches[best]!, place) ? i : best),
      0,
    );
  const here = nearest(z);
  const focus = nearest(0);
  return stretches.filter((_, i) => Math.abs(i - here) <= beside || i === focus);
}

const distance = ({ zFrom, zTo }: Stretch, z: number) => Math.max(zFrom - z, z - zTo, 0);

function rowOf(stretch: Stretch, chosen: boolean, peak: number): ChoiceRow {
  const { z, zFrom, zTo, kind, width, largestDip, relativePeak, edgeWidth } = stretch;
  const place = (at: number) => formatQuantity(at, 'm', 'mm', 3);
  return {
    key: zFrom,
    name: `${place(zFrom)} to ${place(zTo)}`,
    does: `Move the workpiece to ${place(z)}`,
    cells: [
      kind,
      looks[kind],
      lengthText(width),
      percentText(largestDip < 5e-4 ? 0 : largestDip),
      fluenceText(relativePeak * peak),
    ],
    more: [
      ['middle of the stretch', place(z)],
      [
        'edge, 90 to 10\u202f% of the peak, there',
        edgeWidth === undefined ? 'does not fall to a tenth' : lengthText(edgeWidth),
      ],
    ],
    about: `${uses[kind]} (Common practice, no source.)`,
    patch: { [workpieceZ.id]: z },
    chosen,
  };
}
