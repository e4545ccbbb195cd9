import { initialState, sameDesign } from '../../../lib/graph/state.ts';
import type { Live } from '../live.ts';
import type { Notices } from './notices.ts';

/** Says that a design has just been opened, until undo has taken it back or all has been started afresh. */
export function showOpened(live: Live, notices: Notices, words: string): void {
  const initial = initialState(live.graph);
  const depth = live.history().past.length;
  const openedInitial = sameDesign(live.state(), initial);
  const takeAway = notices.show('opened', words);
  const stop = live.onState((state) => {
    const undone = live.history().past.length < depth;
    if (!undone && (openedInitial || !sameDesign(state, initial))) return;
    stop();
    takeAway();
  });
}
