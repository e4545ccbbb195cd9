import { expect } from 'vitest';
import { expectClose } from '../close.ts';

export type Read = <T = number>(id: string) => T;
/** Looks at the design before the link was taken, and after. */
export type Check = (before: Read, after: Read) => void;

const near = (actual: number, expected: number, relative = 1e-9) =>
  expectClose(actual, expected, { relative, absolute: 1e-15, source: 'what the link says' });
/** A value that is then this one. */
const becomes =
  (id: string, expected: unknown): Check =>
  (_, after) =>
    typeof expected === 'number' ? near(after(id), expected) : expect(after<unknown>(id)).toBe(expected);
/** A value that is then the one that another has, or had before. */
const becomesThat =
  (id: string, other: string, when: 'then' | 'before' = 'then', relative = 1e-9): Check =>
  (before, after) =>
    near(after(id), (when === 'then' ? after : before)(other), relative);
const all =
  (...checks: readonly Check[]): Check =>
  (before, after) => {
    for (const check of checks) check(before, after);
  };

const phase = (waves: number) => becomes('plate.stepPhase', waves * 2 * Math.PI);
const stays = (id: string) => becomesThat(id, id, 'before');

/** What each link promises, by document, block and words. */
export const linkChecks: Readonly<Record<string, Check>> = {
  'matching/why/half a wave': phase(0.5),
  'matching/why/0.4 waves': phase(0.4),
  'matching/why/a full wave': phase(1),
  'matching/ratio/equal diameters': all(
    becomesThat('plate.beamDiameter', 'plate.stepDiameter'),
    becomes('match.stepRatio', 1),
  ),
  'matching/ratio/the darkest centre': all(
    becomesThat('match.stepRatio', 'match.darkRatio'),
    // The ratio is found to 1e-12, and the irradiance has its minimum there.
    (_, after) =>
      expectClose(after('explain.axisIrradianceInFocus'), darkestBeside(after), {
        absolute: 1e-9,
        source: 'the least over step ratios 2 % to either side, from the closed form',
      }),
  ),
  'matching/ratio/the flattest focus': all(
    becomesThat('match.stepRatio', 'match.flattestRatio'),
    (_, after) =>
      expectClose(after('explain.axisCurvatureInFocus'), 0, {
        absolute: 1e-9,
        source: 'flat means no curvature',
      }),
  ),
  'matching/ratio/take the stop away': all(becomes('plate.stop', 'open'), becomes('plate.transmission', 1)),
  'matching/ratio/put it back': becomes('plate.stop', 'round'),
  'matching/rule/M² = 1': becomes('laser.usedBeamPropagationRatio', 1),
  'matching/rule/M² = 1.2': becomes('laser.usedBeamPropagationRatio', 1.2),
  'matching/wish/Take that lens, and move the workpiece with it': all(
    becomesThat('lens.focalLength', 'wish.focalLength', 'before'),
    (before, after) =>
      expectClose(after('focus.defocus'), before('focus.defocus'), {
        absolute: 1e-9,
        source: 'as many Rayleigh lengths from the focus as now',
      }),
    // Profiles are sampled: their area to a few in a million.
    becomesThat('spot.width', 'wish.spotWidth', 'then', 2e-5),
  ),
  'threshold/pulses/a hundred pulses with S = 0.85': all(
    becomes('threshold.pulses', 100),
    becomes('threshold.incubationExponent', 0.85),
  ),
  'threshold/pulses/one pulse': all(becomes('threshold.pulses', 1)),
  'threshold/mark-picture-row/Add this mark to the table of spots': (before, after) => {
    const rowsOf = (read: Read) => read<{ rows: unknown[] } | null>('threshold.spotTable')?.rows.length ?? 0;
    expect(rowsOf(after)).toBe(rowsOf(before) + 1);
  },
  'threshold/fit-said/Let this threshold count': becomesThat('threshold.fluence', 'threshold.fittedFluence'),
  'threshold/fit-said/the handbook’s': becomesThat('threshold.fluence', 'threshold.handbookFluence'),
  'threshold/incubation-fit-said/Let this incubation count': (before, after) => {
    const fit = before<{ better: 'power' | 'floored'; power: Law; floored: Law | null }>(
      'threshold.incubationFit',
    );
    const law = fit.better === 'power' ? fit.power : fit.floored!;
    near(after('threshold.fluence'), law.first);
    near(after('threshold.incubationExponent'), law.exponent);
    near(after('threshold.floor'), law.floor);
    near(after('threshold.uncertainty'), law.uncertainties.first);
  },
  'ripples/ripple-links/along the scan': all(
    becomes('laser.polarisation', 'linear'),
    becomes('laser.polarisationAngle', 0),
  ),
  'ripples/ripple-links/across it': all(
    becomes('laser.polarisation', 'linear'),
    becomes('laser.polarisationAngle', Math.PI / 2),
  ),
  'ripples/ripple-links/water': (_, after) => {
    expectClose(after('workpiece.ambientIndex'), 1.33, {
      absolute: 0.005,
      source: 'handbook value of water',
    });
  },
  'ripples/ripple-links/air': becomes('workpiece.ambientIndex', 1),
  'ripples/ripple-links/30°': becomes('workpiece.incidence', (30 * Math.PI) / 180),
  'ripples/ripple-links/not at all': becomes('workpiece.incidence', 0),
  'ripples/window/take over the window of the page Fluence and threshold': all(
    becomesThat('ripples.windowLow', 'window.lowFluence'),
    becomesThat('ripples.windowHigh', 'window.highFluence'),
  ),
  'ripples/window/set the pulse energy so that the peak lies at the upper bound': becomesThat(
    'ripples.surfacePeak',
    'ripples.windowHigh',
  ),
  'throughput/limits/Set speed and repetition rate to where it is reached': all(
    becomesThat('scan.speed', 'scan.fastestSpeed', 'before'),
    stays('scan.pulseSpacing'),
    stays('laser.usedPulseEnergy'),
  ),
  'throughput/evener-link/Set the lines to the minimum': all(
    becomesThat('scan.lineSpacing', 'scan.evenSpacing', 'before'),
    (before, after) => expect(after('scan.modulation')).toBeLessThan(before('scan.modulation')),
  ),
  'throughput/comparison-said/Set plane, energy, line spacing, speed and repetition rate so, with the focus as large as it is today':
    (before, after) => {
      // Parts of a field are worked out to 1e-3.
      expect(after('ripples.areaInWindow')).toBeGreaterThan(before('comparison.leastInside') - 1e-3);
      becomesThat('focus.radius', 'focus.radius', 'before')(before, after);
      becomesThat('focus.defocus', 'comparison.defocus', 'before', 1e-6)(before, after);
    },
  'grooves/section-fit/Take the fitted values over': (before, after) => {
    const fit = before<{ depthPerPulse: { value: number }; threshold: { value: number } }>(
      'groove.sectionFit',
    );
    near(after('removal.depthPerPulse'), fit.depthPerPulse.value);
    near(after('threshold.fluence'), fit.threshold.value);
  },
  'grooves/engraving-plan-said/Take as many layers as the plan needs': all(
    becomesThat('engraving.layers', 'engraving.planLayers', 'before'),
    (before, after) =>
      expect(after('engraving.depth')).toBeGreaterThan(before('engraving.wantedDepth') * (1 - 1e-6)),
  ),
  'scale-up/scale-up-limits/Use as many spots as the target needs': all(
    becomesThat('scaleUp.spots', 'scaleUp.spotsForTarget', 'before'),
    (before, after) =>
      expect(after('scaleUp.areaPerHour')).toBeGreaterThan(before('scaleUp.target') * (1 - 1e-6)),
  ),
};

interface Law {
  readonly first: number;
  readonly exponent: number;
  readonly floor: number;
  readonly uncertainties: { readonly first: number };
}

/** Least irradiance on the axis in the focus for step ratios near this one, plate and stop kept. */
function darkestBeside(read: Read): number {
  const zones = read<readonly { outer: number }[]>('plate.zones');
  const [ratio, phi] = [read('match.stepRatio'), read('plate.stepPhase')];
  const stopPerStep = zones[1]!.outer / zones[0]!.outer;
  const at = (kappa: number) => {
    const centre = 1 - Math.exp(-kappa * kappa);
    const outer = Math.exp(-kappa * kappa) - Math.exp(-((stopPerStep * kappa) ** 2));
    return centre ** 2 + outer ** 2 + 2 * centre * outer * Math.cos(phi);
  };
  return Math.min(...Array.from({ length: 401 }, (_, i) => at(ratio * (0.98 + i * 1e-4))));
}
