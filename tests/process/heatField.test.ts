import { describe, expect, it } from 'vitest';
import { fieldRiseAt, type HeatedField, roundsOf } from '../../lib/process/heatField.ts';
import { lineRise, oldLineRise, ownLineRise } from '../../lib/process/heatLine.ts';
import { type HeatInput, pulseRise } from '../../lib/process/heatPulse.ts';
import { linesRise, scanRise } from '../../lib/process/heatSums.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

const steel: HeatInput = { energy: 1.5e-6, radius: 15e-6, diffusivity: 3.75e-6, heatCapacity: 4e6 };
const copper: HeatInput = { energy: 5e-6, radius: 30e-6, diffusivity: 1.16e-4, heatCapacity: 3.45e6 };
const field: HeatedField = {
  pulses: 120,
  pulseSpacing: 2e-6,
  rate: 1e6,
  lines: 150,
  lineSpacing: 6e-6,
  lineTime: 2e-4,
  interlacing: 1,
  directions: 'both',
  passes: 1,
  passTime: 150 * 2e-4,
};

/** Every pulse of every line of every pass, one by one: the order written down, nothing taken together. */
function direct(heat: HeatInput, field: HeatedField, pulse: number, line: number, behind = 0): number {
  const { pulses, pulseSpacing, rate, lines, lineSpacing, lineTime, passTime } = field;
  const { rounds, linesIn, linesBefore } = roundsOf(field);
  const turn = linesBefore(rounds - 1) + line;
  const now = (field.passes - 1) * passTime + turn * lineTime + pulse / rate;
  const at = { x: pulse * pulseSpacing - behind, y: (line * rounds + rounds - 1) * lineSpacing };
  const forwardNow = turn % 2 === 0;
  let sum = 0;
  for (let pass = 0; pass < field.passes; pass++)
    for (let round = 0; round < rounds; round++)
      for (let k = 0; k < linesIn(round); k++) {
        const thisTurn = linesBefore(round) + k;
        // The place is counted along the line being written, so that a line of the other direction runs back.
        const forward = field.directions === 'one' || (thisTurn % 2 === 0) === forwardNow;
        for (let i = 0; i < pulses; i++) {
          const time = pass * passTime + thisTurn * lineTime + i / rate;
          if (time >= now - 0.5 / rate) break;
          const x = (forward ? i : pulses - 1 - i) * pulseSpacing;
          const y = (k * rounds + round) * lineSpacing;
          sum += pulseRise(heat, (x - at.x) ** 2 + (y - at.y) ** 2, now - time);
        }
      }
  expect(lines).toBe(linesBefore(rounds - 1) + linesIn(rounds - 1));
  return sum;
}

const variants: readonly [string, HeatInput, Partial<HeatedField>][] = [
  ['to and fro', steel, {}],
  ['all the same way', steel, { directions: 'one' }],
  ['copper', copper, {}],
  ['a thin plate', { ...steel, thickness: 50e-6 }, {}],
  ['interlaced by three', steel, { interlacing: 3 }],
  ['interlaced by four, lines left over', copper, { interlacing: 4, lines: 151, passTime: 151 * 2e-4 }],
  ['interlaced by forty', steel, { interlacing: 40 }],
  ['three passes', steel, { passes: 3, lines: 60, passTime: 60 * 2e-4 }],
  [
    'twenty passes, interlaced by ten',
    steel,
    { passes: 20, lines: 40, passTime: 40 * 2e-4, interlacing: 10 },
  ],
  ['three passes of many lines', steel, { passes: 3 }],
  ['interlaced by two, many lines', steel, { interlacing: 2, directions: 'one' }],
  ['pulses far apart', steel, { pulseSpacing: 80e-6 }],
  ['lines far apart', steel, { lineSpacing: 100e-6, lineTime: 4e-4, passTime: 0.06 }],
  ['a long wait', steel, { lineTime: 5e-3, passTime: 0.75 }],
  ['a poor conductor', { ...steel, diffusivity: 1e-9 }, { lineSpacing: 15e-6 }],
];

describe('a field against every pulse one by one', () => {
  for (const [name, heat, changes] of variants) {
    it(name, () => {
      const changed = { ...field, ...changes };
      const { rounds, linesIn } = roundsOf(changed);
      const top = linesIn(rounds - 1) - 1;
      let worst = 0;
      // Below e^(−22) of what one pulse leaves in its middle nothing counts.
      const least = 1e-9 * pulseRise(heat, 0, 1 / changed.rate);
      for (const line of new Set([top, top - 1, Math.floor(top / 2), 1, 0].filter((one) => one >= 0)))
        for (const [pulse, behind] of [
          [1, 0],
          [1, 0.9 * changed.pulseSpacing],
          [10, 0],
          [60, 0],
          [60, 2.4 * changed.pulseSpacing],
          [119, 0],
          [119, 1.5 * heat.radius],
        ] as const) {
          const { own, lines } = fieldRiseAt(heat, changed, { pulse, line, behind });
          const expected = direct(heat, changed, pulse, line, behind);
          worst = Math.max(worst, Math.abs(own + lines - expected) / (expected + least));
        }
      console.log(`${name}: ${worst.toExponential(1)}`);
      expect(worst).toBeLessThan(5e-5);
    });
  }
});

describe('lines', () => {
  it('the line being written, 3000 pulses as a continuous line behind the nearest', () => {
    for (const heat of [steel, copper, { ...steel, diffusivity: 1e-8 }])
      for (const speed of [0.05, 2, 50]) {
        const line = { speed, rate: 1e6, count: 3000 };
        const expected = scanRise(heat, line, (3000 * speed) / 1e6, 0);
        expectClose(ownLineRise(heat, speed / 1e6, 1e6, 3000), expected, {
          relative: 1e-6,
          source: 'one by one',
        });
      }
  });

  it('an older line pulse by pulse and as a continuous one', () => {
    for (const ago of [6, 32, 100])
      for (const along of [0, 400, 1999]) {
        const line = { spacing: 2e-6, count: 2000, age: ago * 2.2e-3, ageStep: -1e-6 };
        let expected = 0;
        for (let i = 0; i < 2000; i++)
          expected += pulseRise(steel, ((i - along) * 2e-6) ** 2 + 1e-8, line.age + i * line.ageStep);
        const closeness = { relative: 2e-6, source: 'one by one' };
        expectClose(lineRise(steel, line, along, 1e-4), expected, closeness);
        expectClose(oldLineRise(steel, line, along, 1e-4), expected, closeness);
      }
  });

  it('a long line of one age has the closed form', () => {
    const [age, y] = [1e-3, 5e-5];
    const square = 15e-6 ** 2 + 8 * steel.diffusivity * age;
    const closed =
      ((2 * (steel.energy / 2e-6)) /
        (steel.heatCapacity * Math.sqrt(Math.PI * steel.diffusivity * age)) /
        Math.sqrt(2 * Math.PI * square)) *
      Math.exp((-2 * y * y) / square);
    const line = { spacing: 2e-6, count: 4001, age, ageStep: 0 };
    expectClose(oldLineRise(steel, line, 2000, y), closed, {
      relative: 1e-9,
      source: 'physics, line formula',
    });
  });

  it('lines of heat.json', () => {
    for (const one of reference('heat').cases) {
      const heat: HeatInput = {
        energy: one.Q,
        radius: one.w,
        diffusivity: one.chi,
        heatCapacity: one.rho * one.c,
      };
      const lines = {
        speed: one.v,
        rate: one.f,
        count: one.N,
        lines: one.L,
        spacing: one.pitch,
        period: one.period,
      };
      const heated: HeatedField = {
        pulses: one.N,
        pulseSpacing: one.v / one.f,
        rate: one.f,
        lines: one.L + 1,
        lineSpacing: one.pitch,
        lineTime: one.period,
        interlacing: 1,
        directions: 'one',
        passes: 1,
        passTime: (one.L + 1) * one.period,
      };
      const expected = linesRise(heat, lines, 0, one.L * one.pitch);
      expectClose(fieldRiseAt(heat, heated, { pulse: 0, line: one.L }).lines, expected, { relative: 1e-6 });
    }
  });
});

it('a real field, 10 mm by 10 mm with lines 6 µm apart, takes milliseconds', () => {
  const real = { ...field, pulses: 40000, pulseSpacing: 0.25e-6, rate: 2e5, lines: 1667, lineTime: 0.2 };
  const start = performance.now();
  const { own, lines } = fieldRiseAt(steel, { ...real, passTime: 1667 * 0.2 }, { pulse: 20000, line: 1666 });
  console.log(`6.7e7 pulses in ${(performance.now() - start).toFixed(1)} ms: ${own} and ${lines} K`);
  expect(own + lines).toBeGreaterThan(0);
});
