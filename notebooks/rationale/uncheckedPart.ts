import { hasValue, type ProblemNote } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import type { PaperBlock, Run } from '../paper/paper.ts';
import { writtenValue } from '../paper/writtenValue.ts';
import { listed } from '../shortTexts.ts';
import { notMeasured } from './measuredFiles.ts';
import { originsOf, type Standing } from './origins.ts';
import { type OwnTextName, ownTexts, type UseName, useNames } from './section.ts';
import type { ToldDesign } from './told.ts';

/** What the parts of a rationale lack, and the numbers that it reads. */
export interface Lacking {
  readonly problems: readonly ProblemNote[];
  readonly read: readonly Quantity[];
  readonly uses: readonly UseName[];
}

/** What nobody has checked: what was typed, what was not measured, where models are strained, and what has no value. */
export function uncheckedBlocks(told: ToldDesign, { problems, read, uses }: Lacking): PaperBlock[] {
  const items: Run[][] = [
    ...takenFrom(told, 'typed', 'Typed, with no measurement of this design behind it'),
    ...takenFrom(told, 'handbook', 'Taken from a handbook'),
    ...notMeasured(told.inputs, uses).map((text): Run[] => [{ text }]),
    ...problemItems(problems),
    ...withoutReason(told),
    ...leftOutItems(uses),
  ];
  const notes = noteItems(told, read);
  return [
    { kind: 'list', ordered: false, items },
    ...(notes.length === 0
      ? []
      : [
          { kind: 'paragraph', runs: [{ text: 'Where a model or a measurement is strained:' }] } as const,
          { kind: 'list', ordered: false, items: notes } as const,
        ]),
  ];
}

/** The numbers of one standing, with their values. */
function takenFrom(told: ToldDesign, standing: Standing, heading: string): Run[][] {
  const all = originsOf(told.inputs).filter((one) => one.standing === standing);
  if (all.length === 0) return [];
  const runs = all.flatMap(({ quantity }, i): Run[] => [
    { text: `${i === 0 ? '' : ', '}${quantity.name} ` },
    {
      text: writtenValue(quantity, told),
      ...(hasValue(told.outcomeOf(quantity)) ? { quantity: quantity.id } : {}),
    },
  ]);
  return [[{ text: `${heading}: ` }, ...runs, { text: '.' }]];
}

/** Each problem once; a problem of the program and one of the design read alike. */
function problemItems(problems: readonly ProblemNote[]): Run[][] {
  // What is not given says on a page where to enter it; on paper there is nothing to enter.
  const told = ({ kind, message }: ProblemNote) =>
    kind === 'absent' ? message.replace(/: .*$/s, '.') : message;
  const messages = new Set(problems.map(told));
  return [...messages].map((message): Run[] => [
    { text: 'Not worked out:', strong: true },
    { text: ` ${message}` },
  ]);
}

/** Why the design is as it is, in the person's own words: what of it was not written. */
function withoutReason({ studies }: ToldDesign): Run[][] {
  const asked: readonly OwnTextName[] = ['step', 'plane', 'fluence', 'spacing'];
  const missing = asked.filter((name) => (studies.texts[name] ?? '').trim() === '');
  if (missing.length === 0) return [];
  const names = listed(missing.map((name) => ownTexts[name].heading.toLowerCase()));
  return [[{ text: `No reason in the author’s own words is given for ${names}.` }]];
}

function leftOutItems(uses: readonly UseName[]): Run[][] {
  const left = (Object.keys(useNames) as UseName[]).filter((use) => !uses.includes(use));
  if (left.length === 0) return [];
  return [[{ text: `Not looked at here: ${listed(left.map((use) => useNames[use]))}.` }]];
}

/** Notes of the numbers read, each once with all numbers that it belongs to. */
function noteItems(told: ToldDesign, read: readonly Quantity[]): Run[][] {
  const byNote = new Map<string, string[]>();
  for (const quantity of read) {
    const outcome = told.outcomeOf(quantity);
    if (!hasValue(outcome) || outcome.note === undefined) continue;
    byNote.set(outcome.note, [...(byNote.get(outcome.note) ?? []), quantity.name]);
  }
  return [...byNote].map(([note, names]): Run[] => [
    { text: `${namesText(names)}:`, strong: true },
    { text: ` ${note}` },
  ]);
}

/** As many numbers are named with a note that many share. */
const mostNames = 4;
function namesText(names: readonly string[]): string {
  const more = names.length - mostNames;
  const text = listed(more > 0 ? [...names.slice(0, mostNames), `${more} more`] : names);
  return text.charAt(0).toUpperCase() + text.slice(1);
}
