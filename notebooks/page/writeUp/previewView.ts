import type { Paper } from '../../paper/paper.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { type PaperView, renderPaper } from './paperView.ts';

/** The paper as it was worked out last; older than the design as soon as that changes. */
export function createPreview({ document, live }: PageContext, stops: (() => void)[]) {
  const said = element(document, 'p', { class: 'study-older', role: 'status' });
  const frame = element(document, 'div', {
    class: 'paper-frame',
    hidden: true,
    tabindex: 0,
    role: 'region',
    'aria-label': 'Preview',
  });
  let view: PaperView | undefined;
  const clear = () => {
    view?.close();
    view = undefined;
    frame.replaceChildren();
  };
  let revision = -1;
  const follow = () => {
    const older = view !== undefined && live.state().revision !== revision;
    frame.toggleAttribute('data-older', older);
    setText(said, older ? 'The preview is older than the design: show it again to bring it up to date.' : '');
  };
  stops.push(live.onState(follow) as () => void, clear);
  return {
    element: element(document, 'div', {}, said, frame),
    show(paper: Paper) {
      clear();
      frame.hidden = false;
      view = renderPaper(document, paper, frame.clientWidth - 48);
      frame.append(view.element);
      revision = live.state().revision;
      follow();
      frame.scrollTop = 0;
      frame.focus({ preventScroll: true });
      frame.scrollIntoView({ block: 'nearest' });
    },
  };
}
