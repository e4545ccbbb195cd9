import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { energyAtPeak, volumeAtPeak } from '../../lib/process/removal.ts';
import { readDesign } from '../../notebooks/keeping/readDesign.ts';
import { expectClose } from '../close.ts';
import { numberIn, problemIn } from './outcomesIn.ts';

const folder = new URL('../../data/designs/', import.meta.url);
const names = ['lecture-table', 'cold-plate-channels', 'rain-gauge-funnel'];

function valuesOf(name: string, changes: Patch = {}) {
  const file = `${name}.json`;
  const patch = readDesign(readFileSync(new URL(file, folder)), file).inputs;
  const { inputs } = applyPatch(designGraph, initialState(designGraph), { ...patch, ...changes });
  const engine = createEngine(designGraph, inputs);
  return (id: string) => valueOrThrow(engine.evaluate([id])[id]!) as number;
}

/** Layers of about a micrometre, so that the floor stays near its plane. */
const fine: Patch = { 'laser.pulseEnergy': 2e-6, 'scan.speed': 0.25 };

describe.each(names)('%s', (name) => {
  // One spot engraves alike in any design: steady threshold, no burst.
  const steady: Patch = {
    'threshold.incubationExponent': 1,
    'laser.pulsesPerBurst': 1,
    'threshold.pulses': 1,
    'engraving.layers': 1,
  };
  const value = valuesOf(name, steady);

  it('one layer removes the volume of its pulses', () => {
    const share = value('scan.pulseSpacing') * value('scan.lineSpacing');
    expectClose(value('engraving.depth'), value('removal.volume') / share, {
      relative: 1e-3,
      source: 'removal.volume, by Gauss panels; the grid is right to 5e-4',
    });
  });

  it('its plan comes to the depth wanted, no layer too many', () => {
    const wanted = value('engraving.wantedDepth');
    const layers = value('engraving.planLayers');
    const { depth } = value('engraving.layered') as unknown as { depth: Float64Array };
    expect(depth[layers]!).toBeGreaterThanOrEqual(wanted);
    expect(depth[layers - 1]!).toBeLessThan(wanted);
    const field = value('scan.fieldWidth') * value('scan.fieldHeight');
    expectClose(value('engraving.planVolume'), field * depth[layers]!, { relative: 1e-12 });
    expectClose(
      value('engraving.planVolumeRate') * value('engraving.planTime'),
      value('engraving.planVolume'),
      { relative: 1e-12 },
    );
  });

  it('roughness lies between 0 and what lies between highest and lowest', () => {
    expect(value('engraving.roughness')).toBeGreaterThan(0);
    expect(value('engraving.roughness')).toBeLessThan(value('engraving.highestToLowest') / 2 + 1e-12);
    expect(value('engraving.contrast')).toBeLessThanOrEqual(1);
  });
});

describe('the plan', () => {
  it('takes the field time of as many passes', () => {
    const layers = numberIn(fine, 'engraving.planLayers');
    const passes = numberIn({ ...fine, 'scan.passes': layers }, 'scan.fieldTime');
    expectClose(numberIn(fine, 'engraving.planTime'), passes, { relative: 1e-12 });
  });

  it('turns the hatch as the layers do', () => {
    const turned = { ...fine, 'scan.hatchAngle': Math.PI / 3, 'scan.fieldWidth': 4e-3 };
    const layers = numberIn(turned, 'engraving.planLayers');
    const passes = numberIn({ ...turned, 'scan.passes': layers }, 'scan.fieldTime');
    expectClose(numberIn(turned, 'engraving.planTime'), passes, { relative: 1e-12 });
  });

  it('says what stops it and how deep it gets', () => {
    const problem = problemIn({ ...fine, 'engraving.wantedDepth': 5e-3 }, 'engraving.planLayers');
    expect(problem.kind).toBe('absent');
    expect(problem.parts.input).toBe('engraving.wantedDepth');
    expect(problem.message).toMatch(
      /^A depth of 5000\sµm is not reached: [\d\u202f ]+ layers come to \d+\sµm, /,
    );
    expect(problem.message).toMatch(/the floor has left the focus|no pulse removes anything any more/);
  });

  it('says that nothing is engraved where no pulse reaches the threshold', () => {
    const weak = { 'laser.pulseEnergy': 0.1e-6 };
    expect(problemIn(weak, 'engraving.planLayers').message).toMatch(/^Nothing is engraved: no pulse reaches/);
    expect(problemIn(weak, 'engraving.contrast').kind).toBe('absent');
    expect(numberIn(weak, 'engraving.depth')).toBe(0);
    expect(problemIn(weak, 'engraving.roughness').message).toMatch(/^Nothing is engraved/);
  });

  it('incubation may bring a depth that one layer does not', () => {
    const weak = {
      'laser.pulseEnergy': 0.35e-6,
      'threshold.incubationExponent': 0.8,
      'scan.speed': 0.5,
      'engraving.wantedDepth': 5e-6,
    };
    const layered = numberIn(weak, 'engraving.layered') as unknown as { depth: Float64Array };
    expect(layered.depth[2]! - layered.depth[1]!).toBeGreaterThan(layered.depth[1]!);
    expect(numberIn(weak, 'engraving.planLayers')).toBeGreaterThan(1);
  });
});

describe('bad settings', () => {
  it('lines that are single are no field', () => {
    const apart = problemIn({ 'scan.lineSpacing': 5e-3 }, 'engraving.depth');
    expect(apart.parts.input).toBe('scan.lineSpacing');
    expect(problemIn({ 'scan.speed': 900, 'scan.maxSpeed': 1000 }, 'engraving.depth').parts.input).toBe(
      'scan.speed',
    );
  });

  it('a floor of the threshold above its first value, a second branch below the first', () => {
    expect(problemIn({ 'threshold.floor': 1e6 }, 'engraving.depth').parts.input).toBe('threshold.floor');
    const low = { 'removal.branches': 'two', 'removal.secondThreshold': 10 };
    expect(problemIn(low, 'engraving.depth').parts.input).toBe('removal.secondThreshold');
  });

  it('peaks beyond a thousand thresholds', () => {
    expect(problemIn({ 'laser.pulseEnergy': 2e-3, 'laser.maxPulseEnergy': 1 }, 'engraving.depth').kind).toBe(
      'outside',
    );
  });
});

describe('the plain beam at its own best', () => {
  it('behind a stop removes what its single craters do, and no other peak removes more', () => {
    const best = numberIn(fine, 'unshaped.engraving.best') as unknown as {
      peak: number;
      energy: number;
      volumePerEnergy: number;
    };
    const spot = numberIn(fine, 'unshaped.spot.asked') as unknown as Spot;
    const law = [
      { depth: numberIn(fine, 'removal.depthPerPulse'), threshold: numberIn(fine, 'threshold.fluence') },
    ];
    const craters = (peak: number) => volumeAtPeak(spot, law, peak) / energyAtPeak(spot, peak);
    expectClose(best.volumePerEnergy, craters(best.peak), {
      relative: 1e-3,
      source: 'volumeAtPeak, by Gauss panels; the grid is right to 5e-4',
    });
    for (const factor of [0.8, 0.95, 1.05, 1.25])
      expect(craters(best.peak * factor)).toBeLessThan(craters(best.peak));
  });

  it('without a stop it is the Gaussian’s own', () => {
    const open: Patch = { ...fine, 'plate.stop': 'open' };
    const best = numberIn(open, 'unshaped.engraving.best') as unknown as {
      peak: number;
      volumePerEnergy: number;
    };
    expectClose(best.peak / numberIn(open, 'threshold.fluence'), Math.exp(2), {
      relative: 1e-6,
      source: 'e²',
    });
    expectClose(best.volumePerEnergy, numberIn(open, 'removal.gaussianBest'), {
      relative: 1e-3,
      source:
        '2δ/(e²F_th), G. Raciukaitis et al., J. Laser Micro/Nanoeng. 4, 186 (2009) (memory); grid to 5e-4',
    });
  });

  it('is absent where pulses along a line already leave it rougher than with the plate', () => {
    const sparse: Patch = { ...fine, 'scan.speed': 1.5, 'scan.lineSpacing': 1e-6 };
    const problem = problemIn(sparse, 'unshaped.engraving.best');
    expect(problem.kind).toBe('absent');
    expect(problem.parts.input).toBe('scan.speed');
  });
});
