import { parseHTML } from 'linkedom';
import { afterEach, expect, it, vi } from 'vitest';
import { createGraph } from '../../lib/graph/graph.ts';
import type { PageContext } from '../../notebooks/page/context.ts';
import { createLive } from '../../notebooks/page/live.ts';
import { renderProse } from '../../notebooks/page/proseView.ts';
import { prose, says } from '../../notebooks/prose.ts';
import { plainNumber } from '../graph/plainQuantities.ts';

afterEach(() => vi.unstubAllGlobals());

const x = plainNumber('test.x');
const faulty = says({ x }, ({ x }) => {
  if (x > 5) throw new Error('a branch without words');
  return `x is ${x}.`;
});
const sound = says({ x }, ({ x }) => `Twice that is ${2 * x}.`);

it('a sentence that cannot be written says so, the rest follows the design, and all settles', async () => {
  const report = vi.fn();
  vi.stubGlobal('reportError', report);
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  const live = createLive(createGraph([x]));
  const context = { document, live } as unknown as PageContext;
  const holder = document.createElement('div');
  holder.append(renderProse(context, prose`${faulty} ${sound}`, []) as unknown as Node);
  await live.settled();
  expect(holder.textContent).toMatch(/x is 1\. Twice that is 2\./);
  live.set({ 'test.x': 7 });
  await live.settled();
  expect(holder.textContent).toMatch(
    /cannot be written for this design: a fault of the program\.\) Twice that is 14\./,
  );
  expect(report).toHaveBeenCalledOnce();
  live.set({ 'test.x': 2 });
  await live.settled();
  expect(holder.textContent).toMatch(/x is 2\. Twice that is 4\./);
});
