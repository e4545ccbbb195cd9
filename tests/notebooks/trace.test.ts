import katex from 'katex';
import { parseHTML } from 'linkedom';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { plateBeamDiameter } from '../../lib/design/expander.ts';
import { focusRadius } from '../../lib/design/focus.ts';
import { glass, plateIndex, transmission } from '../../lib/design/plate.ts';
import { usedBeamDiameter } from '../../lib/design/rawBeam.ts';
import { peakFluence } from '../../lib/design/spot.ts';
import { wantedFocalLength } from '../../lib/design/wish.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import type { Patch } from '../../lib/graph/state.ts';
import { citation } from '../../lib/materials/bibliography.ts';
import { glassById } from '../../lib/materials/glasses.ts';
import type { PageContext } from '../../notebooks/page/context.ts';
import { createLive } from '../../notebooks/page/live.ts';
import { createTracePanel, sourceText } from '../../notebooks/page/trace.ts';
import { expectClose } from '../close.ts';
import { outcomesOf } from './designOutcomes.ts';

describe('source of an opened number', () => {
  const said = (design: Record<string, unknown>) => {
    const outcomeOf = outcomesOf(design);
    return sourceText(plateIndex, ({ id }) => outcomeOf(id));
  };

  for (const id of Object.keys(glass.options).filter((option) => option !== 'typed')) {
    it(`of the refractive index of ${id} is that of its row in the table`, () => {
      expect(said({ 'plate.glass': id })).toBe(`Source: ${citation(glassById(id).source)}`);
    });
  }

  it('names four different sources for four glasses', () => {
    const texts = Object.keys(glass.options).map((id) => said({ 'plate.glass': id }));
    expect(new Set(texts).size).toBe(5);
  });

  it('there is none for a typed index', () => {
    expect(said({ 'plate.glass': 'typed' })).toBe('Typed, without a source.');
  });

  it('stands where an input has no value, and for quantities that have one source only', () => {
    const outcomeOf = outcomesOf({ 'laser.beamSource': 'measured' });
    expect(sourceText(peakFluence, ({ id }) => outcomeOf(id))).toBe('Source: by definition');
  });
});

describe('opened number', () => {
  afterEach(() => vi.unstubAllGlobals());

  /** The panel of a quantity over a live design, and what it says. */
  async function open(quantity: Quantity, patch: Patch = {}) {
    const { document } = parseHTML('<html><body><button>number</button></body></html>');
    vi.stubGlobal('document', document);
    const live = createLive(designGraph);
    live.set(patch);
    const context = { document, live, open: () => {}, report: () => {} } as unknown as PageContext;
    const panel = createTracePanel(context, () => undefined);
    context.open = panel.open;
    document.body.append(panel.element);
    panel.open(quantity, document.querySelector('button')!);
    await live.settled();
    const shownRows = () =>
      [...panel.element.querySelectorAll<HTMLElement>('.trace-from:not([hidden]) dt:not([hidden])')].map(
        (term) => {
          const name = [...term.childNodes]
            .filter(({ nodeType }) => nodeType === 3)
            .map((n) => n.textContent);
          const tex = term.querySelector('annotation')?.textContent ?? '';
          return [tex, name.join('').trim(), term.nextElementSibling!.textContent!] as const;
        },
      );
    const texOf = (query: string) => panel.element.querySelector(`${query} annotation`)?.textContent;
    return { live, panel, shownRows, texOf };
  }

  it('does not open itself again', async () => {
    const { panel } = await open(peakFluence);
    const own = panel.element.querySelectorAll('[data-quantity="spot.peakFluence"]');
    expect(own).toHaveLength(1);
    expect(own[0]!.textContent).toMatch(/J\/cm²$/);
    expect([own[0]!.getAttribute('role'), own[0]!.getAttribute('tabindex')]).toEqual([null, null]);
    (own[0] as HTMLElement).click();
    expect(panel.element.textContent).not.toContain('Back to');
  });

  it('of a refractive index has all it is worked out from, and nothing else', async () => {
    const { live, shownRows, texOf } = await open(plateIndex, { 'plate.glass': 'bk7' });
    const rows = shownRows();
    expect(rows.slice(0, 2).map(([, name]) => name)).toEqual(['glass of the plate', 'wavelength']);
    const wavelengths = Number.parseFloat(rows[1]![2]) / 1000;
    const coefficient = (tex: string) => Number.parseFloat(rows.find(([symbol]) => symbol === tex)![2]);
    const terms = [1, 2, 3].map(
      (i) => (coefficient(`B_${i}`) * wavelengths ** 2) / (wavelengths ** 2 - coefficient(`C_${i}`)),
    );
    const index = live.read({ n: plateIndex })['n'] as number;
    expectClose(Math.sqrt(1 + terms.reduce((a, b) => a + b)), index, { relative: 1e-12 });
    expect(rows).toHaveLength(2 + 6);
    expect(texOf('.trace-formula')).toContain('B_i');

    live.set({ 'plate.glass': 'typed' });
    await live.settled();
    expect(shownRows().map(([, name]) => name)).toEqual(['glass of the plate', 'typed refractive index']);
    expect(texOf('.trace-formula')).toBe('n = n_\\text{typed}');
  });

  it('of a value that is chosen shows the choice and what was chosen', async () => {
    const { live, shownRows, texOf, panel } = await open(usedBeamDiameter);
    expect(shownRows().map(([, name]) => name)).toEqual(['source of the beam diameter', 'raw beam diameter']);
    expect(texOf('.trace-formula')).toBe('d_\\text{raw} = d_\\text{typed}');
    expect(panel.element.textContent).toContain('Source: taken over from what is chosen');
    live.set({ 'laser.beamSource': 'caustic' });
    await live.settled();
    expect(shownRows().map(([, , shown]) => shown)).toEqual(['waist of a measured caustic', '—']);
  });

  it('without a stop, says that all passes and does not name the stop diameter', async () => {
    const { shownRows } = await open(transmission, { 'plate.stop': 'open' });
    expect(shownRows()).toEqual([['', 'stop', 'no stop']]);
  });

  it('names a worded symbol once', async () => {
    const { panel } = await open(glass);
    expect(panel.element.querySelector('.trace-value')!.textContent).toBe('fused silica');
  });

  it.each([
    [transmission, 'closed form, by integrating the Gaussian'],
    [focusRadius, 'H. Kogelnik & T. Li, Appl. Opt. 5, 1550–1567 (1966)'],
    [wantedFocalLength, 'worked out in this project from the formulas of what goes in'],
    [plateBeamDiameter, 'taken over from what is chosen'],
  ])('$id has its source', async (quantity, source) => {
    const { panel } = await open(quantity);
    expect(panel.element.textContent).toContain(`Source: ${source}`);
  });
});

it('symbols and formulas are typeset without complaint', () => {
  const warned = vi.spyOn(console, 'warn');
  for (const quantity of designGraph.order) {
    const options = { throwOnError: true, strict: 'warn' as const };
    katex.renderToString(quantity.symbol, options);
    if (quantity.kind === 'derived')
      katex.renderToString(`${quantity.symbol} = ${quantity.formula}`, options);
  }
  expect(warned.mock.calls).toEqual([]);
  warned.mockRestore();
});
