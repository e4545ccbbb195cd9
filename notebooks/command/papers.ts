import { Problem } from '../../lib/problem.ts';
import { commandText, unnamed } from '../rationale/facts.ts';
import { type PaperName, paperOf } from '../rationale/writePapers.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { readOptions, required } from './options.ts';
import { checkPaperName, writePaper } from './writePaper.ts';

/** `rationale`: writes the design rationale to a file, as what its name ends in. Promises what to say. */
export const rationale = paperCommand('rationale');

/** `set-up-sheet`: the same with the sheet for the laser table. */
export const setUpSheet = paperCommand('set-up-sheet');

function paperCommand(name: PaperName) {
  return async (args: readonly string[], io: CommandIo): Promise<string> => {
    const options = readOptions(args, [...designOptions, 'to', 'date']);
    const to = required(options, 'to', `${name}.html`);
    checkPaperName(to);
    const date = dateOf(options.one('date'));
    const design = openDesign(options, io);
    const called = design.name?.trim() ? design.name : unnamed;
    const made = { name: called, date, command: commandOf(name, args) };
    const paths = await writePaper(paperOf({ name, design, made }), to, io);
    return `Written: ${paths.join(', ')}\n`;
  };
}

/** The day given, or today. */
export function dateOf(text: string | undefined): string {
  if (text === undefined) return new Date().toISOString().slice(0, 10);
  const day = new Date(`${text}T00:00:00Z`);
  if (/^\d{4}-\d{2}-\d{2}$/.test(text) && day.toJSON()?.startsWith(text)) return text;
  throw new Problem('unreadable', `'${text}' is no day; write it as in 2026-03-01.`, {
    value: text,
    allowed: 'YYYY-MM-DD',
  });
}

/** What was typed, without where it was written to and when; of the path of a design the last part. */
export function commandOf(name: string, args: readonly string[]): string {
  const apart = args.filter((word) => !/^--(to|date)=/.test(word));
  const kept = apart.filter(
    (word, i) => !/^--(to|date)$/.test(word) && !/^--(to|date)$/.test(apart[i - 1] ?? ''),
  );
  return commandText([
    'stepwell',
    name,
    ...kept.map((word) => (word.endsWith('.json') ? lastPart(word) : word)),
  ]);
}

const lastPart = (path: string) => path.split(/[/\\]/).at(-1)!;
