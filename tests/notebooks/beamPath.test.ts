import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import {
  type BeamElement,
  type BeamPathValues,
  beamEdge,
  beamElements,
  layoutBeam,
  sizeBeam,
  stopBehind,
} from '../../notebooks/page/beamGeometry.ts';
import { createBeamPath } from '../../notebooks/page/beamPath.ts';
import { drawnValues } from '../../notebooks/page/pathView.ts';
import { renderStartPage } from '../../notebooks/page/startPage.ts';
import { expectClose } from '../close.ts';
import { outcomesOf } from './designOutcomes.ts';

const values: BeamPathValues = {
  rawDiameter: 5e-3,
  plateDiameter: 10e-3,
  stepDiameter: 10e-3,
  stopDiameter: 14e-3,
  raised: 'centre',
  z: 0,
  rayleighLength: 131e-6,
  labels: {
    laser: '5 mm',
    expander: '×2',
    plate: '10 mm step, 14 mm stop',
    lens: 'f = 100 mm',
    workpiece: 'z = 0 mm',
  },
};

describe('sizes of the beam path', () => {
  const layout = layoutBeam(900);

  it('keeps the ratios of beam, step and stop', () => {
    const { raw, beam, step, stop } = sizeBeam(values, layout);
    expectClose(beam / step, 1, { relative: 1e-12, absolute: 0 });
    expectClose(stop! / step, 1.4, { relative: 1e-12, absolute: 0 });
    expectClose(raw / beam, 0.5, { relative: 1e-12, absolute: 0 });
  });

  it('keeps the plate while the beam widens to 1.2 step diameters', () => {
    expect(sizeBeam({ ...values, plateDiameter: 12e-3 }, layout).step).toBe(sizeBeam(values, layout).step);
  });

  it('stays inside the drawing for extreme designs, at every width', () => {
    for (const width of [320, 358, 700, 1100]) {
      for (const plateDiameter of [1e-5, 1e-2, 1]) {
        for (const stopDiameter of [1e-4, 0.2, undefined]) {
          const place = layoutBeam(width);
          const sizes = sizeBeam({ ...values, plateDiameter, stopDiameter, z: 0.1 }, place);
          for (const [x, half] of beamEdge(place, sizes, 1, true)) {
            expect(half).toBeLessThanOrEqual(place.reach);
            expect(x).toBeLessThan(width);
          }
          expect(sizes.beam).toBeGreaterThan(2);
        }
      }
    }
  });

  it('counts z away from the lens', () => {
    expect(sizeBeam({ ...values, z: 50e-6 }, layout).shift).toBeGreaterThan(0);
    expect(sizeBeam({ ...values, z: -50e-6 }, layout).shift).toBeLessThan(0);
  });

  it('cuts the light at the stop', () => {
    const sizes = sizeBeam({ ...values, stopDiameter: 8e-3 }, layout);
    const behind = beamEdge(layout, sizes, 1, false).findLast(([x]) => x === layout.plate + stopBehind)!;
    expect(behind[1]).toBe(sizes.stop);
  });
});

const keplerian = {
  'expander.kind': 'lenses',
  'expander.firstFocalLength': 50e-3,
  'expander.separation': 150e-3,
};

describe('beam path', () => {
  it('offers its elements as buttons in the order of the light, and marks the chosen one', () => {
    const { document, window } = parseHTML('<html><body></body></html>');
    const chosen: BeamElement[] = [];
    const path = createBeamPath(document, (name) => chosen.push(name));
    path.update(values);
    const buttons = [...path.element.querySelectorAll('button')];
    expect(buttons.map((button) => button.textContent)).toEqual(
      beamElements.map((name) => `${name} ${values.labels[name]}`),
    );
    buttons[3]!.dispatchEvent(new window.Event('click'));
    expect(chosen).toEqual(['lens']);
    path.choose('lens');
    expect(buttons.map((button) => button.getAttribute('aria-pressed'))).toEqual([
      'false',
      'false',
      'false',
      'true',
      'false',
    ]);
    expect(path.element.querySelectorAll('g[data-chosen]').length).toBe(1);
  });

  for (const [name, design, crosses] of [
    ['two collecting lenses', keplerian, true],
    ['a diverging and a collecting lens', { 'expander.kind': 'lenses' }, false],
    ['lenses that do not count', { ...keplerian, 'expander.kind': 'magnification' }, false],
  ] as const) {
    it(`${crosses ? 'draws a' : 'draws no'} focus inside an expander of ${name}`, () => {
      const { document } = parseHTML('<html><body></body></html>');
      const outcomeOf = outcomesOf(design);
      const path = createBeamPath(document, () => {});
      path.update(drawnValues(({ id }) => outcomeOf(id)));
      // Upper edge of the 1/e² outline between the lenses, pixels above the axis.
      const { firstLens, secondLens, axis } = layoutBeam(720);
      const points = path.element.querySelector('.beam-edge')!.getAttribute('d')!.slice(1).split('L');
      const heights = points
        .map((point) => point.split(',').map(Number) as [number, number])
        .filter(([x, y]) => x > firstLens && x < secondLens && y <= axis)
        .map(([, y]) => axis - y);
      expect(heights.filter((height) => height < 1).length).toBe(crosses ? 1 : 0);
    });
  }

  it('only outlines a beam that is not known', () => {
    const { document } = parseHTML('<html><body></body></html>');
    const path = createBeamPath(document, () => {});
    path.update({ ...values, rawDiameter: undefined, plateDiameter: undefined });
    expect(path.element.querySelector('svg')!.hasAttribute('data-unknown')).toBe(true);
    expect(path.element.innerHTML).not.toContain('NaN');
  });
});

describe('start page', () => {
  it('points to the cautions before the doors, gives three doors, and links to open documents only', () => {
    const { document, window } = parseHTML('<html><body></body></html>');
    const opened: string[] = [];
    const page = renderStartPage(document, {
      onMeasured: () => opened.push('image'),
      onPlate: () => opened.push('plate'),
      onExample: () => opened.push('example'),
    });
    const order = [...page.children].map((child) => child.className);
    const pointer = order.findIndex((name) => name.includes('start-pointer'));
    expect(pointer).toBeGreaterThan(0);
    expect(pointer).toBeLessThan(order.indexOf('doors'));
    expect(page.children[pointer]!.textContent).toMatch(
      /^Class 4 laser\..* Read the cautions before any setting\.$/,
    );
    expect(order.some((name) => name.includes('start-cautions'))).toBe(true);
    expect([...page.querySelectorAll('.door-title')].map((title) => title.textContent)).toEqual([
      'I have a beam image',
      'I have a plate',
      'Show me the example',
    ]);
    for (const door of page.querySelectorAll('button.door')) door.dispatchEvent(new window.Event('click'));
    expect(opened).toEqual(['plate', 'example']);
    expect([...page.querySelectorAll('.table-places a')].map((link) => link.textContent)).toEqual([
      'Matching',
      'Through the focus',
      'Threshold',
      'Ripples',
      'Throughput',
      'Grooves and engraving',
      'Scale-up',
      'What if',
      'Own pages',
      'Write-up',
      'Set-up sheet',
    ]);
  });

  it('keeps the cautions that no design may hide', () => {
    const { document } = parseHTML('<html><body></body></html>');
    const nothing = () => {};
    const text = renderStartPage(document, { onMeasured: nothing, onPlate: nothing, onExample: nothing })
      .textContent!;
    for (const words of [
      'laser safety officer',
      'lowest power',
      'four to seven times',
      'X-rays',
      'all-clear',
      'chromium',
      'ISO 21254',
    ]) {
      expect(text, words).toContain(words);
    }
  });
});
