import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import type { FigureBlock, ProseBlock } from '../../../notebooks/document.ts';
import type { choiceTask, markTask, numberTask } from '../../../notebooks/lessons/lesson.ts';
import { layOut } from '../../../notebooks/page/figures/layout.ts';
import { createPlaceHandle, placeWords, valueAt } from '../../../notebooks/page/lessons/placeHandle.ts';
import {
  answerMarks,
  shownAfter,
  shownWith,
  withMarks,
  withoutCurves,
  withoutMoves,
} from '../../../notebooks/page/lessons/taskCharts.ts';
import { prose } from '../../../notebooks/prose.ts';
import { expectClose } from '../../close.ts';
import { lineFigure, smallLesson } from './smallLesson.ts';

const [width, side, place] = smallLesson.tasks as [
  ReturnType<typeof numberTask>,
  ReturnType<typeof choiceTask>,
  ReturnType<typeof markTask>,
];
const beam = { beam: 8e-3 };
const words: ProseBlock = { kind: 'prose', id: 'words', prose: prose`Words.` };
const other: FigureBlock = { ...lineFigure, id: 'other' };
const how = (task: Parameters<typeof shownWith>[0]) =>
  shownWith(task).map(({ block, bare, marked }) => [block.id, bare, marked]);

describe('what stands with a question', () => {
  it('is what the task shows; words and pictures that it reveals come afterwards', () => {
    const task = { ...width, shows: [words], reveals: [lineFigure] };
    expect(how(task)).toEqual([['words', false, false]]);
    expect(shownAfter(task)).toEqual([lineFigure]);
  });

  it('is the chart without its curve where a prediction is chosen', () => {
    const task = { ...side, reveals: [lineFigure, words] };
    expect(how(task)).toEqual([['line', true, false]]);
    expect(shownAfter(task)).toEqual([words]);
    expect(how({ ...task, stage: 'explain' as const })).toEqual([]);
    expect(how({ ...task, shows: [lineFigure] })).toEqual([['line', false, false]]);
    expect(how({ ...task, shows: [other] })).toEqual([['other', false, false]]);
    expect(shownAfter({ ...task, shows: [other] })).toEqual([lineFigure, words]);
  });

  it('is not an empty chart beside a number to be worked out', () => {
    expect(how({ ...width, stage: 'predict', reveals: [lineFigure] })).toEqual([]);
  });

  it('is the chart to mark on: with its curve, or without where that is revealed only', () => {
    expect(how(place)).toEqual([['line', false, true]]);
    expect(how({ ...place, shows: [other, lineFigure] })).toEqual([
      ['other', false, false],
      ['line', false, true],
    ]);
    expect(how({ ...place, reveals: [lineFigure, other] })).toEqual([['line', true, true]]);
    expect(how({ ...place, stage: 'predict', reveals: [lineFigure, other] })).toEqual([['line', true, true]]);
    expect(shownAfter({ ...place, reveals: [lineFigure, other] })).toEqual([other]);
  });
});

describe('a chart in a lesson', () => {
  it('without its curve keeps the axes and nothing that tells of the values', () => {
    const { title, x, y } = lineFigure.view(beam);
    expect(withoutCurves(lineFigure).view(beam)).toEqual({
      title,
      x,
      y,
      series: [],
      summary: 'The curve is drawn once you have answered.',
    });
  });

  it('to be marked on has no handle of its own', () => {
    const moving: FigureBlock = {
      ...lineFigure,
      view: (values) => ({ ...lineFigure.view(values), moves: {} as never }),
    };
    const spec = withoutMoves(moving).view(beam);
    expect([spec.moves, spec.hint, spec.series.length]).toEqual([undefined, undefined, 1]);
  });

  it('shows the marks that were put on it beside its own', () => {
    const marks = withMarks(lineFigure, answerMarks('x', 3, 8)).view(beam).marks!;
    expect(marks.map(({ kind, x, label }) => [kind, x, label])).toEqual([
      ['vertical', 8, 'beam'],
      ['vertical', 3, 'your mark'],
      ['vertical', 8, 'the answer'],
    ]);
    expect(answerMarks('y', 0.5, undefined)).toEqual([
      { kind: 'horizontal', y: 0.5, label: 'your mark', role: 'reference' },
    ]);
    expect(answerMarks('x', undefined, undefined)).toEqual([]);
  });
});

describe('a place along an axis', () => {
  const axis = { label: 'distance', unit: 'µm', domain: [-20, 60] as const };

  it('is a round number to a thousandth of the axis', () => {
    expect([0, 0.5, 1].map((share) => valueAt(axis, share))).toEqual([-20, 20, 60]);
    expect(valueAt(axis, 0.123456)).toBe(-10.1);
    expect(valueAt({ ...axis, domain: [0, 3e-6] }, 0.5)).toBe(1.5e-6);
  });

  it('goes by equal factors along a logarithmic one', () => {
    const log = { ...axis, domain: [0.1, 1000] as const, logarithmic: true };
    expectClose(valueAt(log, 0), 0.1, { relative: 1e-12 });
    expectClose(valueAt(log, 0.5), 10, { relative: 1e-12 });
    expectClose(valueAt(log, 1), 1000, { relative: 1e-12 });
  });

  it('is written with its unit', () => {
    expect(placeWords(axis, -10.1)).toBe('−10.1\u202fµm');
    expect(placeWords({ ...axis, unit: '' }, 0.25)).toBe('0.25');
  });

  it('is chosen once it was put somewhere, and read out', () => {
    const { document, window } = parseHTML('<html><body></body></html>');
    const heard: string[] = [];
    const handle = createPlaceHandle(document, 'x', (text) => heard.push(text));
    const spec = { ...lineFigure.view(beam), x: axis };
    handle.place(spec, layOut(spec, 600, 'wide'));
    const slider = handle.element.querySelector('[role="slider"]')!;
    expect([handle.chosen(), slider.getAttribute('aria-valuetext'), heard]).toEqual([
      undefined,
      'not put anywhere yet, at −12\u202fµm',
      [],
    ]);
    const press = (key: string) => slider.dispatchEvent(Object.assign(new window.Event('keydown'), { key }));
    press('End');
    press('ArrowLeft');
    press('Tab');
    expect([handle.chosen(), slider.getAttribute('aria-valuetext')]).toEqual([59.8, '59.8\u202fµm']);
    expect(slider.getAttribute('aria-valuenow')).toBe('59.8');
    expect(heard).toEqual(['60\u202fµm', '59.8\u202fµm']);
    press('ArrowRight');
    press('ArrowRight');
    expect(handle.chosen()).toBe(60);
    press('PageDown');
    expect(handle.chosen()).toBe(56);
    press('Home');
    press('PageDown');
    expect(handle.chosen()).toBe(-20);
  });

  it('is put again where it was, before there is an axis or after', () => {
    const { document } = parseHTML('<html><body></body></html>');
    const log = { ...axis, domain: [0.1, 1000] as const, logarithmic: true };
    for (const x of [axis, log])
      for (const early of [true, false]) {
        const handle = createPlaceHandle(document, 'x', () => {});
        const spec = { ...lineFigure.view(beam), x };
        if (early) handle.put(12.3);
        expect(handle.chosen()).toBeUndefined();
        handle.place(spec, layOut(spec, 600, 'wide'));
        if (!early) handle.put(12.3);
        handle.place(spec, layOut(spec, 400, 'wide'));
        expect(handle.chosen()).toBe(12.3);
      }
  });
});
