import { longestText } from '../../../../lib/design/savedWritings.ts';
import type { LectureStep } from '../../../../lib/graph/studies.ts';
import { longestTitle } from '../../../../lib/studies/freshNames.ts';
import {
  noteStep,
  type StepPlace,
  stepAt,
  timeStep,
  titleStep,
} from '../../../../lib/studies/lectureSteps.ts';
import { textWarning } from '../../../lectures/makingWords.ts';
import type { PageContext, RenderBlock } from '../../context.ts';
import { element, setAttributes, setText } from '../../element.ts';
import { formPart } from '../../studies/formField.ts';
import { textInput } from '../../studies/own/labelledField.ts';
import { createOwnPage } from '../../studies/own/pageView.ts';
import { createAskFields } from './askFields.ts';
import { createKeptField, textArea } from './keptField.ts';
import { createSetFields } from './setFields.ts';
import { piecesId, stepEdits } from './stepPieces.ts';

/** All that a step holds, to be changed. */
export interface StepEditor {
  readonly element: HTMLElement;
  /** Shows the step as it stands at this place, counted from 0. */
  refresh(step: LectureStep, place: number): void;
  /** Takes what is being written; false where that cannot be, and its field says why. */
  finish(): boolean;
  focus(): void;
  close(): void;
}

/** `said` tells in words what was done. */
export function createStepEditor(
  context: PageContext,
  at: StepPlace,
  renderBlock: RenderBlock,
  drafts: Map<string, string>,
  said: (text: string) => void,
): StepEditor {
  const { document, live } = context;
  const held = () => stepAt(live.state(), at);
  const key = (what: string) => `${at.lecture}/${at.step}/${what}`;
  const titleInput = textInput(document, longestTitle);
  const title = createKeptField(document, drafts, {
    key: key('title'),
    label: 'Title of this step',
    control: titleInput,
    value: () => held().title,
    put: (text) => live.open(titleStep(live.state(), at, text)),
  });
  const minutesInput = textInput(document, 20);
  minutesInput.inputMode = 'decimal';
  const minutes = createKeptField(document, drafts, {
    key: key('minutes'),
    label: 'Minutes meant for it',
    control: minutesInput,
    value: () => String(held().minutes ?? ''),
    put: (text) => live.open(timeStep(live.state(), at, text)),
  });
  minutes.element.classList.add('lecture-minutes');
  const notes = createKeptField(document, drafts, {
    key: key('notes'),
    label: 'Notes for yourself: what to say',
    control: textArea(document, 5, longestText),
    help: 'Seen on the lecturer’s page only; the link for students leaves them out. {spot.width} gives a number, *words* are slanted.',
    value: () => held().notes ?? '',
    warn: (text) => textWarning(live.graph, text),
    put: (text) => live.open(noteStep(live.state(), at, text)),
  });
  const sets = createSetFields(context, at, drafts);
  const ask = createAskFields(context, at, drafts);
  const pieces = createOwnPage(context, renderBlock, said, stepEdits);
  const note = element(document, 'p', { class: 'own-said' });
  const see = element(document, 'a', { class: 'lecture-see' }, 'See this step as it is given');
  const parts = [title, minutes, notes, sets, ask];
  const refresh = (step: LectureStep, place: number) => {
    for (const field of [title, minutes, notes]) field.refresh();
    sets.refresh(step);
    ask.refresh(step);
    pieces.show(stepEdits.find(live.state(), piecesId(at)), true);
    setText(
      note,
      step.sets ? 'Drawn here over the open design; what the step sets counts when it is given.' : '',
    );
    setAttributes(see, { href: `#lectures/${at.lecture}/${place + 1}` });
  };
  return {
    element: element(
      document,
      'div',
      { class: 'lecture-editor' },
      element(document, 'div', { class: 'lecture-head' }, title.element, minutes.element),
      formPart(document, 'What stands on it', note, pieces.element),
      sets.element,
      ask.element,
      notes.element,
      see,
    ),
    refresh,
    finish: () => [...parts.map((part) => part.take()), pieces.finish()].every((taken) => taken),
    focus() {
      titleInput.focus();
      titleInput.select();
    },
    close() {
      // What cannot be taken waits in its field.
      for (const part of parts) part.take();
      pieces.close();
    },
  };
}
