import { describe, expect, it } from 'vitest';
import { designs } from '../../data/designs/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { withPhaseScaled } from '../../lib/optics/variants.ts';
import { bestField, type FieldDemand, partsOfSetting } from '../../lib/process/bestField.ts';
import { bestSize, type FieldMachine, fastestAt, largestScale } from '../../lib/process/fieldMachine.ts';
import { lineDose } from '../../lib/process/lineDose.ts';
import type { ScanMotion } from '../../lib/process/scanTime.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { countParts } from './countParts.ts';
import { crossedLight } from './spotsUnderTest.ts';

/** Light and demand of an invented design. */
function demandOf(patch: Record<string, unknown>, plate: boolean) {
  const { inputs } = applyPatch(designGraph, initialState(designGraph), patch);
  const engine = createEngine(designGraph, inputs);
  const value = (id: string) => valueOrThrow(engine.evaluate([id])[id]!);
  const number = (id: string) => value(id) as number;
  const light = value('focus.light') as Light;
  const machine: FieldMachine = {
    width: number('scan.fieldWidth'),
    height: number('scan.fieldHeight'),
    motion: value('scan.motion') as ScanMotion,
    // To and fro with overscan: √(aL/2).
    turningSpeed: Math.sqrt((number('scan.acceleration') * number('scan.fieldWidth')) / 2),
    maxRepetitionRate: number('laser.maxRepetitionRate'),
    maxPower: number('laser.maxPower'),
    maxPulseEnergy: number('laser.maxPulseEnergy'),
  };
  const demand: FieldDemand = {
    wanted: {
      low: number('ripples.windowLow'),
      high: number('ripples.windowHigh'),
      pulsesLow: number('ripples.pulsesLow'),
      pulsesHigh: number('ripples.pulsesHigh'),
      exponent: number('threshold.incubationExponent'),
    },
    leastInside: number('comparison.leastInside'),
    largestModulation: number('comparison.largestModulation'),
    modulation: (spot, spacing) => lineDose(spot, spacing).modulation,
    transmission: 1,
    machine,
  };
  return { demand, light: plate ? light : withPhaseScaled(light, 0) };
}

/**
 * Fastest rate on a grid of planes, line spacings, peaks and pulse spacings around a setting, every field counted place
 * by place: no step of the search is used.
 */
function bruteForce(light: Light, demand: FieldDemand, found: NonNullable<ReturnType<typeof bestField>>) {
  const { wanted, leastInside, largestModulation, machine } = demand;
  const whole = cases(1, 0) === 1;
  const around = (few: readonly number[], all: readonly number[]) => (whole ? all : few);
  let best = { rate: 0, text: '' };
  for (const shift of around([0, 0.05], [-0.08, -0.03, 0, 0.03, 0.08])) {
    const defocus = Math.max(0, found.defocus + shift);
    const spot = spotAt(light, planeOfDefocus(light, defocus));
    for (const wider of around([1], [0.88, 0.96, 1, 1.04, 1.12])) {
      const lineSpacing = found.setting.lineSpacing * wider;
      if (lineDose(spot, lineSpacing).modulation > largestModulation) continue;
      for (const lower of around([0], [0, 0.01, 0.03])) {
        const peak = found.peak - lower;
        const energy = (peak * wanted.high * spot.effectiveArea) / (spot.transmission * demand.transmission);
        for (const further of around([0.97, 1.05], [0.97, 1, 1.03, 1.1])) {
          const pulseSpacing = found.setting.pulseSpacing * further;
          const setting = { ...found.setting, pulseSpacing, lineSpacing, energy };
          const { rate } = bestSize(machine, setting);
          if (rate <= best.rate) continue;
          const unit = (peak * wanted.high) / spot.peak;
          const { inside } = countParts(spot, unit, { pulseSpacing, lineSpacing, passes: 1 }, wanted, {
            columns: 3,
            rows: 150,
            reach: 1.6 * Math.sqrt(spot.effectiveArea),
          });
          if (inside >= leastInside) best = { rate, text: `${shift} ${wider} ${lower} ${further}` };
        }
      }
    }
  }
  return best;
}

/** What the search may miss: its last steps are 0.3 % of the plane, 0.6 % of the spacing and 0.1 % of the peak. */
const missed = 0.02;

describe('the fastest field of each beam', () => {
  const beams = Object.values(designs).flatMap(({ name, patch }) =>
    [true, false].map((plate) => [name, plate ? 'shaped' : 'unshaped', patch, plate] as const),
  );
  it.each(beams)(
    '%s, %s: no setting around it is faster and keeps the demand',
    (name, words, patch, plate) => {
      const { demand, light } = demandOf(patch, plate);
      const found = bestField((defocus) => spotAt(light, planeOfDefocus(light, defocus)), demand)!;
      const spot = spotAt(light, planeOfDefocus(light, found.defocus));
      expect(partsOfSetting(spot, demand, found.peak, found.setting).inside).toBeGreaterThanOrEqual(
        demand.leastInside,
      );
      expect(lineDose(spot, found.setting.lineSpacing).modulation).toBeLessThanOrEqual(
        demand.largestModulation,
      );
      const brute = bruteForce(light, demand, found);
      console.log(
        `${name}, ${words}: ${(found.fastest.rate * 1e6).toFixed(1)} mm²/s, ζ ${found.defocus.toFixed(3)}, lines ${(found.setting.lineSpacing / found.setting.diameter).toFixed(3)} D, pulses ${(found.setting.pulseSpacing / found.setting.diameter).toFixed(4)} D, peak ${found.peak.toFixed(3)}; around it at most ${((100 * brute.rate) / found.fastest.rate).toFixed(1)} % (${brute.text})`,
      );
      expect(brute.rate).toBeLessThanOrEqual(found.fastest.rate * (1 + missed));
    },
    900_000,
  );

  it('crossed steps are searched alike', () => {
    const { demand } = demandOf({}, true);
    const few = { ...demand, leastInside: 0.8, largestModulation: 0.3 };
    const spot = spotAt(crossedLight, 0);
    const found = bestField(() => spot, few)!;
    expect(partsOfSetting(spot, few, found.peak, found.setting).inside).toBeGreaterThanOrEqual(0.8);
    expect(found.fastest.rate).toBeGreaterThan(0);
  }, 120_000);

  it('finds nothing where nothing keeps the demand', () => {
    const { demand, light } = demandOf({}, false);
    const narrow = { ...demand, wanted: { ...demand.wanted, high: demand.wanted.low * 1.001 } };
    const spot = spotAt(light, 0);
    expect(bestField(() => spot, { ...narrow, leastInside: 0.9999 })).toBeNull();
  });
});

describe('the size of the spot', () => {
  const machine = demandOf({}, true).demand.machine;
  const setting = { pulseSpacing: 1e-6, lineSpacing: 10e-6, energy: 1e-6, diameter: 30e-6 };

  it('with power as the limit the rate is P p Δy/E whatever the size, less turning round', () => {
    const fastest = fastestAt(machine, setting, 5);
    expect(fastest.limit).toBe('power');
    expectClose(fastest.speed, (5e-6 * 20) / 25e-6, { relative: 1e-12, source: 'v = p P/E' });
    const time = 10e-3 / fastest.speed + (2 * fastest.speed) / 10e3;
    expectClose(fastest.rate, (50e-6 * 10e-3) / time, { relative: 1e-12, source: 'area over time' });
  });

  it('the largest is what the pulse energy reaches: √(E_max/E)', () => {
    expectClose(largestScale(machine, setting), 10, { relative: 1e-12, source: 'E grows with the area' });
  });

  it('the best reaches 99 % of the largest, and no smaller one does', () => {
    const best = bestSize(machine, setting);
    const top = fastestAt(machine, setting, 10).rate;
    expect(best.rate).toBeGreaterThanOrEqual(0.99 * top * (1 - 1e-9));
    expect(fastestAt(machine, setting, best.scale * 0.999).rate).toBeLessThan(0.99 * top);
  });
});
