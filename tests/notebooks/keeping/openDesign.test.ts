import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { openDesignFile, openLink } from '../../../notebooks/page/keeping/openedDesign.ts';
import { createLive } from '../../../notebooks/page/live.ts';
import { damagedDesigns } from './damagedDesigns.ts';
import { damagedLinks } from './damagedLinks.ts';
import { fixture } from './designText.ts';

const fileOf = (name: string, bytes: Uint8Array) => new File([new Uint8Array(bytes)], name);

/** A design under way: two steps done, one taken back. */
function underWay() {
  const live = createLive(designGraph);
  live.set({ 'laser.wavelength': 515e-9 });
  live.open({ ...live.state(), name: 'Under way' });
  live.set({ 'plate.stop': 'open' });
  live.undo();
  return live;
}

describe('opening', () => {
  it('is one step, and undo brings the former design back with its name and what it kept', async () => {
    const live = underWay();
    const before = live.state();
    expect(await openDesignFile(live, fileOf('a.json', fixture('design-v2.json')))).toMatch(
      /^‘a\.json’ is open\. It leaves out /,
    );
    expect(live.state()).toMatchObject({
      name: 'Rain-gauge funnel',
      about: expect.stringContaining('ripple'),
    });
    expect(live.history().past).toHaveLength(3);
    live.undo();
    expect(live.state()).toEqual({ ...before, revision: live.state().revision });
    live.redo();
    expect(live.state().name).toBe('Rain-gauge funnel');
  });

  it('the same file or link again changes nothing', async () => {
    const live = underWay();
    await openDesignFile(live, fileOf('a.json', fixture('design-v2.json')));
    const opened = live.state();
    await openDesignFile(live, fileOf('a.json', fixture('design-v2.json')));
    await openLink(live, fixture('link-v1.txt').toString('utf8').trim());
    expect(live.state()).toBe(opened);
  });
});

describe('what is damaged', () => {
  const live = underWay();
  const before = live.state();
  const history = live.history();
  const refused = async (open: () => Promise<string>, name: string, says: RegExp) => {
    await expect(open(), name).rejects.toThrow(says);
    await expect(open(), name).rejects.toThrow(/The design that was open stays as it is\.$/);
    expect(live.state(), name).toBe(before);
    expect(live.history(), name).toBe(history);
  };

  it('as a file leaves state and history the very same', async () => {
    for (const [name, bytes, says] of damagedDesigns)
      await refused(() => openDesignFile(live, fileOf('bad.json', bytes)), name, says);
  });

  it('as a link leaves state and history the very same', async () => {
    for (const [name, text, says] of damagedLinks) await refused(() => openLink(live, text), name, says);
  });

  it('as a file too long to be read', async () => {
    const long = { name: 'film.json', size: 5e9, arrayBuffer: () => Promise.reject(new Error('read')) };
    await refused(
      () => openDesignFile(live, long as unknown as File),
      'long',
      /'film\.json' is 5000 MB long/,
    );
  });
});
