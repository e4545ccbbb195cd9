import { designGraph } from '../../lib/design/design.ts';
import type { Graph } from '../../lib/graph/graph.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { Problem } from '../../lib/problem.ts';
import { extendGraph, ownQuantities } from '../../lib/studies/ownQuantities.ts';
import type { Paper } from '../paper/paper.ts';
import { composeRationale } from '../rationale/composeRationale.ts';
import { commandText, type Made, unnamed } from '../rationale/facts.ts';
import { workOut } from '../rationale/workOut.ts';
import { composeSetUpSheet } from '../setUpSheet/composeSetUpSheet.ts';
import { workOutSheet } from '../setUpSheet/workOutSheet.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { readOptions, required } from './options.ts';
import { checkPaperName, writePaper } from './writePaper.ts';

type Compose = (graph: Graph, design: DesignState, made: Made) => Paper;

/** `rationale`: writes the design rationale to a file, as what its name ends in. Promises what to say. */
export const rationale = paperCommand('rationale', (graph, design, made) =>
  composeRationale(workOut(graph, design), made),
);

/** `set-up-sheet`: the same with the sheet for the laser table. */
export const setUpSheet = paperCommand('set-up-sheet', (graph, design, made) =>
  composeSetUpSheet(workOutSheet(graph, design), made),
);

function paperCommand(name: string, compose: Compose) {
  return async (args: readonly string[], io: CommandIo): Promise<string> => {
    const options = readOptions(args, [...designOptions, 'to', 'date']);
    const to = required(options, 'to', `${name}.html`);
    checkPaperName(to);
    const date = dateOf(options.one('date'));
    const design = openDesign(options, io);
    const called = design.name?.trim() ? design.name : unnamed;
    const paper = compose(graphWithOwn(design), design, {
      name: called,
      date,
      command: commandOf(name, args),
    });
    const paths = await writePaper(paper, to, io);
    return `Written: ${paths.join(', ')}\n`;
  };
}

/** The graph with the person's own quantities, as far as their lines can be used. */
function graphWithOwn({ studies = noStudies }: DesignState): Graph {
  return extendGraph(designGraph, ownQuantities(designGraph, studies.ownLines).quantities);
}

function dateOf(text: string | undefined): string {
  if (text === undefined) return new Date().toISOString().slice(0, 10);
  const day = new Date(`${text}T00:00:00Z`);
  if (/^\d{4}-\d{2}-\d{2}$/.test(text) && day.toJSON()?.startsWith(text)) return text;
  throw new Problem('unreadable', `'${text}' is no day; write it as in 2026-03-01.`, {
    value: text,
    allowed: 'YYYY-MM-DD',
  });
}

/** What was typed, without where it was written to and when; of paths the last part. */
function commandOf(name: string, args: readonly string[]): string {
  const apart = args.filter((word) => !/^--(to|date)=/.test(word));
  const kept = apart.filter(
    (_, i) => !['--to', '--date'].includes(apart[i]!) && !['--to', '--date'].includes(apart[i - 1] ?? ''),
  );
  return commandText([
    'stepwell',
    name,
    ...kept.map((word) => (word.endsWith('.json') ? lastPart(word) : word)),
  ]);
}

const lastPart = (path: string) => path.split(/[/\\]/).at(-1)!;
