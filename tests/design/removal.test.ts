import { describe, expect, it, test } from 'vitest';
import { expectClose } from '../close.ts';
import { noteIn, numberIn, openPlane, outcomeIn, problemIn } from './outcomesIn.ts';

const exact = { relative: 1e-12 };

describe('energy on its way to the workpiece', () => {
  const losses = { 'losses.opticsTransmission': 0.8, 'losses.plateTransmission': 0.9 };

  it('comes from a typed energy, or from power and repetition rate', () => {
    expectClose(numberIn({}, 'laser.usedPulseEnergy'), 20e-6, exact);
    const power = { 'laser.energySource': 'power', 'laser.typedPower': 10, 'laser.repetitionRate': 500e3 };
    expectClose(numberIn(power, 'laser.usedPulseEnergy'), 20e-6, exact);
    expectClose(numberIn(power, 'laser.averagePower'), 10, exact);
    expectClose(numberIn({}, 'laser.averagePower'), 4, exact);
  });

  test.each([
    ['losses.energyAfter', 0.72],
    ['focus.unshapedPeakFluence', 0.72],
    ['spot.peakFluence', 0.72],
    // Without the plate its losses are gone too.
    ['unshaped.spot.peakFluence', 0.8],
    ['unshaped.safety.peakIrradiance', 0.8],
    ['safety.airIrradiance', 0.8],
    ['safety.plateOutFactor', 1 / 0.9],
    ['spot.energyInHalf', 1],
    ['spot.effectiveArea', 1],
    ['plate.peakIrradiance', 1],
    ['removal.bestVolumePerEnergy', 0.72],
    ['removal.gaussianBest', 0.8],
    ['removal.bestEnergy', 1 / 0.72],
    ['window.areaPerEnergy', 0.72],
    ['window.gain', 0.9],
    ['window.bestEnergy', 1 / 0.72],
  ])('%s changes by %f', (id, factor) => {
    expectClose(numberIn(losses, id) / numberIn({}, id), factor, { relative: 1e-9 });
  });
});

describe('the threshold that counts', () => {
  it('is the middle of the published range, the typed one, or asks for measured spots', () => {
    expectClose(numberIn({}, 'threshold.fluence'), Math.sqrt((1300 / 1.5) * 1600 * 1.5), exact);
    expect(noteIn({}, 'threshold.fluence')).toMatch(
      /wavelength 775\s?nm and 800\s?nm there, 1030\s?nm here; pulse duration 150\s?fs there, 250\s?fs here; repetition rate 100\s?Hz and 5\s?kHz there, 200\s?kHz here; pulses on a place not said there\. Measure/,
    );
    const typed = {
      'threshold.source': 'typed',
      'threshold.typedFluence': 3000,
      'threshold.typedUncertainty': 50,
    };
    expect(numberIn(typed, 'threshold.fluence')).toBe(3000);
    expect(numberIn(typed, 'threshold.uncertainty')).toBe(50);
    expect(noteIn(typed, 'threshold.fluence')).toBeUndefined();
    expect(problemIn({ 'threshold.source': 'fitted' }, 'threshold.fluence').parts.input).toBe(
      'threshold.spotTable',
    );
    const other = problemIn({ 'workpiece.material': 'other' }, 'threshold.fluence');
    expect(other.message).toMatch(/holds no threshold for this material\. Type one/);
  });

  it('is listed as published, with source and conditions', () => {
    const texts = (outcomeIn({}, 'threshold.published') as { value: string[] }).value;
    expect(texts[0]).toMatch(
      /^0\.16\s?J\/cm² \(ablation\): 775\s?nm, 150\s?fs, 100\s?Hz; P\. T\. Mannion et al\., Proc\. SPIE 4876 \(2003\), DOI 10\.1117\/12\.463744 \(abstract read\)$/,
    );
    expect(texts[1]).toMatch(
      /^0\.13\s?J\/cm² \(removal in grooves\): .* many pulses on a place; Opt\. Express 20, 29900 \(2012\)/,
    );
    const [silicon] = (
      outcomeIn({ 'workpiece.material': 'silicon' }, 'threshold.published') as { value: string[] }
    ).value;
    expect(silicon).toMatch(/800\s?nm, 5\s?fs to 400\s?fs, many pulses/);
  });

  it('many pulses there are said', () => {
    const silicon = { 'workpiece.material': 'silicon', 'laser.wavelength': 800e-9 };
    expect(noteIn(silicon, 'threshold.fluence')).toMatch(
      /^Published under other conditions: many pulses on a place there, where one alone needs more fluence\./,
    );
  });

  it('falls with the pulses on a place, never below the floor', () => {
    const incubating = {
      'threshold.source': 'typed',
      'threshold.incubationExponent': 0.85,
      'threshold.pulses': 100,
    };
    const source = 'Y. Jee et al., J. Opt. Soc. Am. B 5, 648 (1988)';
    expectClose(numberIn(incubating, 'threshold.fluenceAtN'), 2000 * 100 ** -0.15, {
      relative: 1e-12,
      source,
    });
    const floor = { ...incubating, 'threshold.floor': 600, 'threshold.pulses': 1e7 };
    expectClose(numberIn(floor, 'threshold.fluenceAtN'), 600 + 1400 * 1e7 ** -0.15, {
      relative: 1e-12,
      source: 'F. Di Niso et al., Opt. Express 22, 12200 (2014)',
    });
    expect(problemIn({ ...floor, 'threshold.floor': 3000 }, 'threshold.fluenceAtN').message).toMatch(
      /\(0\.3\s?J\/cm²\) lies above that of one pulse \(0\.2\s?J\/cm²\)/,
    );
  });

  it('no removal below the floor, whatever the number of pulses', () => {
    const floor = {
      'threshold.source': 'typed',
      'threshold.incubationExponent': 0.7,
      'threshold.floor': 1500,
    };
    const peak = numberIn({ ...floor, 'laser.pulseEnergy': 1e-6 }, 'spot.peakFluence');
    const energy = (1e-6 * 1499) / peak;
    for (const pulses of [1, 100, 1e7]) {
      const design = { ...floor, 'laser.pulseEnergy': energy, 'threshold.pulses': pulses };
      for (const id of ['removal.volume', 'removal.deepest', 'spot.markArea'])
        expect(numberIn(design, id), `${id}, ${pulses} pulses`).toBe(0);
    }
  });
});

describe('mark and removal of the design', () => {
  it('a ring mark while the dip lies below threshold', () => {
    const typed = { ...openPlane, 'threshold.source': 'typed', 'threshold.typedFluence': 2000 };
    const [peak, dip] = [numberIn(typed, 'spot.peakFluence'), numberIn(typed, 'spot.dip')];
    for (const part of [1 - 0.999 * dip, 1 - 1.001 * dip]) {
      const design = { ...typed, 'threshold.typedFluence': part * peak };
      const ring = part > 1 - dip;
      expect(numberIn(design, 'spot.markInnerDiameter') > 0).toBe(ring);
      expect(numberIn(design, 'spot.markArea')).toBeGreaterThan(0);
      const mean = numberIn(design, 'spot.meanFluence') / peak;
      expect(mean > part && mean < 1).toBe(true);
    }
    const none = { ...typed, 'threshold.typedFluence': 1.01 * peak };
    expect(numberIn(none, 'spot.markDiameter')).toBe(0);
    expect(problemIn(none, 'spot.meanFluence').message).toMatch(/^Nothing is marked: the peak fluence of/);
  });

  it('the effective area is energy over peak fluence', () => {
    const area = (20e-6 * numberIn({}, 'plate.transmission')) / numberIn({}, 'spot.peakFluence');
    expectClose(numberIn({}, 'spot.effectiveArea'), area, { relative: 1e-9, source: 'definition' });
    const plain = { ...openPlane, 'workpiece.z': 0 };
    const gaussian = (Math.PI * numberIn(plain, 'focus.radius') ** 2) / 2;
    expectClose(numberIn(plain, 'unshaped.spot.effectiveArea'), gaussian, {
      relative: 1e-8,
      source: 'πw²/2',
    });
  });

  it('volume, crater and their twins agree with each other', () => {
    const design = { 'threshold.pulses': 20 };
    expectClose(
      numberIn(design, 'removal.volumePerEnergy') * 20e-6,
      numberIn(design, 'removal.volume'),
      exact,
    );
    const { depth } = (outcomeIn(design, 'removal.crater') as { value: { depth: Float64Array } }).value;
    const deepest = numberIn(design, 'removal.deepest');
    expect(Math.max(...depth)).toBeLessThanOrEqual(deepest * (1 + 1e-9));
    expectClose(Math.max(...depth), deepest, { relative: 2e-2, source: 'sampled' });
    expect(numberIn(design, 'unshaped.removal.volume')).toBeLessThan(numberIn(design, 'removal.volume'));
  });

  it('gains little in volume and much in a narrow window, as physics.md says', () => {
    expectClose(numberIn(openPlane, 'removal.gain'), 0.989, { absolute: 1e-3, source: 'physics.md §6' });
    const narrow = { ...openPlane, 'window.highFluence': 2400 };
    expectClose(numberIn(narrow, 'window.gainAtTop'), 2.8147522626288843, {
      relative: 1e-6,
      source: 'window.json',
    });
    const wide = { ...openPlane, 'window.highFluence': 6000 };
    expectClose(numberIn(wide, 'window.gain'), 1.2740600608696553, { relative: 1e-6, source: 'window.json' });
    expectClose(numberIn(wide, 'window.gainAtTop'), 0.8787416038300916, {
      relative: 1e-6,
      source: 'window.json',
    });
    expectClose(
      numberIn({}, 'removal.flatTopBest') / numberIn({}, 'removal.gaussianBest'),
      Math.E / 2,
      exact,
    );
    expect(problemIn({ 'window.highFluence': 1000 }, 'window.gain').message).toMatch(/window is empty/);
  });

  it('two branches remove more where the second is the deeper, and are refused in the wrong order', () => {
    const two = { 'removal.branches': 'two' };
    expect(numberIn(two, 'removal.volume')).toBeGreaterThan(numberIn({}, 'removal.volume'));
    expect(numberIn(two, 'removal.gaussianBest')).toBeGreaterThan(numberIn({}, 'removal.gaussianBest'));
    expect(problemIn({ ...two, 'removal.secondThreshold': 500 }, 'removal.volume').parts.input).toBe(
      'removal.secondThreshold',
    );
  });
});
