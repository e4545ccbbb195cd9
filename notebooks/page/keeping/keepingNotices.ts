import { initialState } from '../../../lib/graph/state.ts';
import type { Drafts } from '../controls/drafts.ts';
import type { Live } from '../live.ts';
import type { Keeping, KeepingStatus } from './keeping.ts';
import type { NoticeAction, Notices } from './notices.ts';

/** Says what the keeping has to say, and offers what can be done. */
export function showKeeping(keeping: Keeping, live: Live, drafts: Drafts, notices: Notices): void {
  const startAfresh = () => {
    drafts.restore([]);
    live.open(initialState(live.graph));
  };
  const afresh: NoticeAction = { words: 'Start afresh', act: startAfresh };
  const copy: NoticeAction = { words: 'Go on with a copy', act: () => void keeping.copy() };
  const show = () => {
    const { design, typed, trouble } = keeping.status();
    const actions = { own: [], copy: [], again: [afresh], elsewhere: [copy] }[design];
    const waiting = typed.map(({ input, text }) => [live.graph.quantities.get(input)!.name, text] as const);
    const words = [designWords(design, live.state().name), typedWords(waiting)];
    notices.show('design', words.filter((sentence) => sentence !== '').join(' '), actions);
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

/** Longer texts are cut in a notice; no number of a person has as many signs. */
const longestShown = 24;

/** What is said of texts that came back with the design and have not been taken; each with the name of its input. */
export function typedWords(typed: readonly (readonly [name: string, text: string])[]): string {
  if (typed.length === 0) return '';
  const texts = typed.map(([name, text]) => `‘${shortened(text)}’ for ${name}`).join(', ');
  const [stand, count, take] =
    typed.length === 1
      ? ['stands in its field', 'does not count yet: Enter takes it', 'drops it']
      : ['stand in their fields', 'do not count yet: Enter takes each', 'drops it'];
  return `What you were typing, ${texts}, ${stand} again and ${count}, Escape ${take}.`;
}

function shortened(text: string): string {
  return text.length > longestShown ? `${text.slice(0, longestShown)}…` : text;
}
