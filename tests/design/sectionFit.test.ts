import { describe, expect, it } from 'vitest';
import { designs } from '../../data/designs/make.ts';
import { sectionTruth } from '../../data/measured/drawSection.ts';
import { makeMeasured } from '../../data/measured/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { grooveModel } from '../../lib/design/sectionFit.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue, type Outcome, valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import type { NamedSection } from '../../lib/measured/sectionTable.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import type { Light } from '../../lib/optics/light.ts';
import type { PulseTrain } from '../../lib/process/chordRemoval.ts';
import { depthAt } from '../../lib/process/grooveShape.ts';
import type { SectionFit } from '../../lib/process/sectionFit.ts';
import { readFileAsPatch } from '../../notebooks/measuredFiles.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';

const coldPlate = designs['cold-plate-channels.json']!.patch;
const engine = createEngine(designGraph);

function evaluate(patch: Patch, ids: readonly string[]): Record<string, Outcome> {
  engine.setInputs(applyPatch(designGraph, initialState(designGraph), patch).inputs);
  return engine.evaluate(ids) as Record<string, Outcome>;
}

function read<T>(patch: Patch, id: string): T {
  return valueOrThrow(evaluate(patch, [id])[id] as never) as T;
}

/** A groove that the model cuts in the initial beam's plane, measured with noise, tilt and an offset. */
function measured(patch: Patch, seed: number) {
  const random = createRandom(seed);
  const ids = ['focus.light', 'workpiece.z', 'focus.unshapedPeakFluence', 'groove.pulses'];
  const outcomes = evaluate(patch, ids);
  const [light, z, unit, train] = ids.map((id) => valueOrThrow(outcomes[id] as never)) as unknown as [
    Light,
    number,
    number,
    PulseTrain,
  ];
  const depth = 20e-9 * Math.exp(0.3 * random.normal());
  const threshold = train.law.incubation.first * Math.exp(0.2 * random.normal());
  const groove = grooveModel(light, z, { ...train, unit }, 5)(depth, threshold);
  const deepest = Math.max(...groove.depth);
  const width = 2 * groove.y.findLast((_, i) => groove.depth[i]! > 0.1 * deepest)!;
  const [tilt, level, centre] = [
    0.02 * random.normal(),
    1e-6 * random.normal(),
    0.1 * width * random.normal(),
  ];
  const position = Array.from({ length: 241 }, (_, i) => (i / 120 - 1) * width);
  const height = position.map(
    (x) => level + tilt * x - depthAt(groove, x - centre) + 0.01 * deepest * random.normal(),
  );
  const file: NamedSection = { name: 'made.csv', position, height, named: 'height', missing: 0 };
  return { depth, threshold, patch: { ...patch, 'groove.sectionFile': file, 'groove.sectionPasses': 5 } };
}

const count = cases(20, 4);

describe('the fit of the groove model to a section that it made', () => {
  it.each([
    ['a flat-top, in green', coldPlate],
    ['incubation along the line', { ...coldPlate, 'threshold.incubationExponent': 0.9, 'scan.speed': 0.4 }],
    // A step of a whole wave leaves the beam as it was.
    ['a Gaussian', { ...coldPlate, 'plate.designPhase': 2 * Math.PI }],
  ] as const)('%s: both values within three standard uncertainties, no bias', (_name, patch) => {
    const scores = Array.from({ length: count }, (_, seed) => {
      const made = measured(patch, seed + 1);
      const fit = read<SectionFit>(made.patch, 'groove.sectionFit');
      expect(fit.depthPerPulse.uncertainty / fit.depthPerPulse.value).toBeLessThan(0.05);
      return [
        (fit.depthPerPulse.value - made.depth) / fit.depthPerPulse.uncertainty,
        (fit.threshold.value - made.threshold) / fit.threshold.uncertainty,
      ] as const;
    });
    for (const k of [0, 1] as const) {
      const within = scores.filter((pair) => Math.abs(pair[k]) <= 3).length;
      expect(within / count).toBeGreaterThanOrEqual(0.95);
      // Three standard errors of the mean of normal deviates.
      const mean = scores.reduce((sum, pair) => sum + pair[k], 0) / count;
      expect(Math.abs(mean)).toBeLessThan(3 / Math.sqrt(count));
    }
  });
});

describe('the invented section of the cold-plate channels', () => {
  const name = 'cold-plate-section.csv';
  const given = { ...coldPlate, ...readFileAsPatch('groove.sectionFile', makeMeasured()[name]!, name) };
  const source = 'data/measured/README.md';

  it('gives back the values behind it', () => {
    const fit = read<SectionFit>(given, 'groove.sectionFit');
    const { depthPerPulse, threshold } = sectionTruth;
    expectClose(fit.depthPerPulse.value, depthPerPulse, {
      absolute: 3 * fit.depthPerPulse.uncertainty,
      source,
    });
    expectClose(fit.threshold.value, threshold, { absolute: 3 * fit.threshold.uncertainty, source });
    expect(fit.depthPerPulse.uncertainty).toBeLessThan(0.01 * depthPerPulse);
    expect(fit.above).toBeGreaterThan(5);
    // Neighbours alike by 0.6: (1 + 0.6)/(1 − 0.6) = 4, found to a factor of two.
    expect(fit.inflation).toBeGreaterThan(2);
    expect(fit.inflation).toBeLessThan(8);
  });

  it('measures like the groove that the fit cuts', () => {
    const number = (id: string) => read<number>(given, id);
    for (const what of ['Depth', 'TopWidth', 'WallAngle']) {
      expectClose(number(`groove.measured${what}`), number(`groove.sectionFitted${what}`), {
        relative: 0.02,
        source: 'noise of 60 nm in 17 µm, walls missing every seventh point',
      });
    }
  });

  it('is set against the groove that the page cuts with as many passes', () => {
    const { passes } = sectionTruth;
    const depth = read<number>({ ...given, 'groove.passes': passes }, 'groove.depth');
    // The light is sampled down to another level, so that places across lie elsewhere: 1e-4 of the depth.
    expectClose(read<number>(given, 'groove.sectionTodayDepth'), depth, { relative: 1e-3 });
  });

  it('taken over, the groove of today is the fitted one', () => {
    const fit = read<SectionFit>(given, 'groove.sectionFit');
    const taken = {
      ...given,
      'removal.depthPerPulse': fit.depthPerPulse.value,
      'threshold.source': 'typed',
      'threshold.typedFluence': fit.threshold.value,
    };
    expectClose(
      read<number>(taken, 'groove.sectionTodayDepth'),
      read<number>(given, 'groove.sectionFittedDepth'),
      {
        relative: 1e-6,
      },
    );
    const again = read<SectionFit>(taken, 'groove.sectionFit');
    // A promised gain of 1e-8 of the squares moves a value by 0.01 of its uncertainty at most.
    expectClose(again.depthPerPulse.value, fit.depthPerPulse.value, {
      absolute: 0.02 * fit.depthPerPulse.uncertainty,
    });
    expectClose(again.threshold.value, fit.threshold.value, { absolute: 0.02 * fit.threshold.uncertainty });
  });
});

describe('where nothing can be fitted', () => {
  const ofCount = (count: number, height: (i: number) => number): NamedSection => ({
    name: 'bad.csv',
    position: Array.from({ length: count }, (_, i) => 1e-6 * i),
    height: Array.from({ length: count }, (_, i) => height(i)),
    named: 'height',
    missing: 0,
  });
  const flat = ofCount(40, (i) => 1e-8 * Math.sin(7 * i * i));

  it.each([
    ['no section', {}, 'groove.sectionFile', /^No measured cross-section has been given yet/],
    ['a section without a groove', { 'groove.sectionFile': flat }, 'groove.sectionFile', /^No groove shows/],
    [
      'a beam too weak',
      { ...measured(coldPlate, 3).patch, 'laser.pulseEnergy': 1e-9 },
      'groove.sectionFile',
      /cuts no groove at the place of the measured one/,
    ],
  ] as const)('%s: a problem that names the input', (_name, patch, input, says) => {
    const outcome = evaluate({ ...coldPlate, ...patch }, ['groove.sectionFit'])['groove.sectionFit']!;
    expect(hasValue(outcome)).toBe(false);
    const { problem } = outcome as { problem: { message: string; parts: { input?: string } } };
    expect(problem.message).toMatch(says);
    expect(problem.parts.input).toBe(input);
  });
});
