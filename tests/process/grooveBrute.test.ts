import { describe, expect, it } from 'vitest';
import { focusRadius, type Light, planeOfDefocus, rayleighLength } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import type { CuttingLaw } from '../../lib/process/cuttingLaw.ts';
import { countingLevel } from '../../lib/process/cuttingLaw.ts';
import { sampleCuttingLight } from '../../lib/process/cuttingLight.ts';
import { cutGroove } from '../../lib/process/groove.ts';
import { type GrooveShape, shapeOf, widthAt } from '../../lib/process/grooveShape.ts';
import { cutSheet } from '../../lib/process/sheet.ts';
import { expectClose } from '../close.ts';
import { grooveByPulses } from './grooveByPulses.ts';
import { crossedStep, roundStep } from './spots.ts';

const first = 1500;
const steel: CuttingLaw = { depth: 30e-9, incubation: { first, exponent: 0.88, floor: 400 } };
const copper: CuttingLaw = {
  depth: 15e-9,
  incubation: { first, exponent: 1, floor: 0 },
  second: { depth: 60e-9, threshold: 4000 },
};
const pulseSpacing = 0.8e-6;
const passes = 6;

interface Scene {
  readonly name: string;
  readonly light: Light;
  readonly zeta: number;
  readonly direction: number;
  readonly law: CuttingLaw;
  readonly peak: number;
}

const scenes: readonly Scene[] = [
  { name: 'Gaussian', light: roundStep(1, 0, 0), zeta: 0, direction: 0, law: steel, peak: 8 },
  { name: 'flat-top', light: roundStep(1, 1.4), zeta: -0.41, direction: 0, law: steel, peak: 8 },
  { name: 'ring', light: roundStep(0.9), zeta: 0, direction: 0, law: copper, peak: 8 },
  {
    name: 'crossed step along an axis',
    light: crossedStep(1.05),
    zeta: 0.3,
    direction: 0,
    law: steel,
    peak: 8,
  },
  {
    name: 'crossed step at 45°',
    light: crossedStep(1.05),
    zeta: 0.3,
    direction: Math.PI / 4,
    law: copper,
    peak: 8,
  },
];

function inBothWays({ light, zeta, direction, law, peak }: Scene) {
  const z = planeOfDefocus(light, zeta);
  const unit = (peak * first) / spotAt(light, z).peak;
  const cutting = sampleCuttingLight({
    spotAtDepth: (depth) => spotAt(light, z + depth),
    planeStep: rayleighLength(light) / 20,
    level: countingLevel(law) / unit,
    depth: rayleighLength(light) / 2,
    direction,
    mirrored: light.plate.kind === 'round',
  });
  const train = { unit, pulseSpacing, pulsesPerBurst: 1, law };
  const byPulses = (rows: number, parts: number) =>
    grooveByPulses({
      spotAtDepth: (depth) => spotAt(light, z + depth),
      planes: rayleighLength(light) / 40,
      unit,
      law,
      pulseSpacing,
      passes,
      half: Math.max(cutting.along.at(-1)!, 3 * focusRadius(light)),
      rows,
      direction,
      shifts: 4,
      parts,
    });
  return { cutting, train, byPulses };
}

const keys = ['depth', 'meanDepth', 'topWidth', 'wallAngle', 'centreToMeanDepth'] as const;

describe.each(scenes)('a groove pulse by pulse: $name', (scene) => {
  const { cutting, train, byPulses } = inBothWays(scene);
  const [coarse, fine] = [byPulses(101, 6), byPulses(201, 12)];
  const last = ({ y, passes }: typeof fine, pass = passes.length) => ({ y, depth: passes[pass - 1]! });
  const [rough, exact] = [shapeOf(last(coarse))!, shapeOf(last(fine))!];
  const shape = shapeOf(cutGroove(cutting, { ...train, passes }))!;

  it.each(keys)('%s', (key: keyof GrooveShape) => {
    // First order across and within a pass: the finer one is wrong by about what halving both steps has changed; 4 shifts
    // and planes zR/40 apart by two thousandths more.
    const error = 1.5 * Math.abs(rough[key] - exact[key]) + 2e-3 * exact[key];
    expect(error).toBeLessThan(0.05 * exact[key]);
    expectClose(shape[key], exact[key], { absolute: error, source: 'every pulse one by one' });
  });

  it('a sheet opens after the same pass, and as wide', () => {
    const { depth } = exact;
    const thickness = 0.6 * depth;
    const pass = fine.passes.findIndex((one) => one.some((deep) => deep >= thickness)) + 1;
    const cut = cutSheet(cutting, train, thickness, passes - pass);
    expect('passes' in cut && 'taper' in cut && cut.passes).toBe(pass);
    if (!('taper' in cut)) return;
    const widths = [coarse, fine].map((one) => widthAt(last(one), thickness)) as [number, number];
    const error = 1.5 * Math.abs(widths[0] - widths[1]) + 0.01 * widths[1];
    expectClose(cut.exitKerf, widths[1], { absolute: error, source: 'every pulse one by one' });
  });
});
