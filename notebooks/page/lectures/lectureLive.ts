import { designGraph } from '../../../lib/design/design.ts';
import { openWorker } from '../heavy/openWorker.ts';
import { createLive, type Live } from '../live.ts';

let own: Live | undefined;

/** The live design of the lecture that is given, beside the open one; one for all, so that there is one worker of each kind. */
export function lectureLive(): Live {
  own ??= createLive(designGraph, undefined, openWorker);
  return own;
}
