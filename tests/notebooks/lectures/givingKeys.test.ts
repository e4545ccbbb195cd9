import { describe, expect, it } from 'vitest';
import { actOf, type KeyPlace, keysSaid } from '../../../notebooks/lectures/givingKeys.ts';

const none = { ctrlKey: false, metaKey: false, altKey: false, shiftKey: false };
const press = (key: string, place: KeyPlace = 'page', held: Partial<typeof none> = {}) => {
  const act = actOf({ key, ...none, ...held }, place);
  return act?.act === 'choose' ? act.option : act?.act;
};

describe('keys of a lecture', () => {
  const table: readonly (readonly [key: string, act: string | number | undefined])[] = [
    ['ArrowRight', 'on'],
    ['PageDown', 'on'],
    [' ', 'on'],
    ['Enter', 'on'],
    ['ArrowLeft', 'back'],
    ['PageUp', 'back'],
    ['Home', 'first'],
    ['End', 'last'],
    ['Escape', 'leave'],
    ['b', 'blank'],
    ['B', 'blank'],
    ['.', 'blank'],
    ['r', 'prepared'],
    ['n', 'notes'],
    ['t', 'time'],
    ['h', 'withhold'],
    ['f', 'screen'],
    ['?', 'help'],
    ['1', 0],
    ['9', 8],
    ['0', undefined],
    ['x', undefined],
    ['ArrowDown', undefined],
    ['constructor', undefined],
  ];
  it.each(table)('%s does %s', (key, act) => {
    expect(press(key)).toBe(act);
  });

  it('takes back and does again, but not what is being typed', () => {
    expect(press('z', 'page', { ctrlKey: true })).toBe('undo');
    expect(press('z', 'slider', { metaKey: true })).toBe('undo');
    expect(press('Z', 'page', { ctrlKey: true, shiftKey: true })).toBe('redo');
    expect(press('z', 'field', { ctrlKey: true })).toBeUndefined();
    expect(press('z', 'settledField', { ctrlKey: true })).toBe('undo');
    expect(press('Z', 'settledField', { metaKey: true, shiftKey: true })).toBe('redo');
    expect(press('r', 'settledField')).toBeUndefined();
    expect(press('PageDown', 'settledField')).toBe('on');
    expect(press('r', 'page', { ctrlKey: true })).toBeUndefined();
    expect(press('ArrowRight', 'page', { altKey: true })).toBeUndefined();
  });

  it('leaves what is typed to the field; a clicker goes on all the same', () => {
    const typed = ['ArrowRight', 'ArrowLeft', 'Home', 'End', ' ', 'Enter', 'b', '.', '5', 'Escape', '?'];
    expect(typed.map((key) => press(key, 'field'))).toEqual(typed.map(() => undefined));
    expect(['PageDown', 'PageUp'].map((key) => press(key, 'field'))).toEqual(['on', 'back']);
    expect([...typed, 'PageDown'].map((key) => press(key, 'list'))).not.toContain('on');
  });

  it('leaves arrows to a slider, and Space and Enter to a button', () => {
    const keys = ['ArrowRight', 'Home', 'PageDown', ' ', 'Enter', 'b', '2'];
    expect(keys.map((key) => press(key, 'slider'))).toEqual([
      undefined,
      undefined,
      'on',
      'on',
      'on',
      'blank',
      1,
    ]);
    expect(keys.map((key) => press(key, 'button'))).toEqual([
      'on',
      'first',
      'on',
      undefined,
      undefined,
      'blank',
      1,
    ]);
  });

  it('tells of every key that does something', () => {
    const said = keysSaid.map(([keys]) => keys).join(' ');
    const names: Readonly<Record<string, string>> = {
      ArrowRight: '→',
      ArrowLeft: '←',
      PageDown: 'Page Down',
      PageUp: 'Page Up',
      ' ': 'Space',
      Escape: 'Esc',
      '.': 'full stop',
    };
    for (const [key, act] of table)
      if (act !== undefined && key !== '?')
        expect(said).toContain(names[key] ?? (key.length === 1 ? key.toUpperCase() : key));
  });
});
