import { mostSteps } from '../../../../lib/design/savedLectures.ts';
import type { StepDraft } from '../../../../lib/studies/lectures.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { wordButton } from '../../studies/own/labelledField.ts';
import type { LectureMemory } from '../lectureMemory.ts';
import { createPartsChoice } from './partsChoice.ts';

/** Where steps are added: an empty one, or parts of pages. */
export interface AddSteps {
  readonly element: HTMLElement;
  /** Says where they will stand: behind that many steps of `count`. */
  refresh(place: number, count: number): void;
  focus(): void;
}

/** `add` gets the steps that are to be made, `back` brings it to the end again. */
export function createAddSteps(
  context: PageContext,
  memory: LectureMemory,
  { add, back }: { add(steps: readonly StepDraft[]): void; back(): void },
): AddSteps {
  const { document } = context;
  const words = element(document, 'p', { class: 'own-kinds-words', tabindex: -1 });
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const choice = createPartsChoice(context, memory, add);
  const empty = wordButton(
    document,
    'Add an empty step',
    () => {
      try {
        setText(problem, '');
        add([{ title: 'New step', pieces: [] }]);
      } catch (error) {
        setText(problem, (error as Error).message);
      }
    },
    { main: true },
  );
  const leave = wordButton(document, 'Add at the end instead', back);
  const parts = element(
    document,
    'details',
    { class: 'lecture-from' },
    element(document, 'summary', {}, 'Steps from parts of pages'),
    choice.element,
  );
  const panel = element(
    document,
    'div',
    { class: 'own-kinds lecture-adding', role: 'group', 'aria-label': 'Add steps' },
    words,
    empty,
    leave,
    problem,
    parts,
  );
  return {
    element: panel,
    refresh(place, count) {
      const end = place >= count;
      const where =
        count === 0 ? 'The first steps' : end ? 'Add steps at the end' : `Add steps below step ${place}`;
      setText(words, count >= mostSteps ? `${mostSteps} steps stand here, and no more fit.` : where);
      leave.hidden = end;
      if (memory.parts.length > 0 || count === 0) parts.open = true;
      choice.refresh();
    },
    focus: () => empty.focus(),
  };
}
