import type { LectureStep } from '../../../../lib/graph/studies.ts';
import { stepSize } from '../../../lectures/lectureWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setAttributes, setText } from '../../element.ts';
import type { Dragging } from '../../studies/own/dragging.ts';
import { wordButton } from '../../studies/own/labelledField.ts';

/** What can be done with a step, by its place counted from 0. */
export interface StepActs {
  move(from: number, to: number): void;
  toggle(place: number): void;
  duplicate(place: number): void;
  addBelow(place: number): void;
  takeOut(place: number): void;
}

/** A step in the list of a lecture's steps; it stays while others come and go around it. */
export interface StepRow {
  readonly element: HTMLElement;
  /** Where its form is put while it is open. */
  readonly inside: HTMLElement;
  refresh(step: LectureStep, place: number, count: number, isOpen: boolean): void;
  /** Puts the focus on one of its buttons, or on the next that can be pressed. */
  focus(act: keyof StepActs | 'up' | 'down'): void;
}

export function createStepRow({ document, live }: PageContext, acts: StepActs, dragging: Dragging): StepRow {
  let at = 0;
  const name = element(document, 'strong');
  const size = element(document, 'small');
  const buttons = {
    up: wordButton(document, 'Up', () => acts.move(at, at - 1)),
    down: wordButton(document, 'Down', () => acts.move(at, at + 1)),
    toggle: wordButton(document, 'Change', () => acts.toggle(at)),
    duplicate: wordButton(document, 'Duplicate', () => acts.duplicate(at)),
    addBelow: wordButton(document, 'Add below', () => acts.addBelow(at)),
    takeOut: wordButton(document, 'Take out', () => acts.takeOut(at)),
  };
  const bar = element(
    document,
    'div',
    { class: 'own-bar lecture-bar', role: 'group' },
    element(document, 'span', { class: 'own-bar-words' }, name, ' ', size),
    ...Object.values(buttons),
  );
  const inside = element(document, 'div', { class: 'lecture-inside' });
  const row = element(document, 'li', { class: 'own-piece lecture-step' }, bar, inside);
  dragging.attach(row, bar, () => at);
  return {
    element: row,
    inside,
    refresh(step, place, count, isOpen) {
      at = place;
      setText(name, `${place + 1}. ${step.title}`);
      setText(size, stepSize(live.graph, step));
      setAttributes(bar, { 'aria-label': `Step ${place + 1} of ${count}: ${step.title}` });
      setText(buttons.toggle, isOpen ? 'Close' : 'Change');
      setAttributes(buttons.toggle, { 'aria-expanded': String(isOpen) });
      for (const button of Object.values(buttons))
        setAttributes(button, { 'aria-label': `${button.textContent}: ${step.title}` });
      buttons.up.disabled = place === 0;
      buttons.down.disabled = place === count - 1;
      row.dataset['step'] = step.id;
      setAttributes(row, { 'data-open': isOpen });
    },
    focus(act) {
      const wanted = act === 'move' ? buttons.up : buttons[act];
      (wanted.disabled ? buttons.toggle : wanted).focus();
    },
  };
}
