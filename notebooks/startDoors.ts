import { plateSource } from '../lib/design/plate.ts';
import type { Patch } from '../lib/graph/state.ts';

/** What the door “I have a plate” sets: the height of the step is then what somebody typed. */
export const plateDoor: Patch = { [plateSource.id]: 'made' };
