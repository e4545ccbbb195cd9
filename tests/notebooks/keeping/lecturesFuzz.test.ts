import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { writeDesignFile } from '../../../lib/design/designFile.ts';
import { initialState } from '../../../lib/graph/state.ts';
import { noStudies } from '../../../lib/graph/studies.ts';
import { createRandom } from '../../../lib/numerics/random.ts';
import { Problem } from '../../../lib/problem.ts';
import { documents } from '../../../notebooks/contents.ts';
import { readDesign } from '../../../notebooks/keeping/readDesign.ts';
import { stepSize } from '../../../notebooks/lectures/lectureWords.ts';
import { ownContents } from '../../../notebooks/ownBlocks.ts';
import { cases } from '../../cases.ts';
import { tableLecture } from '../../lectures.ts';

const start = initialState(designGraph);
const text = writeDesignFile(designGraph, { ...start, studies: { ...noStudies, lectures: [tableLecture] } });

/** What stands where something else belongs. */
const strange: readonly unknown[] = [
  null,
  -1,
  1e300,
  0.5,
  true,
  '',
  '<img src=x onerror=alert(1)>',
  '../..',
  'x'.repeat(30_000),
  [],
  [[]],
  {},
  { kind: 'text' },
  { value: 1, unit: 'kg' },
  { toString: 1 },
];

/** Every place in a value that can hold something else. */
function placesIn(value: unknown): { readonly holder: Record<string, unknown>; readonly key: string }[] {
  if (typeof value !== 'object' || value === null) return [];
  const holder = value as Record<string, unknown>;
  return Object.keys(holder).flatMap((key) => [{ holder, key }, ...placesIn(holder[key])]);
}

describe('a file whose lectures are damaged anywhere', () => {
  it('is refused in a sentence, or opens to what can be shown and is saved again as it was read', () => {
    const random = createRandom(7);
    let [refused, opened] = [0, 0];
    for (let i = 0; i < cases(3000, 300); i++) {
      const content = JSON.parse(text);
      const count = 1 + Math.floor(random.uniform() * 2);
      for (let change = 0; change < count; change++) {
        const places = placesIn(content.studies.lectures);
        // Where the only lecture was taken away, nothing is left to damage.
        if (places.length === 0) break;
        const { holder, key } = places[Math.floor(random.uniform() * places.length)]!;
        const other = strange[Math.floor(random.uniform() * strange.length)];
        if (random.uniform() < 0.2) delete holder[key];
        else holder[key] = structuredClone(other);
      }
      try {
        const read = readDesign(new TextEncoder().encode(JSON.stringify(content)), 'a.json');
        const lectures = read.studies!.lectures;
        for (const { steps } of lectures)
          for (const step of steps) {
            ownContents(designGraph, documents, step.pieces, (_piece, place) => `p${place}`);
            expect(stepSize(designGraph, step)).not.toMatch(/NaN|undefined|\[object/);
          }
        const again = writeDesignFile(designGraph, { ...start, studies: read.studies! });
        expect(readDesign(new TextEncoder().encode(again), 'a.json').studies!.lectures).toEqual(lectures);
        opened++;
      } catch (error) {
        expect(error, JSON.stringify(content.studies.lectures).slice(0, 400)).toBeInstanceOf(Problem);
        expect((error as Problem).message).toMatch(/a\.json/);
        expect((error as Problem).message).not.toMatch(/undefined|\[object|Invalid|Expected|[Rr]eceived/);
        refused++;
      }
    }
    // Both happen, or nothing was tried.
    expect(Math.min(refused, opened)).toBeGreaterThan(10);
  });
});
