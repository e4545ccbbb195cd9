import { initialState } from '../../../lib/graph/state.ts';
import type { Live } from '../live.ts';
import type { Keeping, KeepingStatus } from './keeping.ts';
import type { NoticeAction, Notices } from './notices.ts';

/** Says what the keeping has to say, and offers what can be done. */
export function showKeeping(keeping: Keeping, live: Live, notices: Notices): void {
  const afresh: NoticeAction = { words: 'Start afresh', act: () => live.open(initialState(live.graph)) };
  const copy: NoticeAction = { words: 'Go on with a copy', act: () => void keeping.copy() };
  const show = () => {
    const { design, trouble } = keeping.status();
    const actions = { own: [], copy: [], again: [afresh], elsewhere: [copy] }[design];
    notices.show('design', designWords(design, live.state().name), actions);
    notices.show('trouble', trouble);
  };
  keeping.onStatus(show);
  show();
}

/** What is said of the open design; nothing where it is this tab's alone. */
export function designWords(design: KeepingStatus['design'], name = ''): string {
  const named = name === '' ? '' : `, ‘${name}’,`;
  switch (design) {
    case 'own':
      return '';
    case 'again':
      return `Your last design${named} is open again.`;
    case 'elsewhere':
      return `This design${named} is open in another tab too. What you change here goes into a copy of its own; the other tab keeps what it has.`;
    case 'copy':
      return 'This tab goes on with a copy of its own; the other tab keeps the design as it is there.';
  }
}
