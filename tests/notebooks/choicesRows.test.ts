import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { workpieceZ } from '../../lib/design/focus.ts';
import type { Patch } from '../../lib/graph/state.ts';
import type { ChoiceRow, ChoicesSpec } from '../../notebooks/choicesSpec.ts';
import { choices } from '../../notebooks/document.ts';
import { renderChoices } from '../../notebooks/page/choicesView.ts';
import type { PageContext } from '../../notebooks/page/context.ts';
import type { Watcher } from '../../notebooks/page/watcher.ts';

const rowOf = (name: string, key?: unknown): ChoiceRow => ({
  ...(key === undefined ? {} : { key }),
  name,
  does: `Look at ${name}`,
  cells: ['1'],
  more: [],
  about: '',
  patch: {},
  chosen: false,
  acts: {
    takeOut: { name: 'Take out', does: `Take out ${name}`, patch: { takeOut: name } },
    rename: { does: `Rename ${name}`, now: name, patch: (next) => ({ [name]: next }) },
  },
});

/** A list on a page of its own; `show` gives it other rows, `taken` collects what was set. */
function pageOf() {
  const { document, window } = parseHTML('<html><body></body></html>');
  let spec: ChoicesSpec = { caption: '', columns: ['a', 'b'], rows: [], summary: '' };
  const block = choices({ id: 'list', from: { z: workpieceZ }, view: () => spec });
  let watcher: Watcher = {} as Watcher;
  const taken: Patch[] = [];
  const live = {
    set: (patch: Patch) => taken.push(patch),
    state: () => ({ revision: 0 }),
    watch: (_: unknown, one: Watcher) => {
      watcher = watcher.settled ? watcher : one;
      one.changed?.({ value: 0 });
      one.settled?.(0);
      return () => {};
    },
  };
  const context = { document, live } as unknown as PageContext;
  document.body.append(renderChoices(context, block, []));
  const show = (...rows: ChoiceRow[]) => {
    spec = { ...spec, rows };
    watcher.changed?.({ value: 0 });
    watcher.settled?.(1);
  };
  const panel = (name: string) => {
    const line = [...document.querySelectorAll('tbody tr')].find(
      (row) => row.querySelector('.sets-link')?.textContent === name,
    )!;
    const rest = line.nextElementSibling as HTMLElement;
    return {
      rest,
      toggle: line.querySelector<HTMLElement>('.choices-toggle')!,
      field: rest.querySelector('input')!,
    };
  };
  const names = () => [...document.querySelectorAll('tbody th')].map((cell) => cell.textContent);
  return { document, window, show, panel, names, taken };
}

describe('the open part of a row', () => {
  for (const keys of [
    ['by its key', 'key'],
    ['by its name where it has no key', undefined],
  ] as const) {
    it(`stays with its row when the list is sorted again, ${keys[0]}`, () => {
      const { show, panel, names, taken } = pageOf();
      const key = (name: string) => keys[1] && `${keys[1]} ${name}`;
      show(rowOf('first', key('first')), rowOf('second', key('second')), rowOf('third', key('third')));
      panel('second').toggle.click();
      panel('second').field.value = 'typed';
      show(rowOf('third', key('third')), rowOf('first', key('first')), rowOf('second', key('second')));
      expect(names()).toEqual(['third', 'first', 'second']);
      expect(['first', 'second', 'third'].map((name) => panel(name).rest.hidden)).toEqual([
        true,
        false,
        true,
      ]);
      expect(panel('second').field.value).toBe('typed');
      panel('second').rest.querySelector<HTMLElement>('button[type=button]')!.click();
      expect(taken).toEqual([{ takeOut: 'second' }]);
    });
  }

  it('stays with a row that gets another name, and goes with the one that is taken out', () => {
    const { show, panel, names } = pageOf();
    const [one, two] = [{}, {}];
    show(rowOf('first', one), rowOf('second', two));
    panel('second').toggle.click();
    show(rowOf('renamed', two), rowOf('first', one));
    expect(panel('renamed').rest.hidden).toBe(false);
    expect(panel('renamed').field.value).toBe('renamed');
    show(rowOf('first', one));
    expect(names()).toEqual(['first']);
    expect(panel('first').rest.hidden).toBe(true);
  });

  it('is told apart where two rows are called the same', () => {
    const { document, show, names } = pageOf();
    show(rowOf('same'), rowOf('same'));
    expect(names()).toEqual(['same', 'same']);
    const ids = [...document.querySelectorAll('.choices-rest')].map(({ id }) => id);
    expect(new Set(ids).size).toBe(2);
  });
});
