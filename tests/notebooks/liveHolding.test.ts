import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { derived } from '../../lib/graph/define.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import { detachable } from '../../notebooks/page/heavy/detachable.ts';
import type { HeavyRequest, OpenHeavyPort } from '../../notebooks/page/heavy/heavyMessages.ts';
import { longestHold } from '../../notebooks/page/holding.ts';
import { createLive } from '../../notebooks/page/live.ts';
import { plainNumber } from '../graph/plainQuantities.ts';

const x = plainNumber('test.x');
const picture = derived({
  id: 'test.picture',
  name: 'picture',
  symbol: 'p',
  unit: '1',
  about: '',
  from: { x },
  compute: ({ x }) => x * x,
  formula: 'x^2',
  source: 'definition',
  heavy: 'picture',
});
const text = derived({
  id: 'test.text',
  name: 'text',
  symbol: 't',
  unit: '1',
  about: '',
  from: { x },
  compute: ({ x }) => 2 * x,
  formula: '2x',
  source: 'definition',
});
const graph = createGraph([picture, text]);

/** A page with a picture of the worker and a text, which say what they show; frames come when told. */
function setUp(near = true) {
  const frames: (() => void)[] = [];
  vi.stubGlobal('requestAnimationFrame', (then: () => void) => frames.push(then));
  const requests: { request: HeavyRequest; answer: (value: number) => void }[] = [];
  const open: OpenHeavyPort = (replied) => ({
    post: (request) =>
      requests.push({ request, answer: (value) => replied({ job: request.job, outcome: { value } }) }),
    close: () => {},
  });
  const live = createLive(graph, undefined, open);
  const said: string[] = [];
  const watcher = (name: string, leads: boolean) => {
    let latest: unknown;
    let dirty = false;
    return {
      changed: (outcome: object) => {
        latest = 'value' in outcome ? outcome.value : outcome;
        dirty = true;
      },
      shown: () => {
        if (dirty) said.push(`${name} ${latest}`);
        dirty = false;
      },
      pending: () => said.push(`${name} older`),
      ...(leads && { leads: () => near }),
    };
  };
  live.watch(picture, watcher('picture', true));
  live.watch(text, watcher('text', false));
  const rest = () => vi.advanceTimersByTimeAsync(0);
  const frame = async () => {
    for (const then of frames.splice(0)) then();
    await rest();
  };
  const taken = () => said.splice(0);
  return { live, requests, rest, frame, taken };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

async function begun(near?: boolean) {
  const page = setUp(near);
  await page.rest();
  page.requests[0]!.answer(1);
  await page.rest();
  expect(page.taken().filter((line) => !line.endsWith('older'))).toEqual(['text 2', 'picture 1']);
  return page;
}

describe('a picture of the worker and the rest of the page', () => {
  it('while the hand moves the picture is painted first, and both are marked as older until they are shown', async () => {
    const { live, requests, rest, frame, taken } = await begun();
    live.set({ [x.id]: 3 }, { final: false });
    await rest();
    expect(taken().sort()).toEqual(['picture older', 'text older']);
    requests[1]!.answer(9);
    await rest();
    expect(taken()).toEqual(['picture 9']);
    await frame();
    expect(taken()).toEqual([]);
    await frame();
    expect(taken()).toEqual(['text 6']);
  });

  it('the rest waits no longer than its bound where the worker takes long', async () => {
    const { live, requests, rest, taken } = await begun();
    live.set({ [x.id]: 3 }, { final: false });
    await vi.advanceTimersByTimeAsync(longestHold - 1);
    taken();
    live.set({ [x.id]: 4 }, { final: false });
    await vi.advanceTimersByTimeAsync(2);
    expect(taken()).toContain('text 8');
    requests[1]!.answer(9);
    await rest();
    expect(taken()).toEqual(['picture 9']);
  });

  it('what is set for good is shown at once, and ends a hold', async () => {
    const { live, rest, taken } = await begun();
    live.set({ [x.id]: 3 }, { final: false });
    await rest();
    taken();
    live.set({ [x.id]: 5 });
    await rest();
    expect(taken()).toContain('text 10');
  });

  it('nothing waits for a picture out of view', async () => {
    const { live, rest, taken } = await begun(false);
    live.set({ [x.id]: 3 }, { final: false });
    await rest();
    expect(taken()).toContain('text 6');
  });

  it('all is up to date only when the rest has been shown too', async () => {
    const { live, requests, rest, frame } = await begun();
    live.set({ [x.id]: 3 }, { final: false });
    let done = false;
    void live.settled().then(() => {
      done = true;
    });
    await rest();
    requests[1]!.answer(9);
    await rest();
    expect(done).toBe(false);
    await frame();
    await frame();
    expect(done).toBe(true);
  });
});

describe('answers handed to another thread', () => {
  it('are equal to the original, which keeps its own arrays', () => {
    const values = new Float64Array(2000).fill(2);
    const short = Float64Array.of(1, 2);
    const outcome = { value: { map: { values, short, list: [values], name: 'map' }, none: null } };
    const { copy, buffers } = detachable(outcome);
    expect(copy).toEqual(outcome);
    expect(buffers).toHaveLength(2);
    expect(buffers).not.toContain(values.buffer);
    structuredClone(copy, { transfer: buffers });
    expect(values).toHaveLength(2000);
    expect(copy.value.map.values).toHaveLength(0);
  });
});
