import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { shownValue } from '../../../lib/graph/shown.ts';
import { applyPatch, initialState } from '../../../lib/graph/state.ts';
import type { Lecture } from '../../../lib/graph/studies.ts';
import { documents } from '../../../notebooks/contents.ts';
import { composeLecture } from '../../../notebooks/lectures/composeLecture.ts';
import { withheldContent } from '../../../notebooks/lectures/lectureContents.ts';
import { shippedLectures } from '../../../notebooks/lectures/shipped.ts';
import { workOutLecture } from '../../../notebooks/lectures/workOutLecture.ts';
import { ownContents } from '../../../notebooks/ownBlocks.ts';
import type { PaperBlock } from '../../../notebooks/paper/paper.ts';
import { runsIn, shownIn } from '../../../notebooks/paper/readPaper.ts';
import { trialLecture } from '../../trialLecture.ts';

const first = initialState(designGraph);
const made = { name: 'Trial', date: '2026-03-01', command: 'stepwell lecture trial.json lecture7' };
const write = (lecture: Lecture, notes = false) =>
  composeLecture(lecture, workOutLecture(designGraph, first, lecture), made, { notes });
const lectures = [trialLecture, ...shippedLectures];

/** The blocks of each step: a heading of the first level begins one. */
function stepsOf(blocks: readonly PaperBlock[]): PaperBlock[][] {
  const steps: PaperBlock[][] = [];
  for (const block of blocks)
    if (block.kind === 'heading' && block.level === 1) steps.push([block]);
    else steps.at(-1)?.push(block);
  return steps;
}
const text = (blocks: readonly PaperBlock[]) =>
  runsIn(blocks)
    .map((run) => ('text' in run ? run.text : ''))
    .join(' ');
const headings = (blocks: readonly PaperBlock[]) =>
  blocks.flatMap((block) => (block.kind === 'heading' ? [block.text] : []));

describe('a lecture on paper', () => {
  it.each(lectures)('$title: every value is that of a fresh engine under what its step sets', (lecture) => {
    const steps = stepsOf(write(lecture, true).blocks);
    expect(steps).toHaveLength(lecture.steps.length);
    let values = 0;
    lecture.steps.forEach(({ sets = {} }, i) => {
      const { inputs } = applyPatch(designGraph, first, sets);
      const engine = createEngine(designGraph, inputs);
      for (const run of runsIn(steps[i]!)) {
        if (!('text' in run) || run.quantity === undefined) continue;
        const quantity = designGraph.quantities.get(run.quantity)!;
        expect(run.text, `${i + 1}, ${run.quantity}`).toBe(
          shownValue(quantity, engine.evaluate([run.quantity])[run.quantity]!),
        );
        values += 1;
      }
    });
    expect(values).toBeGreaterThan(8);
  });

  it('charts are those of the step’s design, each with a name of its own', () => {
    const figures = write(trialLecture).blocks.filter((block) => block.kind === 'figure');
    expect(figures.map(({ spec }) => spec.title)).toEqual([
      'Fluence across the spot',
      'Fluence across the spot',
      'Spot width over focal length',
      'Fluence through the focus',
    ]);
    expect(new Set(figures.map(({ id }) => id)).size).toBe(4);
    const [profile, wider] = figures.map(({ spec }) => spec);
    expect(wider!.series[0]!.y).not.toEqual(profile!.series[0]!.y);
    // The width grows as the focal length does: a spot of a lens is f times what its angle is.
    const over = figures[2]!.spec.series[0]!;
    for (const [i, x] of over.x.entries()) expect(over.y[i]! / x).toBeCloseTo(over.y[0]! / over.x[0]!, 6);
  });

  it('asks before it shows, with the options in order', () => {
    const [, asked] = stepsOf(write(trialLecture).blocks);
    const kinds = asked!.map((block) => (block.kind === 'heading' ? block.text : block.kind));
    expect(kinds).toEqual([
      '2. Half a wave in the middle',
      'paragraph',
      'Before you look',
      'paragraph',
      'list',
      'What it shows',
      'figure',
      'paragraph',
    ]);
    expect(text(asked!)).toMatch(/It becomes brighter It becomes darker Nothing happens/);
  });

  it('tells what is another than in the step before, and the values of its inputs', () => {
    const steps = stepsOf(write(trialLecture).blocks);
    const wider = steps[2]!;
    expect(text(wider)).toMatch(/Changed from the step before: raw beam diameter\s+6\smm \./);
    expect(text(steps[3]!)).toMatch(/Changed from the step before: raw beam diameter\s+5\smm \./);
    for (const i of [0, 1, 4]) expect(text(steps[i]!)).not.toMatch(/Changed from|Where it begins/);
    const table = wider.find((block) => block.kind === 'table')!;
    expect(shownIn([table])).toEqual(['laser.beamDiameter', 'lens.focalLength']);
  });

  it('of a lecture that sets many inputs alike in each step, tells them once', () => {
    for (const lecture of shippedLectures) {
      const { steps } = lecture;
      const before = (i: number) =>
        i === 0 ? designGraph.initial : applyPatch(designGraph, first, steps[i - 1]!.sets ?? {}).inputs;
      stepsOf(write(lecture).blocks).forEach((blocks, i) => {
        const { inputs } = applyPatch(designGraph, first, steps[i]!.sets ?? {});
        const shown = (id: string, of: Readonly<Record<string, unknown>>) =>
          shownValue(designGraph.quantities.get(id)!, { value: of[id] });
        const others = Object.keys(inputs).filter((id) => shown(id, inputs) !== shown(id, before(i)));
        const line = blocks.find((block) => block.kind === 'paragraph' && block.role === 'note');
        const told = line ? runsIn([line]).flatMap((run) => ('text' in run ? (run.quantity ?? []) : [])) : [];
        expect(told.toSorted(), `step ${i + 1}`).toEqual(others.toSorted());
      });
    }
  });

  it('keeps notes and times for the lecturer’s copy', () => {
    const [students, own] = [write(trialLecture), write(trialLecture, true)];
    expect(text(students.blocks)).not.toMatch(/nobody knows|Meant to take/);
    expect(headings(students.blocks)).not.toContain('For the lecturer');
    expect(text(own.blocks)).toContain('Meant to take 4 min, and to end at 7 min.');
    expect(text(own.blocks)).toMatch(/Today’s spot is\s+19\.52.µm\s+wide, and nobody knows yet/);
    // The fourth and sixth step have a time and no words, the seventh neither.
    expect(headings(own.blocks).filter((one) => one === 'For the lecturer')).toHaveLength(6);
    expect(own.facts[0]).toEqual(['Copy', 'for the lecturer, with notes']);
    expect(students.facts[0]).toEqual(['Design', 'Trial']);
  });

  it('tells of what cannot be set or shown, and of a lecture without steps', () => {
    const odd: Lecture = {
      id: 'odd',
      title: ' ',
      steps: [
        {
          id: 'a',
          title: '',
          pieces: [{ kind: 'block', document: 'matching', block: 'nowhere' }],
          sets: { 'laser.beamDiameter': -1 },
        },
      ],
    };
    const paper = write(odd);
    expect(paper.title).toBe('A lecture without a title');
    expect(headings(paper.blocks)).toEqual(['1. Without a title']);
    expect(text(paper.blocks)).toMatch(/cannot be set.*nowhere.* is not there/s);
    expect(text(write({ ...odd, steps: [] }).blocks)).toBe('This lecture has no steps yet.');
  });

  it('says how far it is', () => {
    const parts: number[] = [];
    workOutLecture(designGraph, first, trialLecture, (part) => parts.push(part));
    expect(parts.at(-1)).toBe(1);
    expect(parts).toHaveLength(7);
  });
});

describe('what is withheld', () => {
  const contents = ownContents(
    designGraph,
    documents,
    trialLecture.steps.flatMap(({ pieces }) => pieces),
    (_, place) => `piece-${place}`,
  );

  it('a chart shows its axes and title, and nothing else stands there', () => {
    const kinds = contents.map((content) => {
      const withheld = withheldContent(content);
      return withheld?.kind === 'block' ? withheld.block.kind : withheld?.kind;
    });
    const shown = contents.map((content) => (content.kind === 'block' ? content.block.kind : content.kind));
    expect(kinds).toEqual(shown.map((kind) => (kind === 'figure' || kind === 'chart' ? kind : undefined)));
  });

  it('no number of the answer is left in it but those of the axes', () => {
    const engine = createEngine(designGraph);
    let charts = 0;
    for (const content of contents) {
      if (content.kind !== 'block' || content.block.kind !== 'figure') continue;
      const withheld = withheldContent(content)!;
      if (withheld.kind !== 'block' || withheld.block.kind !== 'figure') expect.fail('no chart');
      const from = Object.entries(content.block.from);
      const outcomes = engine.evaluate(from.map(([, { id }]) => id));
      const values = Object.fromEntries(
        from.map(([key, { id }]) => [key, (outcomes[id] as { readonly value: unknown }).value]),
      );
      const [whole, bare] = [content.block.view(values), withheld.block.view(values)];
      expect([bare.title, bare.x, bare.y, bare.summary]).toEqual([whole.title, whole.x, whole.y, '']);
      expect([bare.marks, bare.map, bare.moves, bare.data, bare.hint]).toEqual(Array(5).fill(undefined));
      for (const { x, y, y2, label } of bare.series)
        expect([x.length, y.length, y2, /\d/.test(label)]).toEqual([0, 0, undefined, false]);
      charts += 1;
    }
    expect(charts).toBe(3);
  });
});
