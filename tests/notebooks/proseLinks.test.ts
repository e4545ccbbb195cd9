import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine, type Engine } from '../../lib/graph/engine.ts';
import { hasValue, valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, type DesignState, initialState, type Patch } from '../../lib/graph/state.ts';
import { conditionHolds } from '../../notebooks/condition.ts';
import { documents } from '../../notebooks/contents.ts';
import type { Block } from '../../notebooks/document.ts';
import { readValues, type SetsLink } from '../../notebooks/prose.ts';
import { linkRefusal } from '../../notebooks/slotPieces.ts';
import { plateDoor } from '../../notebooks/startDoors.ts';
import { long } from '../cases.ts';
import { linkChecks, type Read } from './linkChecks.ts';
import { linkDesigns } from './linkDesigns.ts';
import { foundAddresses, foundJumps, foundLinks } from './linkFinder.ts';

const initial = initialState(designGraph);
const readOf =
  (engine: Engine): Read =>
  <T>(id: string) =>
    valueOrThrow<T>(engine.evaluate([id])[id] as never);
/** What takes seconds a design is tried on few in the quick tests, and on none but the first seeded ones in the long. */
const many = /^seeded \d{2}|^seeded [2-9]/;
const slow: readonly (readonly [links: RegExp, designs: RegExp])[] = [
  [/^throughput\/comparison-said/, /^initial/],
  [/^throughput\/limits|^scale-up\//, /^initial|^a target/],
  [/^grooves\/engraving-plan/, /^initial|^cold-plate/],
  [/./, /./],
];
/** Designs with their engines, kept: what was searched for one link is there for the next. */
const tried = linkDesigns.map(([name, patch]) => {
  const state = applyPatch(designGraph, initial, patch);
  return { name, state, engine: createEngine(designGraph, state.inputs) };
});

/** True where the block of the link stands on the page. */
function isShown({ when, needs = [] }: Block, { inputs }: DesignState, engine: Engine): boolean {
  if (when && !conditionHolds(when, inputs)) return false;
  return needs.every(({ id }) => hasValue(engine.evaluate([id])[id]!));
}

/** What the link sets, undefined where it cannot be taken. */
function patchOf(link: SetsLink, engine: Engine): Patch | undefined {
  const outcomeOf = ({ id }: { readonly id: string }) => engine.evaluate([id])[id]!;
  if (linkRefusal(link, outcomeOf)) return undefined;
  const read = readValues(link.from, outcomeOf);
  return 'values' in read ? link.patch(read.values) : expect.fail('refused, and no reason told');
}

describe('links in prose that set inputs', () => {
  it('have a check each of what they promise', () => {
    const keys = [...new Set(foundLinks.map(({ key }) => key))];
    expect(keys.sort()).toEqual(Object.keys(linkChecks).sort());
  });

  it.each(foundLinks.map((one) => [one.key, one] as const))(
    '%s: it comes true',
    { timeout: 900_000 },
    (key, { link, block }) => {
      let taken = 0;
      const few = slow.find(([links]) => links.test(key))![1];
      const isQuick = few.source === '.';
      const designs = tried.filter(({ name }) => (long ? isQuick || !many.test(name) : few.test(name)));
      for (const { name, state, engine } of designs) {
        if (block && !isShown(block, state, engine)) continue;
        const patch = patchOf(link, engine);
        if (!patch) continue;
        const after = createEngine(designGraph, applyPatch(designGraph, state, patch).inputs);
        try {
          linkChecks[key]!(readOf(engine), readOf(after));
        } catch (error) {
          throw new Error(`in design ‘${name}’`, { cause: error });
        }
        taken += 1;
      }
      expect(taken, 'designs in which it can be taken').toBeGreaterThan(0);
    },
  );
});

describe('doors of the start page', () => {
  it('“I have a plate”: the height of the step is the typed one, whatever was there', () => {
    for (const { state } of tried) {
      const read = readOf(createEngine(designGraph, applyPatch(designGraph, state, plateDoor).inputs));
      expect(read('plate.stepHeight')).toBe(read('plate.madeHeight'));
    }
  });

  it('“Show me the example”: a 10 mm step of half a wave, a 10 mm beam at 1030 nm, a lens of 100 mm', () => {
    const read = readOf(createEngine(designGraph, initial.inputs));
    const about = ['plate.stepDiameter', 'plate.beamDiameter', 'laser.wavelength', 'lens.focalLength'];
    expect(about.map((id) => Number(read(id).toPrecision(12)))).toEqual([10e-3, 10e-3, 1030e-9, 0.1]);
    expect(read('plate.stepPhase') / Math.PI).toBeCloseTo(1, 9);
  });
});

describe('links in prose that lead somewhere', () => {
  it('lead to a document that there is, or to the web', () => {
    expect(foundAddresses.length).toBeGreaterThan(3);
    const known = new Set(documents.map(({ id }) => `#${id}`));
    const lost = foundAddresses.filter(
      ({ address }) => !known.has(address.split('/')[0]!) && !/^(https:\/\/|mailto:)/.test(address),
    );
    expect(lost).toEqual([]);
  });

  it('lead to a block of their document', () => {
    expect(foundJumps.length).toBeGreaterThan(0);
    for (const { document, to } of foundJumps)
      expect(
        document.blocks.map(({ id }) => id),
        `${document.id}: ${to}`,
      ).toContain(to);
  });
});
