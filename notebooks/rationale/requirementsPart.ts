import { hasValue } from '../../lib/graph/outcome.ts';
import type { Verdict } from '../../lib/studies/requirements.ts';
import type { PaperBlock, Run } from '../paper/paper.ts';
import { writtenValue } from '../paper/writtenValue.ts';
import {
  boundsText,
  failedFirst,
  howFarText,
  requirementsSaid,
  type Standing,
  standingOf,
  verdictWord,
} from '../requirementWords.ts';
import type { ToldDesign } from './told.ts';

/** Every requirement held against the design, the failed ones first. */
export function standings(told: ToldDesign): Standing[] {
  const all = told.studies.requirements.map((requirement) => {
    const quantity = told.graph.quantities.get(requirement.id);
    return standingOf(requirement, quantity, quantity && told.outcomeOf(quantity));
  });
  return failedFirst(all);
}

/** What is required of the design and whether it is met; a failed requirement stands first and is in bold type. */
export function requirementBlocks(told: ToldDesign): PaperBlock[] {
  const all = standings(told);
  if (all.length === 0)
    return [
      { kind: 'paragraph', role: 'note', runs: [{ text: 'No requirement has been put to this design.' }] },
    ];
  const verdicts = all.map(({ verdict }): Verdict => verdict);
  const failed = verdicts.includes('not met');
  const rows = all.map((standing) => rowOf(standing, told));
  return [
    {
      kind: 'paragraph',
      runs: [{ text: requirementsSaid(verdicts) }],
      ...(failed ? { role: 'failed' as const } : {}),
    },
    {
      kind: 'table',
      caption: 'What is required, and whether it is met',
      columns: ['number', 'required', 'value', 'verdict', 'distance', 'reason'],
      rows,
    },
    ...all.flatMap(noteOf),
  ];
}

function rowOf(standing: Standing, told: ToldDesign): (readonly Run[])[] {
  const { requirement, quantity, verdict } = standing;
  const strong = verdict === 'not met' ? { strong: true } : {};
  const known = quantity && hasValue(told.outcomeOf(quantity));
  const value: Run = known
    ? { text: writtenValue(quantity, told), quantity: quantity.id, ...strong }
    : { text: 'not known' };
  return [
    [{ text: quantity?.name ?? requirement.id, ...strong }],
    [{ text: boundsText(requirement, quantity) }],
    [value],
    [{ text: verdictWord(verdict).toLowerCase(), ...strong }],
    [{ text: howFarText(standing) }],
    requirement.reason === '' ? [] : [{ text: requirement.reason }],
  ];
}

/** A verdict that rests on a strained model says so. */
function noteOf({ quantity, outcome }: Standing): PaperBlock[] {
  if (!quantity || !outcome || !hasValue(outcome) || outcome.note === undefined) return [];
  return [{ kind: 'paragraph', role: 'note', runs: [{ text: `${quantity.name}: ${outcome.note}` }] }];
}
