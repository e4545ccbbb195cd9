import { expect, it } from 'vitest';
import type { Hatch } from '../../lib/process/hatch.ts';
import { evenFieldRise, warmThroughRise } from '../../lib/process/heatArea.ts';
import { fieldRiseAt } from '../../lib/process/heatField.ts';
import type { HeatInput } from '../../lib/process/heatPulse.ts';
import { crowdsAtTurns, heatedField, hottestRise, rateReaching } from '../../lib/process/heatRate.ts';
import { pointRise } from '../../lib/process/heatSums.ts';
import type { ScanMotion } from '../../lib/process/scanTime.ts';
import { expectClose } from '../close.ts';

const steel: HeatInput = { energy: 1e-6, radius: 8e-6, diffusivity: 3.75e-6, heatCapacity: 4e6 };
const field = { width: 5e-3, height: 5e-3, time: 60, power: 0.5 };
const hatch: Hatch = {
  width: 2e-3,
  height: 1e-3,
  lineSpacing: 6e-6,
  passes: 1,
  angle: 0,
  interlacing: 1,
  directions: 'both',
};
const motion: ScanMotion = {
  speed: 1,
  acceleration: 1e4,
  maxSpeed: 5,
  directions: 'both',
  turnRound: 'outside',
  delay: 0,
};
const settings = { hatch, motion, pulseSpacing: 1e-6 };

it('an even field: early it is one-dimensional flow, late a point source that has settled', () => {
  const brief = { ...field, time: 1e-3 };
  const flow = field.power / 25e-6;
  const oneDimensional = (2 * flow * Math.sqrt(1e-3)) / Math.sqrt(Math.PI * 15 * 4e6);
  expectClose(evenFieldRise(steel, brief), oneDimensional, { relative: 1e-9, source: '2q√t/√(πkρc)' });
  // Steady middle of a square: q a ln(1+√2)·2/(πk) (H. S. Carslaw & J. C. Jaeger (memory)); what is missing goes with a/√(πχt).
  const steady = (2 * flow * 2.5e-3 * Math.log(1 + Math.SQRT2)) / (Math.PI * 15);
  const late = { ...field, time: 1e8 };
  const missing = (flow * 25e-6) / (2 * Math.PI * 15 * Math.sqrt(Math.PI * 3.75e-6 * 1e8));
  expectClose(evenFieldRise(steel, late) + missing, 2 * steady, { relative: 1e-6, source: 'steady state' });
});

it('a plate warms more than a half-space, and less than if all heat stayed below the field', () => {
  const thick = evenFieldRise(steel, field);
  const plate = evenFieldRise({ ...steel, thickness: 1e-3 }, field);
  const below = warmThroughRise(steel, 1e-3, field);
  expect(thick).toBeLessThan(plate);
  expect(plate).toBeLessThan(below);
  expectClose(evenFieldRise({ ...steel, thickness: 1 }, field), thick, { relative: 1e-12 });
  // A field far wider than the heat goes: it only warms through, and the depth evens out after d²/χ = 0.3 s.
  const wide = { width: 1, height: 1, time: 60, power: 2e4 };
  expectClose(evenFieldRise({ ...steel, thickness: 1e-3 }, wide), warmThroughRise(steel, 1e-3, wide), {
    relative: 2e-3,
    source: 'd²/(3χt) = 1.5e-3 of the whole is still near the surface',
  });
});

it('lines summed over a field gone over quickly come to the even field', () => {
  const quick = { ...motion, acceleration: 1e8 };
  const often = { ...hatch, lineSpacing: 100e-6, passes: 4000 };
  const fast = heatedField({ hatch: often, motion: quick, pulseSpacing: 100e-6 }, 1e6);
  const wide = { ...steel, radius: 100e-6 };
  const middle = fieldRiseAt(wide, fast, { pulse: 10, line: 5 });
  const time = fast.passTime * 4000;
  const power = (1e-6 * fast.pulses * fast.lines * 4000) / time;
  const even = evenFieldRise(steel, { width: 2e-3, height: 1e-3, time, power });
  // A pass takes 1/300 of the time in which heat leaves the field: what it leaves unevenly is √(1/300) of the whole, about half of it.
  expectClose(middle.own + middle.lines, even, { relative: 0.03, source: 'evenFieldRise' });
});

it('the hottest place is no cooler than others tried', () => {
  for (const changes of [{}, { interlacing: 4 }, { passes: 3 }, { directions: 'one' as const }]) {
    const changed = heatedField({ ...settings, hatch: { ...hatch, ...changes } }, 1e6);
    const hottest = hottestRise(steel, changed);
    expectClose(hottest.rise, hottest.own + hottest.lines, { relative: 1e-15 });
    const top = Math.floor(changed.lines / changed.interlacing) - 1;
    for (let part = 0; part <= 1; part += 0.05) {
      const pulse = Math.round(part * (changed.pulses - 1));
      for (const line of [top, Math.floor(top / 2), Math.floor(top / 4)]) {
        const { own, lines } = fieldRiseAt(steel, changed, { pulse, line });
        expect(own + lines).toBeLessThanOrEqual(1.02 * hottest.rise);
      }
    }
  }
});

it('the hottest place lies where the last pulses came where these are apart', () => {
  for (const [pulseSpacing, acceleration] of [
    [1e-6, 1e4],
    [4e-6, 1e5],
    [10e-6, 1e6],
    [40e-6, 1e8],
  ] as const) {
    const apart = heatedField({ ...settings, pulseSpacing, motion: { ...motion, acceleration } }, 1e6);
    const hottest = hottestRise(steel, apart);
    const { pulse, line } = hottest;
    for (let part = 0; part <= 4; part += 0.05) {
      for (const behind of [part * steel.radius, part * pulseSpacing]) {
        if (behind > pulse * pulseSpacing) continue;
        const { own, lines } = fieldRiseAt(steel, apart, { pulse, line, behind });
        expect(own + lines).toBeLessThanOrEqual(1.02 * hottest.rise);
      }
    }
    if (pulseSpacing > 2 * steel.radius) expect(hottest.behind).toBe(pulseSpacing);
  }
});

it('pulses crowd at turns with the laser on from where those are longer than a pulse spacing', () => {
  const inside = { ...settings, motion: { ...motion, turnRound: 'inside' as const } };
  // v²/(2a) = p at v = √(2·1e4·1e-6) = 0.141 m/s, 141 kHz.
  expect(crowdsAtTurns(inside, 140e3)).toBe(false);
  expect(crowdsAtTurns(inside, 143e3)).toBe(true);
  expect(crowdsAtTurns(settings, 1e9)).toBe(false);
});

it('the rate at which a limit is reached', () => {
  const riseAt = (rate: number) => hottestRise(steel, heatedField(settings, rate)).rise;
  const now = riseAt(2e5);
  for (const limit of [0.2 * now, now / 2, 2 * now]) {
    const rate = rateReaching(riseAt, limit, 2e5)!;
    expectClose(riseAt(rate), limit, { relative: 1e-7, source: 'put back' });
  }
  expect(rateReaching(() => 1, 2, 1e5)).toBeUndefined();
  expect(rateReaching((rate) => pointRise(steel, rate), 100, 1e5)).toBeGreaterThan(0);
});
