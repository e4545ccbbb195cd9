import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { beamImage } from '../../lib/design/laser.ts';
import { spotTable } from '../../lib/design/spots.ts';
import { measuredFiles } from '../../notebooks/measuredFiles.ts';
import { createFileField } from '../../notebooks/page/controls/fileField.ts';
import { panelActions } from '../../notebooks/page/pathView.ts';

/** A file field on a page of its own, and a hand that pastes into it. */
function fieldWith(take: (files: readonly File[]) => void, pastes = true) {
  const { document, window } = parseHTML('<html><body></body></html>');
  const field = createFileField(document, spotTable, take, { pastes });
  document.body.append(field.element);
  const area = field.element.querySelector('textarea');
  const paste = async (text: string) => {
    area!.value = text;
    field.element.querySelector('.field-paste button')!.dispatchEvent(new window.Event('click'));
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { element: field.element, area, paste };
}

describe('a table that is pasted', () => {
  it('is read as a file of that name, and the text goes', async () => {
    const taken: [string, string][] = [];
    const { area, paste } = fieldWith(async ([file]) => void taken.push([file!.name, await file!.text()]));
    await paste('E (µJ)\td (µm)\n10\t20\n');
    await new Promise((resolve) => setTimeout(resolve, 5));
    expect(taken).toEqual([['pasted table', 'E (µJ)\td (µm)\n10\t20\n']]);
    expect(area!.value).toBe('');
  });

  it('stays in its place where it cannot be read, with the reason', async () => {
    const { element, area, paste } = fieldWith(() => {
      throw new Error('"pasted table" is no table of spots.');
    });
    await paste('10;20');
    expect(area!.value).toBe('10;20');
    expect(element.querySelector('.problem')!.textContent).toBe('"pasted table" is no table of spots.');
  });

  it('has a place beside every file that is a table, and beside no other', () => {
    const { pastes } = panelActions({} as never);
    expect(fieldWith(() => {}, false).area).toBeNull();
    expect(pastes!(beamImage)).toBe(false);
    const tables = Object.entries(measuredFiles).filter(([, { accept }]) => accept.includes('.tsv'));
    expect(tables.length).toBeGreaterThan(3);
    for (const [id] of tables) expect(pastes!({ ...spotTable, id }), id).toBe(true);
  });
});
