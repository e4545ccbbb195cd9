import { expect, type Page, test } from '@playwright/test';
import { designGraph } from '../../lib/design/design.ts';
import { descendantsOf } from '../../lib/graph/descendants.ts';
import { hasValue, type Outcome } from '../../lib/graph/outcome.ts';
import { type FileInput, isInput, type Quantity } from '../../lib/graph/quantity.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import type { Patch } from '../../lib/graph/state.ts';
import { createRandom, type Random } from '../../lib/numerics/random.ts';
import type { pathElements } from '../../notebooks/beamPathInputs.ts';
import { conditionHolds } from '../../notebooks/condition.ts';
import { documents } from '../../notebooks/contents.ts';
import type {
  Block,
  ChoicesBlock,
  FigureBlock,
  FiguresBlock,
  StepwellDocument,
} from '../../notebooks/document.ts';
import { matching } from '../../notebooks/matching.ts';
import { missingResult } from '../../notebooks/missingResult.ts';
import {
  firstProblem,
  neededQuantities,
  type Prose,
  type ProseNode,
  readValues,
  type Sentence,
  slotQuantities,
  standIn,
} from '../../notebooks/prose.ts';
import { slotPieces } from '../../notebooks/slotPieces.ts';
import { cases } from '../cases.ts';
import {
  images,
  ladderTables,
  markPictures,
  rippleTables,
  spots,
  spotTables,
  tables,
} from '../design/files.ts';
import { micrographs } from '../design/micrographFiles.ts';
import { sections } from '../design/sectionFiles.ts';
import {
  chooseElement,
  createHeadless,
  openDocument,
  openMatching,
  plainPatch,
  readInputs,
  settled,
  typeInto,
} from './stepwellPage.ts';

// Lists of files are held equal in unit tests.
const inputs = designGraph.order.filter(isInput).filter((input) => input.kind !== 'list');
type OutcomeOf = (quantity: Quantity) => Outcome;

function prosesOf(block: Block): Prose[] {
  if (block.kind === 'question') return [block.question, block.explanation];
  return block.kind === 'prose' || block.kind === 'caution' ? [block.prose] : [];
}

/** Sentences in the order in which they are read. */
function sentencesOf(prose: Prose): Sentence[] {
  const read = (node: ProseNode): Sentence[] => {
    if ('slotIndex' in node) {
      const slot = prose.slots[node.slotIndex]!;
      return slot.slot === 'sentence' ? [slot] : [];
    }
    return 'children' in node ? node.children.flatMap(read) : [];
  };
  return prose.nodes.flatMap(read);
}

/** Files by the id of their input; pictures of spots stay outside, since they do not pass through JSON. */
const files: Readonly<Record<string, readonly unknown[]>> = {
  'laser.beamImage': images,
  'laser.causticTable': tables,
  'spot.measuredProfile': spots.filter(({ image }) => image === null),
  'focus.measuredCaustic': tables.map((table) => ({ ...table, diameterY: [] })),
  'threshold.spotTable': spotTables,
  'markPicture.picture': markPictures,
  'micrograph.picture': micrographs,
  'otherMicrograph.picture': micrographs,
  'ladder.table': ladderTables,
  'ripples.series': rippleTables,
  'groove.sectionFile': sections,
};

/** A value of an input: mostly in its usual span, else anywhere allowed, where the design often cannot work. */
function randomValue(random: Random, input: (typeof inputs)[number]): unknown {
  if (input.kind === 'choice') {
    const options = Object.keys(input.options);
    return options[Math.floor(random.between(0, options.length))]!;
  }
  if (input.kind === 'file') {
    if (random.uniform() < 0.35) return null;
    const chosen = files[input.id]!;
    return chosen[Math.floor(random.between(0, chosen.length))];
  }
  const { min, max } = input.range;
  const [low, high] = input.typical && random.uniform() < 0.9 ? input.typical : [min, max];
  const value =
    low > 0 && high > 10 * low
      ? Math.exp(random.between(Math.log(low), Math.log(high)))
      : random.between(low, high);
  return Math.min(max, Math.max(input.range.above ? min + 1e-9 * (max - min) : min, value));
}

/** Inputs that a measurement comes in by: a file, which may be taken out again, and the choices that make it count. */
const measuring: readonly (readonly [file: string, choices: Patch])[] = [
  ['laser.beamImage', { 'laser.beamSource': 'measured' }],
  ['laser.causticTable', { 'laser.ratioSource': 'measured' }],
  [
    'laser.causticTable',
    { 'laser.beamSource': 'caustic', 'expander.kind': 'lenses', 'expander.waistSource': 'measured' },
  ],
];

function randomPatch(random: Random): Patch {
  if (random.uniform() < 0.1) return { 'plate.apertureDiameter': 4e-3, 'plate.stepDiameter': 9e-3 };
  if (random.uniform() < 0.1) return designGraph.initial;
  if (random.uniform() < 0.45) {
    const [file, choices] = measuring[Math.floor(random.between(0, measuring.length))]!;
    const value = randomValue(random, designGraph.quantities.get(file) as FileInput);
    // Taken out one time in three, so that each state is met in few changes.
    const given = { [file]: random.uniform() < 1 / 3 ? null : value };
    return random.uniform() < 0.8 ? { ...given, ...choices } : given;
  }
  const count = 1 + Math.floor(random.between(0, 3));
  return Object.fromEntries(
    Array.from({ length: count }, () => {
      const input = inputs[Math.floor(random.between(0, inputs.length))]!;
      return [input.id, randomValue(random, input)];
    }),
  );
}

/** Image and caustic table by turns, twice given and twice taken out: each state is met however many inputs there are. */
function measuringPatch(random: Random, turn: number): Patch {
  const [file, choices] = measuring[turn % 2]!;
  const chosen = files[file]!;
  const value = turn % 4 < 2 ? chosen[Math.floor(random.between(0, chosen.length))] : null;
  return { [file]: value, ...choices };
}

/** What the page shows, read in one go. */
function readPage(page: Page) {
  return page.evaluate(() => {
    const pending = (element: Element) => element.hasAttribute('data-pending');
    return {
      revision: String(window.stepwell.state().revision),
      pending: document.querySelectorAll('[data-pending]').length,
      values: [...document.querySelectorAll('[data-quantity]')].map((element) => ({
        id: element.getAttribute('data-quantity')!,
        text: element.textContent,
        revision: element.getAttribute('data-revision'),
      })),
      sentences: [...document.querySelectorAll('.sentence')].map((element) => element.textContent),
      hidden: [...document.querySelectorAll<HTMLElement>('[id^="block-"]')]
        .filter((element) => element.hidden)
        .map(({ id }) => id.slice('block-'.length)),
      paragraphs: [...document.querySelectorAll<HTMLElement>('[data-needs]')].map(({ hidden }) => hidden),
      notes: [...document.querySelectorAll<HTMLElement>('[data-needs] + .stand-in')].map(
        (element) => element.textContent,
      ),
      missing: document.querySelector('.result-missing')?.firstChild?.firstChild?.textContent ?? '',
      figures: [...document.querySelectorAll('.figure-block')].map((holder) => ({
        revision: holder.getAttribute('data-revision'),
        hidden: holder.querySelector<HTMLElement>('.figure')!.hidden,
        summary: holder.querySelector('.figure-summary')!.textContent,
        standIn: holder.querySelector('.stand-in')!.textContent,
        pending: pending(holder),
      })),
      lists: [...document.querySelectorAll('.choices:not(.rows)')].map((holder) => {
        const stand = holder.querySelector<HTMLElement>('.stand-in')!;
        if (!stand.hidden) return [[stand.textContent]];
        const rows = [...holder.querySelectorAll('tbody tr:not(.choices-rest)')].map((row) => [
          ...[...row.children].slice(0, -1).map((cell) => cell.textContent),
          row.hasAttribute('aria-current') ? 'chosen' : '',
        ]);
        return [...rows, [holder.querySelector('.choices-summary')!.textContent]];
      }),
    };
  });
}

/** Sets a patch and reads at once what says that it is older than the inputs. */
function setAndReadPending(page: Page, patch: Patch) {
  return page.evaluate((plain) => {
    const revived = (value: unknown) => {
      const samples = (value as { samples?: number[] } | null)?.samples;
      return samples ? { ...(value as object), samples: Uint16Array.from(samples) } : value;
    };
    const change = Object.fromEntries(Object.entries(plain).map(([id, value]) => [id, revived(value)]));
    const pending = (element: Element) => element.hasAttribute('data-pending');
    const before = window.stepwell.state().inputs;
    window.stepwell.set(change);
    const now = window.stepwell.state().inputs;
    return {
      changed: Object.keys(now).filter((id) => !Object.is(now[id], before[id])),
      choices: Object.fromEntries(Object.entries(now).filter(([, value]) => typeof value === 'string')),
      values: [...document.querySelectorAll('[data-quantity]')]
        .filter((element) => !element.closest('.sentence'))
        .map((element) => [element.getAttribute('data-quantity')!, pending(element)] as const),
      sentences: [...document.querySelectorAll('.sentence')].map(pending),
      figures: [...document.querySelectorAll('.figure-block')].map(pending),
      panels: [...document.querySelectorAll('.figure-panels')].map(pending),
      lists: [...document.querySelectorAll('.choices')].map(pending),
      standIns: [...document.querySelectorAll('[data-needs] + .stand-in')].map(pending),
      all: document.querySelectorAll('[data-pending]').length,
    };
  }, plainPatch(patch));
}

/** What a document shows for a design, computed without a page. */
function checksOf(content: StepwellDocument) {
  const figures = content.blocks.filter((block): block is FigureBlock => block.kind === 'figure');
  const panels = content.blocks.filter((block): block is FiguresBlock => block.kind === 'figures');
  const lists = content.blocks.filter((block): block is ChoicesBlock => block.kind === 'choices');
  const proses = [content.lead, ...content.blocks.flatMap(prosesOf)];
  const sentences = proses.flatMap(sentencesOf);

  // What may stand in for a paragraph is as old as the paragraph.
  const paragraphs = proses.flatMap((prose) =>
    prose.nodes
      .filter((node) => 'tag' in node && !/^h\d$/.test(node.tag))
      .map((node) => neededQuantities(prose, [node]))
      .filter((needed) => needed.length > 0)
      .map((needed) => (content.result ? [...needed, content.result.quantity] : needed)),
  );

  function expectPending(shown: Awaited<ReturnType<typeof setAndReadPending>>): void {
    const touched = descendantsOf(designGraph, shown.changed, shown.choices);
    const hit = (quantities: readonly Quantity[]) => quantities.some(({ id }) => touched.has(id));
    const expectedFigures = figures.map((block) => hit(Object.values(block.from)));
    const expectedPanels = panels.map((block) => hit(Object.values(block.from)));
    const expectedLists = content.blocks.flatMap((block) =>
      block.kind === 'choices' || block.kind === 'rows' ? [hit(Object.values(block.from))] : [],
    );
    const expectedSentences = sentences.map((sentence) => hit(slotQuantities(sentence)));
    const expectedStandIns = paragraphs.map(hit);
    const expectedValues = shown.values.map(([id]) => [id, touched.has(id)]);
    expect(shown.values).toEqual(expectedValues);
    expect(shown.sentences).toEqual(expectedSentences);
    expect(shown.figures).toEqual(expectedFigures);
    expect(shown.panels).toEqual(expectedPanels);
    expect(shown.lists).toEqual(expectedLists);
    expect(shown.standIns).toEqual(expectedStandIns);
    const count = [
      ...expectedFigures,
      ...expectedPanels,
      ...expectedLists,
      ...expectedSentences,
      ...expectedStandIns,
      ...expectedValues.map(([, is]) => is),
    ];
    expect(shown.all).toBe(count.filter(Boolean).length);
  }

  /** What a figure says for outcomes: its summary, or what stands in for it. */
  function expectedFigure(
    block: FigureBlock,
    outcomeOf: OutcomeOf,
  ): { summary: string } | { standIn: string } {
    const read = readValues(block.from, outcomeOf);
    if ('values' in read) return { summary: block.view(read.values).summary };
    return { standIn: standIn(read.problem, problemOfResult(outcomeOf))! };
  }

  function problemOfResult(outcomeOf: OutcomeOf) {
    return content.result && firstProblem([content.result.quantity], outcomeOf);
  }

  /** What stands in for each paragraph that needs values, in the order of the page. */
  function expectedStandIns(outcomeOf: OutcomeOf): (string | undefined)[] {
    return proses.flatMap((prose) =>
      prose.nodes.flatMap((node) => {
        if (!('tag' in node) || /^h\d$/.test(node.tag)) return [];
        const needed = neededQuantities(prose, [node]);
        if (needed.length === 0) return [];
        return [standIn(firstProblem(needed, outcomeOf), problemOfResult(outcomeOf))];
      }),
    );
  }

  /** Ids of the blocks whose condition does not hold or that need what has no value. */
  function hiddenBlocks(inputs: Patch, outcomeOf: OutcomeOf): string[] {
    return content.blocks
      .filter(
        ({ when, needs = [] }) =>
          (when && !conditionHolds(when, inputs)) ||
          !needs.every((quantity) => hasValue(outcomeOf(quantity))),
      )
      .map(({ id }) => id);
  }

  async function expectHeadless(page: Page, inputs: Patch, outcomeOf: OutcomeOf): Promise<void> {
    const shown = await readPage(page);
    expect(shown.hidden).toEqual(hiddenBlocks(inputs, outcomeOf));
    expect(shown.pending, 'nothing is marked as older than the inputs').toBe(0);
    for (const { id, text, revision } of shown.values) {
      const quantity = designGraph.quantities.get(id)!;
      expect(text, id).toBe(shownValue(quantity, outcomeOf(quantity)));
      expect(revision, `revision of ${id}`).toBe(shown.revision);
    }
    expect(shown.sentences).toEqual(
      sentences.map((sentence) =>
        slotPieces(sentence, outcomeOf)
          .map((piece) => piece.text)
          .join(''),
      ),
    );
    const standIns = expectedStandIns(outcomeOf);
    expect(shown.paragraphs).toEqual(standIns.map((text) => text !== undefined));
    expect(shown.notes).toEqual(standIns.map((text) => text ?? ''));
    const missing = problemOfResult(outcomeOf);
    expect(shown.missing).toBe(missing ? missingResult(designGraph, content.result!, missing).text : '');
    expect(shown.figures).toHaveLength(figures.length);
    shown.figures.forEach((figure, i) => {
      const expected = expectedFigure(figures[i]!, outcomeOf);
      expect(figure.revision, `revision of ${figures[i]!.id}`).toBe(shown.revision);
      expect(figure.hidden, figures[i]!.id).toBe('standIn' in expected);
      if ('standIn' in expected) expect(figure.standIn).toBe(expected.standIn);
      else expect(figure.summary).toBe(expected.summary);
    });
    expect(shown.lists).toEqual(lists.map((block) => expectedList(block, outcomeOf)));
  }

  /** What a list says for outcomes: its rows, or what stands in for it. */
  function expectedList(block: ChoicesBlock, outcomeOf: OutcomeOf): string[][] {
    const read = readValues(block.from, outcomeOf);
    if (!('values' in read)) return [[standIn(read.problem, problemOfResult(outcomeOf))!]];
    const { rows, summary } = block.view(read.values);
    return [...rows.map(({ name, cells, chosen }) => [name, ...cells, chosen ? 'chosen' : '']), [summary]];
  }

  return { expectPending, expectHeadless };
}

/** What is measured in these inputs, and whether its file is there. */
function measuredStates(inputs: Patch): string[] {
  const is = (id: string) => (inputs[id] === null ? 'missing' : 'there');
  const caustic = inputs['laser.ratioSource'] === 'measured' || inputs['laser.beamSource'] === 'caustic';
  return [
    ...(inputs['laser.beamSource'] === 'measured' ? [`image ${is('laser.beamImage')}`] : []),
    ...(caustic ? [`table ${is('laser.causticTable')}`] : []),
  ];
}

const { expectHeadless } = checksOf(matching);

for (const content of documents)
  test(`${content.title}: the page shows what a computation without a page gives, after every random change`, async ({
    page,
  }) => {
    test.setTimeout(1_800_000);
    await openDocument(page, content.id);
    const { expectPending, expectHeadless } = checksOf(content);
    const random = createRandom(20);
    const headless = createHeadless();
    const met: string[] = [];
    for (let i = 0; i < cases(200, 40); i++) {
      const patch = i % 5 === 0 ? measuringPatch(random, i / 5) : randomPatch(random);
      const said = JSON.stringify(patch, (_, value) => value?.name ?? value);
      await test.step(`change ${i}: ${said}`, async () => {
        expectPending(await setAndReadPending(page, patch));
        await settled(page);
        const read = await readInputs(page);
        await expectHeadless(page, read, headless(read));
        met.push(...measuredStates(read));
      });
    }
    const counts = ['image there', 'image missing', 'table there', 'table missing'].map(
      (state) => `${state}: ${met.filter((one) => one === state).length}`,
    );
    console.log(counts.join(', '));
    for (const count of counts) expect(count).not.toMatch(/: [01]$/);
  });

test('the last of several changes at once is the one shown', async ({ page }) => {
  await openMatching(page);
  const random = createRandom(21);
  const headless = createHeadless();
  for (let i = 0; i < cases(20, 5); i++) {
    const diameters = Array.from({ length: 4 }, () => random.between(2e-3, 9e-3));
    await page.evaluate(async (list) => {
      for (const [j, diameter] of list.entries()) {
        window.stepwell.set({ 'laser.beamDiameter': diameter });
        // A frame between some of them lets a computation begin that is then overtaken.
        if (j === 1) await new Promise(requestAnimationFrame);
      }
      await window.stepwell.settled();
    }, diameters);
    const read = await readInputs(page);
    expect(read['laser.beamDiameter']).toBe(diameters.at(-1));
    await expectHeadless(page, read, headless(read));
  }
});

test('what is typed into fields is what is computed', async ({ page }) => {
  test.setTimeout(600_000);
  await openMatching(page);
  const random = createRandom(22);
  const headless = createHeadless();
  const typed: readonly (readonly [keyof typeof pathElements, string, number, number, string])[] = [
    ['laser', 'laser.beamDiameter', 2, 9, 'mm'],
    ['laser', 'laser.wavelength', 0.343, 1.064, 'um'],
    ['laser', 'laser.pulseEnergy', 2, 90, 'µJ'],
    ['plate', 'plate.stepDiameter', 0.2, 1.2, 'cm'],
    ['plate', 'plate.apertureDiameter', 0.3, 0.9, 'in'],
    ['lens', 'lens.focalLength', 60, 250, 'mm'],
    ['workpiece', 'workpiece.z', -200, 200, 'um'],
  ];
  for (let i = 0; i < cases(42, 14); i++) {
    const [element, id, low, high, unit] = typed[i % typed.length]!;
    const text = `${random.between(low, high).toFixed(3)} ${unit}`;
    await test.step(`${id}: ${text}`, async () => {
      const before = (await readInputs(page))[id];
      await chooseElement(page, element);
      await typeInto(page, id, i % 2 ? text.replace('.', ',') : text);
      await settled(page);
      const read = await readInputs(page);
      expect(read[id]).not.toBe(before);
      await expectHeadless(page, read, headless(read));
    });
  }
});

test('a value that is not allowed changes nothing', async ({ page }) => {
  await openMatching(page);
  for (const patch of [
    { 'laser.beamDiameter': -1 },
    { 'laser.beamDiameter': 4e-3, 'plate.glass': 'wood' },
    { 'spot.width': 1e-5 },
    { 'no.such': 1 },
  ]) {
    const [before, after, message] = await page.evaluate((change) => {
      const first = JSON.stringify(window.stepwell.state());
      try {
        window.stepwell.set(change);
        return [first, '', ''];
      } catch (error) {
        return [first, JSON.stringify(window.stepwell.state()), (error as Error).message];
      }
    }, patch);
    expect(after).toBe(before);
    expect(message).toMatch(/\.$/);
    expect((await readPage(page)).pending).toBe(0);
  }
});
