import type { kind } from '../../lib/design/spot.ts';
import type { ValueOf } from '../../lib/graph/quantity.ts';

/** What a profile is called by who looks at it: shallow and deep rings are both rings. */
export const seenOptions = {
  peaked: 'A spot that is brightest in the middle',
  flat: 'A spot with a flat top',
  ring: 'A bright ring with a darker middle',
} as const;

export type Seen = keyof typeof seenOptions;

/** The option that a kind of profile belongs to. */
export function seenAs(kindOfSpot: ValueOf<typeof kind>): Seen {
  if (kindOfSpot === 'peaked') return 'peaked';
  return kindOfSpot === 'flat-top' ? 'flat' : 'ring';
}
