import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { isInput, type Quantity } from '../../../lib/graph/quantity.ts';
import { documents } from '../../../notebooks/contents.ts';
import type { Block } from '../../../notebooks/document.ts';
import type { Lesson } from '../../../notebooks/lessons/lesson.ts';
import { lessons } from '../../../notebooks/lessons/lessons.ts';
import { ownProse } from '../../../notebooks/ownProse.ts';
import { type Prose, slotQuantities } from '../../../notebooks/prose.ts';
import { proseText } from '../../../notebooks/slotPieces.ts';
import { isNumberResult } from '../../../notebooks/studyNames.ts';
import { explains, wordById, words, wordsByLetter } from '../../../notebooks/words/words.ts';

const all = designGraph.quantities;
/** Ids that no word has to explain, each with its reason; none so far. */
const wordless: Readonly<Record<string, string>> = {};

function prosesOf(block: Block): Prose[] {
  if (block.kind === 'question') return [block.question, block.explanation];
  return block.kind === 'prose' || block.kind === 'caution' ? [block.prose] : [];
}

const proses = documents.flatMap(({ lead, blocks }) => [lead, ...blocks.flatMap(prosesOf)]);

describe('words', () => {
  it('are many, each with an id and a name of its own', () => {
    expect(words.length).toBeGreaterThan(90);
    expect(new Set(words.map(({ id }) => id)).size).toBe(words.length);
    expect(new Set(words.map(({ word }) => word.toLowerCase())).size).toBe(words.length);
    for (const { id } of words) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('name quantities and words that there are', () => {
    const ids = [...all.keys()];
    for (const { id, quantities = [], covers = [], see = [] } of words) {
      for (const one of quantities) expect(ids, id).toContain(one);
      for (const cover of covers) {
        const found = ids.filter((one) =>
          cover.endsWith('*') ? one.startsWith(cover.slice(0, -1)) : one === cover,
        );
        expect(found, `${id}: ${cover}`).not.toEqual([]);
      }
      for (const other of see) expect(wordById.has(other), `${id} leads to ${other}`).toBe(true);
      expect(see, id).not.toContain(id);
    }
  });

  it('stand behind every input and every number result that a document shows in its text', () => {
    const shown = proses.flatMap(({ slots }) => slots.flatMap(slotQuantities)).filter(isNumberResult);
    const asked = new Set<Quantity>([...shown, ...[...all.values()].filter(isInput)]);
    expect(asked.size).toBeGreaterThan(400);
    const without = [...asked].filter(({ id }) => !wordless[id] && !words.some((word) => explains(word, id)));
    expect(without.map(({ id }) => id)).toEqual([]);
  });

  it('say the custom wherever a width, a fluence or an irradiance is behind them', () => {
    const several = ({ unit, name }: Quantity) =>
      unit === 'J/m^2' || unit === 'W/m^2' || (unit === 'm' && /diameter|radius|width|kerf/.test(name));
    const found = words.filter(
      ({ word, quantities = [] }) =>
        /diameter|radius|width|fluence|irradiance/i.test(word) ||
        quantities.some((one) => several(all.get(one)!)),
    );
    expect(found.length).toBeGreaterThan(30);
    expect(found.filter(({ convention }) => !convention).map(({ id }) => id)).toEqual([]);
  });

  it('are there for every word that the text of a document offers to explain', () => {
    const terms = proses.flatMap(({ slots }) => slots.filter((slot) => slot.slot === 'term'));
    expect(terms.length).toBeGreaterThan(12);
    expect(terms.filter(({ word }) => !wordById.has(word))).toEqual([]);
  });

  it('are there for every word that a lesson offers to explain, and most lessons offer some', () => {
    const of = ({ tasks }: Lesson) =>
      tasks.flatMap(({ question }) => question.slots.filter((slot) => slot.slot === 'term'));
    for (const { word } of lessons.flatMap(of)) expect(wordById.has(word), word).toBe(true);
    expect(lessons.filter((lesson) => of(lesson).length === 0).length).toBeLessThanOrEqual(2);
  });

  it('stand in the order of the alphabet, under their letters', () => {
    const groups = [...wordsByLetter(words)];
    const letters = groups.map(([letter]) => letter);
    expect(letters).toEqual([...letters].sort());
    expect(letters[0]).toBe('0–9');
    for (const [letter, list] of groups) {
      for (const { word } of list) if (letter !== '0–9') expect(word.toUpperCase()[0], word).toBe(letter);
      const names = list.map(({ word }) => word.toLowerCase());
      expect(names).toEqual([...names].sort((a, b) => a.localeCompare(b, 'en')));
    }
    expect(groups.flatMap(([, list]) => list)).toEqual([...words]);
  });

  it('have meanings that can be read: sentences, equations that are closed, no empty ones', () => {
    const engine = createEngine(designGraph);
    for (const { id, meaning, convention = 'A.' } of words) {
      for (const text of [meaning, convention]) {
        const said = proseText(
          ownProse(designGraph, text),
          (quantity) => engine.evaluate([quantity.id])[quantity.id]!,
        );
        expect(said.trim(), id).toMatch(/^[“A-Z0-9].*[.]$/s);
        expect(said, id).not.toContain('$');
      }
      expect(meaning.length, id).toBeGreaterThan(20);
    }
  });
});
