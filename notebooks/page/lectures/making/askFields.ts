import { longestText } from '../../../../lib/design/savedWritings.ts';
import type { LectureStep, OwnBlock } from '../../../../lib/graph/studies.ts';
import { askInStep, type StepPlace, stepAt } from '../../../../lib/studies/lectureSteps.ts';
import { documents } from '../../../contents.ts';
import { fillsScreen } from '../../../lectures/dividing.ts';
import { answersWarning, textWarning } from '../../../lectures/makingWords.ts';
import { pieceWords } from '../../../pieceWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { formPart } from '../../studies/formField.ts';
import { labelledField, wordButton } from '../../studies/own/labelledField.ts';
import { createKeptField, textArea } from './keptField.ts';
import type { StepPart } from './setFields.ts';

/** What the room is asked before the rest of a step is shown, its answers, and from which piece on it waits. */
export function createAskFields(context: PageContext, at: StepPlace, drafts: Map<string, string>): StepPart {
  const { document, live } = context;
  const key = (what: string) => `${at.lecture}/${at.step}/${what}`;
  const question = textArea(document, 2, longestText);
  const answers = textArea(document, 3, longestText);
  const from = element(document, 'select', { class: 'field-list' });
  const said = element(document, 'p', { class: 'own-said', role: 'status' });
  const held = () => stepAt(live.state(), at);
  const put = () => {
    const ask = { question: question.value, options: answers.value.split('\n'), from: Number(from.value) };
    live.open(askInStep(live.state(), at, ask));
    // One takes what stands in the other too.
    drafts.delete(key('question'));
    drafts.delete(key('answers'));
  };
  const fields = [
    createKeptField(document, drafts, {
      key: key('question'),
      label: 'Question',
      control: question,
      help: 'As in own text: {spot.width} gives a number, $w_0$ a symbol.',
      value: () => held().ask?.question ?? '',
      warn: (text) => textWarning(live.graph, text),
      put,
    }),
    createKeptField(document, drafts, {
      key: key('answers'),
      label: 'Answers to choose among',
      control: answers,
      help: 'One a line, up to nine. Without any the question is an open one.',
      value: () => held().ask?.options.join('\n') ?? '',
      warn: answersWarning,
      put() {
        // With the first question, when that is there.
        if (held().ask || question.value.trim() !== '') put();
        else drafts.set(key('answers'), answers.value);
      },
    }),
  ];
  from.addEventListener('change', () => {
    if (held().ask) put();
  });
  let begun = ['question', 'answers'].some((what) => drafts.has(key(what)));
  const begin = wordButton(document, 'Ask the room first', () => {
    begun = true;
    refresh(held());
    question.focus();
  });
  const end = wordButton(document, 'Do without the question', () => {
    begun = false;
    for (const what of ['question', 'answers']) drafts.delete(key(what));
    live.open(askInStep(live.state(), at, undefined));
    refresh(held());
    begin.focus();
  });
  const form = element(
    document,
    'div',
    { class: 'lecture-ask' },
    ...fields.map((field) => field.element),
    labelledField(
      document,
      'Waits until the room has answered',
      from,
      'Of a chart the axes are shown meanwhile, of all else nothing.',
    ),
    end,
    said,
  );
  let pieces: readonly OwnBlock[] | undefined;
  const offer = (step: LectureStep) => {
    if (pieces === step.pieces) return;
    pieces = step.pieces;
    const chosen = from.value;
    from.replaceChildren(
      ...pieces.map((piece, i) =>
        element(
          document,
          'option',
          { value: i },
          `${i + 1 === pieces!.length ? 'Piece' : 'From piece'} ${i + 1}: ${pieceWords(live.graph, documents, piece)}`,
        ),
      ),
      element(document, 'option', { value: pieces.length }, 'Nothing waits'),
    );
    from.value = chosen === '' || Number(chosen) > pieces.length ? String(usualFrom(pieces)) : chosen;
  };
  const refresh = (step: LectureStep) => {
    offer(step);
    if (step.ask) from.value = String(Math.min(step.ask.from, step.pieces.length));
    for (const field of fields) field.refresh();
    form.hidden = !step.ask && !begun;
    begin.hidden = !form.hidden;
    setText(said, step.pieces.length === 0 ? 'Nothing stands on the step yet that could wait.' : '');
  };
  return {
    element: formPart(document, 'Question to the room', begin, form),
    refresh,
    take: () => fields.every((field) => field.take()),
  };
}

/** What the question is mostly about waits, or where there is no such piece, nothing. */
function usualFrom(pieces: readonly OwnBlock[]): number {
  const found = pieces.findIndex((piece) => fillsScreen(documents, piece));
  return found < 0 ? pieces.length : found;
}
