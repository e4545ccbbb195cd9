import { describe, expect, it } from 'vitest';
import { derived } from '../../lib/graph/define.ts';
import { descendantsOf } from '../../lib/graph/descendants.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import type { Heaviness } from '../../lib/graph/quantity.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import type { HeavyRequest, OpenHeavyPort } from '../../notebooks/page/heavy/heavyMessages.ts';
import { createHeavyPart, isNotYet, notYet } from '../../notebooks/page/heavy/heavyPart.ts';
import { plainNumber, plainPick, plainWords } from '../graph/plainQuantities.ts';

const [x, y] = [plainNumber('test.x'), plainNumber('test.y')];
const heavy = (id: string, kind: Heaviness) =>
  derived({
    id,
    name: id,
    symbol: 's',
    unit: '1',
    about: '',
    from: { x },
    compute: ({ x }) => x * x,
    formula: 'x^2',
    source: 'definition',
    heavy: kind,
  });
const [picture, search] = [heavy('test.picture', 'picture'), heavy('test.search', 'search')];
const both = derived({
  id: 'test.both',
  name: 'both',
  symbol: 'b',
  unit: '1',
  about: '',
  from: { picture, y },
  compute: ({ picture, y }) => picture + y,
  formula: 's + y',
  source: 'definition',
});
const graph = createGraph([both, search]);

function setUp() {
  let state = initialState(graph);
  const requests: { request: HeavyRequest; answer: (value: number) => void }[] = [];
  let ports = 0;
  const open: OpenHeavyPort = (replied) => {
    ports += 1;
    return {
      post: (request) =>
        requests.push({ request, answer: (value) => replied({ job: request.job, outcome: { value } }) }),
      close: () => {},
    };
  };
  const published: [string, number][] = [];
  const part = createHeavyPart(
    graph,
    open,
    () => state,
    (id, outcome) => published.push([id, 'value' in outcome ? (outcome.value as number) : Number.NaN]),
  );
  const set = (id: string, value: number, touched: readonly string[]) => {
    state = applyPatch(graph, state, { [id]: value });
    part.changed(new Set([id, ...touched]));
  };
  const setX = (value: number) => set(x.id, value, [picture.id, search.id, both.id]);
  const lastFor = (id: string) => requests.findLast(({ request }) => request.id === id)!;
  return {
    part,
    published,
    requests,
    setX,
    setY: (value: number) => set(y.id, value, [both.id]),
    lastFor,
    ports: () => ports,
  };
}

/** Two pictures of one worker; the graph holds `first` before `second`. */
function setUpPictures() {
  const [first, second] = [heavy('test.first', 'picture'), heavy('test.second', 'picture')];
  const pictures = createGraph([first, second]);
  let state = initialState(pictures);
  const asked: string[] = [];
  let answer = () => {};
  const part = createHeavyPart(
    pictures,
    (replied) => ({
      post: ({ id, job }) => {
        asked.push(id);
        answer = () => replied({ job, outcome: { value: 1 } });
      },
      close: () => {},
    }),
    () => state,
    () => {},
  );
  const change = () => {
    state = applyPatch(pictures, state, { [x.id]: 7 });
    part.changed(new Set([x.id, first.id, second.id]));
  };
  return { part, first, second, asked, answer: () => answer(), change };
}

describe('heavy quantities of a page', () => {
  it('are asked for only when something that is shown rests on them, and each kind has its worker', () => {
    const { part, requests, ports, setX } = setUp();
    setX(2);
    expect(requests).toHaveLength(0);
    part.need(both.id);
    part.need(search.id);
    expect(requests.map(({ request }) => request.id)).toEqual([picture.id, search.id]);
    expect(ports()).toBe(2);
  });

  it('what is needed first is asked for first, after every change', () => {
    const other = setUpPictures();
    other.part.need(other.second.id);
    other.part.need(other.first.id);
    expect(other.asked).toEqual([other.second.id]);
    other.answer();
    other.answer();
    other.change();
    other.answer();
    expect(other.asked).toEqual([1, 2].flatMap(() => [other.second.id, other.first.id]));
  });

  it('a search under way does not keep a picture waiting', () => {
    const { part, published, setX, lastFor } = setUp();
    part.need(both.id);
    part.need(search.id);
    lastFor(picture.id).answer(1);
    setX(3);
    lastFor(picture.id).answer(9);
    expect(published).toEqual([
      [picture.id, 1],
      [picture.id, 9],
    ]);
    expect([part.isStale(both.id), part.isStale(search.id)]).toEqual([false, true]);
  });

  it('an answer older than the inputs is shown, and stays marked until the newest has come', () => {
    const { part, published, setX, lastFor } = setUp();
    part.need(both.id);
    const first = lastFor(picture.id);
    setX(3);
    first.answer(1);
    expect(published).toEqual([[picture.id, 1]]);
    expect(part.isStale(both.id)).toBe(true);
    lastFor(picture.id).answer(9);
    expect(part.isStale(both.id)).toBe(false);
  });

  it('inputs that a quantity does not read ask nothing', () => {
    const { part, requests, setY, lastFor } = setUp();
    part.need(both.id);
    lastFor(picture.id).answer(1);
    setY(5);
    expect(requests).toHaveLength(1);
    expect(part.isStale(both.id)).toBe(false);
  });

  it('going back to the inputs of the answer shown needs no worker, and a late answer is dropped', () => {
    const { part, published, setX, lastFor } = setUp();
    part.need(both.id);
    lastFor(picture.id).answer(1);
    setX(3);
    const late = lastFor(picture.id);
    setX(1);
    expect(part.isStale(both.id)).toBe(false);
    late.answer(9);
    expect(published.at(-1)).toEqual([picture.id, 1]);
  });

  it('an input of a case that is not chosen does not make an answer on its way old', () => {
    const { by, used } = plainPick(x, y);
    const from = { used };
    const slow = derived({
      ...plainWords,
      id: 'test.slow',
      name: 'slow',
      from,
      compute: ({ used }) => used,
      heavy: 'picture',
    });
    const one = createGraph([slow]);
    let state = initialState(one);
    let answer = (_value: number) => {};
    const open: OpenHeavyPort = (replied) => ({
      post: ({ job }) => {
        answer = (value) => replied({ job, outcome: { value } });
      },
      close: () => {},
    });
    const part = createHeavyPart(
      one,
      open,
      () => state,
      () => {},
    );
    const set = (id: string, value: unknown) => {
      state = applyPatch(one, state, { [id]: value });
      part.changed(descendantsOf(one, [id], state.inputs));
    };
    part.need(slow.id);
    set(y.id, 7);
    answer(1);
    expect(part.isStale(slow.id)).toBe(false);
    set(by.id, 'measured');
    expect(part.isStale(slow.id)).toBe(true);
    answer(7);
    expect(part.isStale(slow.id)).toBe(false);
  });

  it('before the first answer there is no value, which is no problem of the design', () => {
    expect(isNotYet(notYet(picture.id))).toBe(true);
    expect(isNotYet({ value: 1 })).toBe(false);
  });
});
