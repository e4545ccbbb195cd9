import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { initialState } from '../../../lib/graph/state.ts';
import { createNotices } from '../../../notebooks/page/keeping/notices.ts';
import { openDesignFile } from '../../../notebooks/page/keeping/openedDesign.ts';
import { showOpened } from '../../../notebooks/page/keeping/openedNotice.ts';
import { createLive } from '../../../notebooks/page/live.ts';
import { fixture } from './designText.ts';

/** A page on which a file was opened after one other step. */
async function opened() {
  const live = createLive(designGraph);
  const notices = createNotices(parseHTML('<html><body></body></html>').document);
  const open = async () => {
    const file = new File([new Uint8Array(fixture('design-v2.json'))], 'a.json');
    showOpened(live, notices, await openDesignFile(live, file));
  };
  live.set({ 'laser.wavelength': 515e-9 });
  await open();
  return { live, notices, open, text: () => notices.element.textContent };
}

describe('the line that a design is open', () => {
  it('goes when undo brings the former design back, however many steps later', async () => {
    const { live, text } = await opened();
    expect(text()).toContain('‘a.json’ is open.');
    live.set({ 'plate.stop': 'open' });
    live.undo();
    expect(text()).toContain('‘a.json’ is open.');
    live.undo();
    expect(text()).toBe('');
    live.redo();
    expect(text()).toBe('');
  });

  it('goes when all is started afresh', async () => {
    const { live, text } = await opened();
    live.open(initialState(designGraph));
    expect(text()).toBe('');
  });

  it('of another file stays when the former one would go', async () => {
    const { live, open, text } = await opened();
    live.set({ 'plate.stop': 'open' });
    await open();
    live.undo();
    live.undo();
    expect(text()).toBe('');
    live.undo();
    await open();
    expect(text()).toContain('‘a.json’ is open.');
  });

  it('leaves a later line on the same topic alone', async () => {
    const { live, notices, text } = await opened();
    notices.show('opened', 'The design was saved as a.json.');
    live.undo();
    expect(text()).toContain('saved as a.json');
  });
});
