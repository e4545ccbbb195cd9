import { parseHTML } from 'linkedom';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { magnification, plateBeamDiameter } from '../../../lib/design/expander.ts';
import type { PageContext } from '../../../notebooks/page/context.ts';
import { renderChanged } from '../../../notebooks/page/lessons/changedLine.ts';
import { createLessonDesigns } from '../../../notebooks/page/lessons/lessonDesigns.ts';
import { createLive } from '../../../notebooks/page/live.ts';
import { renderProse } from '../../../notebooks/page/proseView.ts';
import { prose, sets } from '../../../notebooks/prose.ts';
import { expectClose } from '../../close.ts';

/** Designs of a lesson beside an open one, on a page without a browser. */
function openPage() {
  const { document, window } = parseHTML(
    '<html><body><div id="page"><div class="page"></div></div></body></html>',
  );
  // Equations are typeset in the document of the page.
  vi.stubGlobal('document', document);
  const live = createLive(designGraph);
  const context = { document, live, within: 'a', open: () => {}, report: () => {} } as unknown as PageContext;
  const stops: (() => void)[] = [];
  return { document, window, live, stops, designs: createLessonDesigns(context, stops) };
}

const patch = { 'laser.beamDiameter': 4e-3, [magnification.id]: 2 };

describe('design of a lesson', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('is worked out from the case, and the open one stays as it is', () => {
    const { live, designs } = openPage();
    const before = live.state();
    const { context } = designs.of(patch);
    expectClose(context.live.read({ beam: plateBeamDiameter })['beam'] as number, 8e-3, { relative: 1e-12 });
    context.live.set({ [magnification.id]: 3 });
    expect(live.state()).toBe(before);
  });

  it('is shared by tasks that begin with the same inputs, in whatever order they are named', () => {
    const { designs } = openPage();
    const again = Object.fromEntries(Object.entries(patch).reverse());
    expect(designs.of(again)).toBe(designs.of(patch));
    expect(designs.of({ ...patch, [magnification.id]: 3 })).not.toBe(designs.of(patch));
  });

  it('takes its trace with it when it is left', () => {
    const { document, designs, stops } = openPage();
    const { context } = designs.of(patch);
    context.open(plateBeamDiameter, document.querySelector<HTMLElement>('.page')!);
    const trace = document.querySelector('.page + .trace')!;
    expect([trace.hasAttribute('hidden'), trace.textContent!.includes('Require something')]).toEqual([
      false,
      false,
    ]);
    for (const stop of stops) stop();
    expect(document.querySelector('.trace')).toBeNull();
  });

  it('is changed by a link in the text, which is told, and brought back', () => {
    const { document, window, designs, stops } = openPage();
    const { context, ...design } = designs.of(patch);
    const text = prose`${sets('three times', { [magnification.id]: 3 })}`;
    const line = renderChanged(context, design, stops);
    document.body.append(renderProse(context, text, stops), line);
    expect([line.hidden, design.isChanged()]).toEqual([true, false]);
    document.querySelector('.sets-link')!.dispatchEvent(new window.Event('click'));
    expect([line.hidden, design.isChanged()]).toEqual([false, true]);
    expect(context.live.state().inputs[magnification.id]).toBe(3);
    line.querySelector('button')!.dispatchEvent(new window.Event('click'));
    expect([line.hidden, design.isChanged()]).toEqual([true, false]);
    expect(context.live.state().inputs).toMatchObject(patch);
  });
});
