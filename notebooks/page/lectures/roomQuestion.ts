import type { RoomQuestion } from '../../../lib/graph/studies.ts';
import type { StepRoom } from '../../lectures/giving.ts';
import { ownProse } from '../../ownProse.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { renderProse } from '../proseView.ts';

/** What a step asks the room, with what most of it takes for right. */
export interface RoomQuestionView {
  readonly element: HTMLElement;
  show(room: StepRoom): void;
  close(): void;
}

/** The question with its options, each with the number of its key. */
export function createRoomQuestion(
  context: PageContext,
  { question, options }: RoomQuestion,
  chosen: (option: number) => void,
): RoomQuestionView {
  const { document, live } = context;
  const stops: (() => void)[] = [];
  const said = element(document, 'p', { class: 'off-screen', role: 'status' });
  const buttons = options.map((text, i) => {
    const button = element(
      document,
      'button',
      { type: 'button', 'aria-pressed': 'false' },
      element(document, 'span', { class: 'giving-number' }, `${i + 1}`),
      ' ',
      text,
    );
    button.addEventListener('click', () => chosen(i));
    return button;
  });
  const asked = element(document, 'div', { class: 'giving-asked' });
  asked.append(renderProse(context, ownProse(live.graph, question), stops));
  const list = element(
    document,
    'div',
    { class: 'giving-options', hidden: options.length === 0 },
    ...buttons,
  );
  return {
    element: element(
      document,
      'section',
      { class: 'giving-question', 'aria-label': 'Question to the room' },
      asked,
      list,
      said,
    ),
    show({ chosen: option }) {
      buttons.forEach((button, i) => {
        button.setAttribute('aria-pressed', String(i === option));
      });
      setText(said, option === undefined ? '' : `The room says: ${options[option]}`);
    },
    close: () => {
      for (const stop of stops) stop();
    },
  };
}
