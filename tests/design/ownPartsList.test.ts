import { describe, expect, it } from 'vitest';
import { createPart } from '../../lib/design/ownParts.ts';
import { addPart, findPart, mergeParts, removePart, renamePart } from '../../lib/design/ownPartsList.ts';

const lens = (name: string, f: number, note = '') =>
  createPart('lens', name, { 'lens.focalLength': f }, note);
const expander = (name: string, m: number) =>
  createPart('expander', name, { 'expander.kind': 'magnification', 'expander.magnification': m });
const parts = [lens('160 mm', 0.16, 'drawer 3'), lens('Scan lens', 0.1), expander('Twofold', 2)];

describe('a list of parts', () => {
  it('takes one more, and finds it whatever the case of its letters', () => {
    const more = addPart(parts, lens('F100', 0.1));
    expect(more.slice(0, 3)).toEqual(parts);
    expect(findPart(more, 'lens', 'f100')?.name).toBe('F100');
    expect(findPart(more, 'plate', 'f100')).toBeUndefined();
    expect(parts).toHaveLength(3);
  });

  it('refuses a name that is taken within the kind', () => {
    expect(() => addPart(parts, lens('scan LENS', 0.2))).toThrow(
      'The list already has the lens ‘Scan lens’; choose another name, or rename or remove that one first.',
    );
    expect(addPart(parts, expander('Scan lens', 3))).toHaveLength(4);
  });

  it('renames a part, keeps its note unless told, and its place', () => {
    const renamed = renamePart(parts, 'lens', '160 mm', ' F160 ');
    expect(renamed.map(({ name }) => name)).toEqual(['F160', 'Scan lens', 'Twofold']);
    expect(renamed[0]).toEqual({ ...parts[0], name: 'F160' });
    expect(renamePart(parts, 'lens', '160 mm', 'F160', '')[0]!.note).toBe('');
    expect(renamePart(parts, 'lens', 'scan lens', 'SCAN LENS')[1]!.name).toBe('SCAN LENS');
  });

  it.each([
    ['', /name of the lens is empty/],
    [' ', /name of the lens is empty/],
    ['scan lens', /already has the lens ‘Scan lens’/],
  ])('does not rename to "%s"', (name, says) => {
    expect(() => renamePart(parts, 'lens', '160 mm', name)).toThrow(says);
  });

  it('removes a part, and says where there is none', () => {
    expect(removePart(parts, 'lens', '160 MM')).toEqual(parts.slice(1));
    expect(() => removePart(parts, 'plate', '160 mm')).toThrow('The list no longer has the plate ‘160 mm’');
    expect(() => renamePart(parts, 'lens', 'F5', 'F6')).toThrow('no longer has the lens ‘F5’');
  });

  it('takes another list, and never changes what is there', () => {
    const more = [lens('160 mm', 0.16 * (1 + 1e-12)), lens('Scan lens', 0.2), lens('New', 0.05)];
    const { parts: merged, added, same, leftOut } = mergeParts(parts, more);
    expect(merged).toEqual([...parts, more[2]]);
    expect([added, same, leftOut]).toEqual([[more[2]], [more[0]], [more[1]]]);
  });

  it('counts an expander of another description as another one', () => {
    const lenses = createPart('expander', 'Twofold', {
      'expander.kind': 'lenses',
      'expander.firstFocalLength': -0.05,
      'expander.separation': 0.05,
      'expander.secondFocalLength': 0.1,
    });
    expect(mergeParts(parts, [lenses]).leftOut).toEqual([lenses]);
  });
});
