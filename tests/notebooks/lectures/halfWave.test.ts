import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { designs as invented } from '../../../data/designs/make.ts';
import { designGraph } from '../../../lib/design/design.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { hasValue, type Outcome } from '../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../lib/graph/quantity.ts';
import { applyPatch, initialState, type Patch } from '../../../lib/graph/state.ts';
import type { LectureStep } from '../../../lib/graph/studies.ts';
import { blockQuantities } from '../../../notebooks/blockQuantities.ts';
import { documents } from '../../../notebooks/contents.ts';
import type { Block } from '../../../notebooks/document.ts';
import { halfWaveLecture } from '../../../notebooks/lectures/halfWave.ts';
import { ownContents } from '../../../notebooks/ownBlocks.ts';
import { ownProse } from '../../../notebooks/ownProse.ts';
import { readValues } from '../../../notebooks/prose.ts';
import { proseText } from '../../../notebooks/slotPieces.ts';
import { cases } from '../../cases.ts';
import { usualDesigns } from '../../design/inputs.ts';
import { answers } from './halfWaveAnswers.ts';
import { claims } from './halfWaveClaims.ts';
import { wordsOf } from './halfWaveStep.ts';

const { steps } = halfWaveLecture;
const ids = steps.map(({ id }) => id);
type OutcomeOf = (quantity: Quantity) => Outcome;

/** Outcomes of a step over whatever design the lecture is kept with. */
function outcomesOver(design: Patch, { sets = {} }: LectureStep): OutcomeOf {
  const state = applyPatch(designGraph, applyPatch(designGraph, initialState(designGraph), design), sets);
  const engine = createEngine(designGraph, state.inputs);
  return ({ id }) => engine.evaluate([id])[id]!;
}

const contentsOf = ({ pieces }: LectureStep) =>
  ownContents(designGraph, documents, pieces, (_, place) => `piece-${place}`);

/** The quantities that a step shows, and a chart's results. */
function shownBy(step: LectureStep): readonly Quantity[] {
  const found = contentsOf(step).flatMap((content) => {
    if (content.kind === 'problem') return [];
    return content.kind === 'chart' ? content.plan.results : blockQuantities(content.block);
  });
  const notes = [step.notes ?? '', step.ask?.question ?? ''].map((text) => ownProse(designGraph, text));
  const inWords = notes.flatMap(({ slots }) =>
    slots.flatMap((slot) => (slot.slot === 'sentence' ? slot.also : [])),
  );
  return [...new Set([...found, ...inWords])];
}

const wordsIn = (text: string) => text.split(/\s+/).filter((word) => word !== '').length;

describe('the lecture that ships', () => {
  it('takes forty minutes, one idea on a screen, each with its own id', () => {
    expect(halfWaveLecture.id).toBe('half-a-wave');
    expect(steps.reduce((sum, { minutes = 0 }) => sum + minutes, 0)).toBe(40);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length).toBeGreaterThanOrEqual(16);
    expect(ids.length).toBeLessThanOrEqual(22);
    for (const { id, pieces, notes = '' } of steps) {
      const text = pieces.flatMap((piece) => ('text' in piece ? [piece.text] : [])).join(' ');
      expect(wordsIn(text), id).toBeLessThanOrEqual(45);
      expect(pieces.length, id).toBeLessThanOrEqual(3);
      expect(notes, id).toMatch(/\*\*(Watch for|Right):\*\*/);
      expect(notes, id).toMatch(/\*\*Watch for:\*\*/);
    }
  });

  it('asks the room at least six times before curves are drawn, and sets inputs', () => {
    const asking = steps.filter(({ ask }) => ask !== undefined);
    expect(asking.length).toBeGreaterThanOrEqual(6);
    for (const { id, ask, pieces } of asking) {
      expect(ask!.from, id).toBeLessThan(pieces.length);
      expect(ask!.options.length, id).toBeGreaterThan(1);
      // Nothing before it gives the answer away.
      expect(
        pieces.slice(0, ask!.from).map(({ kind }) => kind),
        id,
      ).toEqual(['text']);
    }
    expect(steps.filter(({ sets }) => Object.keys(sets ?? {}).length > 0).length).toBeGreaterThanOrEqual(6);
  });

  it.each(ids)('%s shows all of its pieces, and every value in its words', (id) => {
    const step = steps.find((one) => one.id === id)!;
    const outcomeOf = outcomesOver({}, step);
    for (const content of contentsOf(step)) {
      if (content.kind === 'problem') expect.fail(content.message);
      if (content.kind === 'block') checkBlock(content.block, outcomeOf);
      if (content.kind === 'chart')
        for (const value of content.plan.axes[0]!.values) {
          const over = outcomesOver(
            {},
            { ...step, sets: { ...step.sets, [content.plan.axes[0]!.input.id]: value } },
          );
          for (const result of content.plan.results)
            expect(over(result), `${result.id} at ${value}`).toHaveProperty('value');
        }
    }
    for (const text of [step.notes ?? '', step.ask?.question ?? '']) checkText(text, outcomeOf);
    for (const quantity of shownBy(step)) expect(outcomeOf(quantity), quantity.id).toHaveProperty('value');
  });

  it('shows the same over whatever design it is kept with', () => {
    const others: readonly Patch[] = [
      ...Object.values(invented).map(({ patch }) => patch),
      ...fc.sample(usualDesigns, { numRuns: cases(10, 2), seed: 9040 }),
    ];
    for (const step of steps) {
      const quantities = shownBy(step).filter(({ kind }) => kind === 'derived');
      const once = outcomesOver({}, step);
      for (const [i, other] of others.entries()) {
        const again = outcomesOver(other, step);
        const differ = quantities.filter((one) => JSON.stringify(once(one)) !== JSON.stringify(again(one)));
        expect(
          differ.map(({ id }) => id),
          `${step.id}, design ${i}`,
        ).toEqual([]);
      }
    }
  });

  it('has an answer to every question, and the notes say it', () => {
    const asking = steps.filter(({ ask }) => ask !== undefined);
    expect(Object.keys(answers).sort()).toEqual(asking.map(({ id }) => id).sort());
    for (const { id, ask, notes } of asking) {
      const right = ask!.options[answers[id]!()]!;
      expect(notes, id).toContain(`**Right:** ${right}.`);
    }
  });

  it.each(ids)('%s: what is said with a number or beside one is true', (id) => {
    let words = wordsOf(id);
    for (const [said, holds] of Object.entries(claims[id] ?? {})) {
      expect(words, said).toContain(said);
      expect(holds(), said).toBe(true);
    }
    for (const said of Object.keys(claims[id] ?? {})) words = words.replaceAll(said, '');
    const known = words.replace(/1\/e²|M²|IEC (TR )?60825-\d+|ISO 11553-1/g, '');
    expect(known.match(/.{0,30}\d.{0,10}/g) ?? []).toEqual([]);
  });
});

function checkText(text: string, outcomeOf: OutcomeOf): void {
  const said = proseText(ownProse(designGraph, text), outcomeOf);
  expect(said).not.toMatch(/there is no number|\{[a-z]+\.|NaN|undefined/);
}

function checkBlock(block: Block, outcomeOf: OutcomeOf): void {
  if (block.kind === 'prose')
    expect(proseText(block.prose, outcomeOf)).not.toMatch(/there is no number|\{[a-z]+\.|NaN/);
  if (block.kind !== 'figure') return;
  const read = readValues(block.from, outcomeOf);
  if (!('values' in read)) expect.fail(read.problem.message);
  expect(block.view(read.values).summary).not.toMatch(/NaN|undefined/);
  expect(hasValue(outcomeOf(Object.values(block.from)[0]!))).toBe(true);
}
