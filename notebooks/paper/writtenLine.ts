import { hasValue } from '../../lib/graph/outcome.ts';
import type { Prose, ProseNode, Slot } from '../prose.ts';
import { slotPieces } from '../slotPieces.ts';
import type { Run } from './paper.ts';
import { type Told, writtenValue } from './writtenValue.ts';

/** A piece of a line on its way into a paper; `offers` marks words that can be clicked on a page. */
interface Part {
  readonly run: Run;
  readonly offers?: boolean;
}

interface Marked {
  readonly strong?: boolean;
  readonly emphasis?: boolean;
}

/**
 * The nodes of a line as runs. Sentences with words that set inputs or lead elsewhere on a page are left out: on paper
 * there is nothing to click.
 */
export function writtenLine(prose: Prose, nodes: readonly ProseNode[], told: Told): Run[] {
  const parts = nodes.flatMap((node) => partsOf(prose, node, told, {}));
  const kept = sentencesOf(parts).filter((sentence) => !sentence.some(({ offers }) => offers));
  return trimmed(joined(kept.flatMap((sentence, i) => spaced(sentence, kept[i - 1]).map(({ run }) => run))));
}

/** A sentence behind another: the space between them may have gone with what was left out. */
function spaced(sentence: readonly Part[], before: readonly Part[] | undefined): readonly Part[] {
  const [first] = sentence;
  const last = before?.at(-1)?.run;
  const apart = !last || !first || endsIn(last, /\s$/) || endsIn(first.run, /^\s/);
  return apart ? sentence : [{ run: { text: ' ' } }, ...sentence];
}

const endsIn = (run: Run, space: RegExp) => 'text' in run && space.test(run.text);

function partsOf(prose: Prose, node: ProseNode, told: Told, marked: Marked): Part[] {
  if ('slotIndex' in node) return slotParts(prose.slots[node.slotIndex]!, told, marked);
  if ('text' in node) return [{ run: { text: node.text, ...marked } }];
  const inside: Marked =
    node.tag === 'strong'
      ? { ...marked, strong: true }
      : node.tag === 'em'
        ? { ...marked, emphasis: true }
        : marked;
  return node.children.flatMap((child) => partsOf(prose, child, told, inside));
}

function slotParts(slot: Slot, told: Told, marked: Marked): Part[] {
  if (slot.slot === 'math') return [{ run: { tex: slot.tex } }];
  if (slot.slot === 'link' || slot.slot === 'jump')
    return [{ run: { text: slot.text, ...marked }, offers: true }];
  return slotPieces(slot, (quantity) => told.outcomeOf(quantity)).map((piece) => {
    if (!('quantity' in piece)) return { run: { text: piece.text, ...marked } };
    const known = hasValue(told.outcomeOf(piece.quantity));
    const text = writtenValue(piece.quantity, told);
    return { run: { text, ...marked, ...(known ? { quantity: piece.quantity.id } : {}) } };
  });
}

/** Parts by sentence, cut behind full stops; abbreviations part a sentence too, which does no harm. */
function sentencesOf(parts: readonly Part[]): Part[][] {
  const sentences: Part[][] = [[]];
  for (const part of parts) {
    const pieces = 'text' in part.run && !part.run.quantity ? cut(part.run.text) : undefined;
    if (!pieces) sentences.at(-1)!.push(part);
    else
      for (const text of pieces) {
        const last = sentences.at(-1)!.at(-1)?.run;
        const ended = /^\s/.test(text) && last !== undefined && 'text' in last && isEnd(last.text);
        if (ended || (last && 'text' in last && /[.!?][”’)]*\s+$/.test(last.text))) sentences.push([]);
        sentences.at(-1)!.push({ ...part, run: { ...part.run, text } });
      }
  }
  return sentences;
}

const cut = (text: string): string[] => text.split(/(?<=[.!?][”’)]*\s+)(?=\S)/);
const isEnd = (text: string): boolean => /[.!?][”’)]*$/.test(text);

/** Neighbours of plain words with the same marks as one. */
function joined(runs: readonly Run[]): Run[] {
  const all: Run[] = [];
  for (const run of runs) {
    const last = all.at(-1);
    const alike = last && 'text' in last && 'text' in run && sameMarks(last, run);
    if (alike) all[all.length - 1] = { ...last, text: last.text + run.text };
    else all.push(run);
  }
  return all.filter((run) => !('text' in run) || run.text !== '');
}

type TextRun = Extract<Run, { readonly text: string }>;

function sameMarks(one: TextRun, other: TextRun): boolean {
  return (
    one.quantity === undefined &&
    other.quantity === undefined &&
    one.strong === other.strong &&
    one.emphasis === other.emphasis
  );
}

/** Without space at either end, and without double spaces where a sentence was left out. */
function trimmed(runs: readonly Run[]): Run[] {
  const all = runs.map((run) =>
    'text' in run && run.quantity === undefined ? { ...run, text: run.text.replace(/ {2,}/g, ' ') } : run,
  );
  const first = all[0];
  if (first && 'text' in first) all[0] = { ...first, text: first.text.trimStart() };
  const last = all.at(-1);
  if (last && 'text' in last) all[all.length - 1] = { ...last, text: last.text.trimEnd() };
  return all.filter((run) => !('text' in run) || run.text !== '');
}

/** The words of a line, for captions and tests; equations as TeX. */
export function lineText(runs: readonly Run[]): string {
  return runs.map((run) => ('text' in run ? run.text : 'tex' in run ? run.tex : '')).join('');
}
