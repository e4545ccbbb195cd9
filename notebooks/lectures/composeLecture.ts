import { type InputQuantity, isInput } from '../../lib/graph/quantity.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import type { Patch } from '../../lib/graph/state.ts';
import type { Lecture } from '../../lib/graph/studies.ts';
import type { ControlsBlock } from '../document.ts';
import { ownProse } from '../ownProse.ts';
import type { Paper, PaperBlock, Run } from '../paper/paper.ts';
import { citedIn } from '../paper/readPaper.ts';
import { writtenBlock } from '../paper/writtenBlock.ts';
import { writtenProse } from '../paper/writtenProse.ts';
import { writtenValue } from '../paper/writtenValue.ts';
import { factsOf, type Made } from '../rationale/facts.ts';
import { variedFigures } from '../varyFigures.ts';
import { withholds } from './giving.ts';
import { meantTime, minutesText } from './lectureTime.ts';
import type { ToldPiece, ToldStep } from './workOutLecture.ts';

const heading = (level: 1 | 2 | 3, text: string): PaperBlock => ({ kind: 'heading', level, text });
const note = (text: string): PaperBlock => ({ kind: 'paragraph', role: 'note', runs: [{ text }] });

/** A lecture on paper: each step for its own design, what it asks before what answers it; with `notes`, the lecturer's copy. */
export function composeLecture(
  lecture: Lecture,
  steps: readonly ToldStep[],
  made: Made,
  { notes }: { readonly notes: boolean },
): Paper {
  const about = (lecture.about ?? '').trim();
  const blocks: PaperBlock[] = [
    ...(about === '' ? [] : [{ kind: 'paragraph', runs: [{ text: about }] } as const]),
    ...(steps.length === 0 ? [note('This lecture has no steps yet.')] : []),
    ...steps.flatMap((step, place) => [
      ...stepBlocks(step, place, steps[place - 1]),
      ...(notes ? notesBlocks(lecture, step, place) : []),
    ]),
  ];
  return {
    title: titleOf(lecture),
    date: made.date,
    design: made.name,
    facts: [...(notes ? ([['Copy', 'for the lecturer, with notes']] as const) : []), ...factsOf(made)],
    blocks,
    references: citedIn(blocks),
  };
}

const titleOf = ({ title }: Lecture) => (title.trim() === '' ? 'A lecture without a title' : title);

function stepBlocks(told: ToldStep, place: number, before: ToldStep | undefined): PaperBlock[] {
  const { step, pieces, problem } = told;
  const from = step.ask ? Math.max(0, step.ask.from) : pieces.length;
  const title = step.title.trim() === '' ? 'Without a title' : step.title;
  return [
    heading(1, `${place + 1}. ${title}`),
    ...(problem === undefined ? setBlocks(told, before) : [note(problem)]),
    ...pieces.slice(0, from).flatMap((piece) => pieceBlocks(piece, told)),
    ...askBlocks(told),
    ...(step.ask && withholds(step) ? [heading(2, 'What it shows')] : []),
    ...pieces.slice(from).flatMap((piece) => pieceBlocks(piece, told)),
  ];
}

/** What is another here than in the step before, in a line; at first, than in the design that everybody begins with. */
function setBlocks({ told }: ToldStep, before: ToldStep | undefined): PaperBlock[] {
  const { inputs } = told.design;
  const others = before ? before.told.design.inputs : told.graph.initial;
  const set = [...told.graph.quantities.values()]
    .filter(isInput)
    .filter((input) => shownIn(input, inputs) !== shownIn(input, others));
  if (set.length === 0) return [];
  const begin = before ? 'Changed from the step before: ' : 'Where it begins: ';
  const runs = set.flatMap((quantity, i): Run[] => [
    { text: `${i === 0 ? begin : '; '}${quantity.name} ` },
    { text: writtenValue(quantity, told), quantity: quantity.id },
  ]);
  return [{ kind: 'paragraph', role: 'note', runs: [...runs, { text: '.' }] }];
}

const shownIn = (input: InputQuantity, inputs: Patch) => shownValue(input, { value: inputs[input.id] });

function askBlocks({ step: { ask }, told }: ToldStep): PaperBlock[] {
  if (!ask) return [];
  const options = ask.options.map((text): readonly Run[] => [{ text }]);
  return [
    heading(2, 'Before you look'),
    ...writtenProse(ownProse(told.graph, ask.question), told, { headings: 3 }),
    ...(options.length === 0 ? [] : [{ kind: 'list', ordered: true, items: options } as const]),
  ];
}

function notesBlocks(lecture: Lecture, { step, told }: ToldStep, place: number): PaperBlock[] {
  const meant = meantTime(lecture, place);
  const text = (step.notes ?? '').trim();
  const time =
    meant === undefined || step.minutes === undefined
      ? []
      : [note(`Meant to take ${minutesText(step.minutes)}, and to end at ${minutesText(meant.until)}.`)];
  if (text === '' && time.length === 0) return [];
  return [
    heading(2, 'For the lecturer'),
    ...time,
    ...writtenProse(ownProse(told.graph, text), told, { headings: 3 }),
  ];
}

function pieceBlocks({ content, varied }: ToldPiece, { told }: ToldStep): PaperBlock[] {
  if (content.kind === 'problem') return [note(content.message)];
  const written =
    content.kind === 'block'
      ? content.block.kind === 'controls'
        ? controlsBlocks(content.block, told)
        : writtenBlock(content.block, told, { headings: 2 })
      : (varied ? variedFigures(varied) : []).map(
          (spec, i): PaperBlock => ({
            kind: 'figure',
            id: `${content.id}-${i + 1}`,
            spec,
            shape: 'wide',
            caption: `${spec.title}. ${spec.summary}`,
          }),
        );
  if (written.length === 0) return [];
  const above = content.heading ? [heading(3, content.heading)] : [];
  const below: PaperBlock[] = content.caption
    ? [{ kind: 'paragraph', runs: [{ text: content.caption }] }]
    : [];
  return [...above, ...written, ...below];
}

/** What can be set on the page, with the values that it has. */
function controlsBlocks({ heading: caption, inputs }: ControlsBlock, told: ToldStep['told']): PaperBlock[] {
  const rows = inputs
    .filter(isInput)
    .map((input): (readonly Run[])[] => [
      [{ text: input.name }],
      [{ text: writtenValue(input, told), quantity: input.id }],
    ]);
  return rows.length === 0 ? [] : [{ kind: 'table', caption, columns: ['input', 'value'], rows }];
}
