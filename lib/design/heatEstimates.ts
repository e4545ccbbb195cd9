import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { evenFieldRise, warmThroughRise } from '../process/heatArea.ts';
import { ownLineRise } from '../process/heatLine.ts';
import { heatSpectrum, hottestOfProfile } from '../process/heatProfile.ts';
import type { HeatInput } from '../process/heatPulse.ts';
import { pointRise as pointOf, staticRise as staticOf } from '../process/heatSums.ts';
import { fieldWidth } from './depthInUse.ts';
import { fieldTime } from './hatch.ts';
import { type HeatBeam, shapedBeam, unshapedBeam } from './heatBeam.ts';
import { heatInput, unshapedHeatInput } from './heatPulses.ts';
import { heatedScan } from './heatScan.ts';
import { repetitionRate } from './laser.ts';
import { fieldHeight } from './scannerInputs.ts';

/** A half-space: the same without the back of the part. */
const endless = (heat: Required<HeatInput>): HeatInput => ({
  ...heat,
  thickness: Number.POSITIVE_INFINITY,
});

/** Pulses of a static estimate. */
const staticPulses = 50;

/** Estimates beside each other, of one of the two beams. */
function estimatesOf(beam: HeatBeam, heat: Derived<Required<HeatInput>>) {
  const { before, words, mark } = beam;
  const rise = (what: string) => `\\Delta T_{${mark}\\text{${what}}}`;
  const base = { unit: 'K', digits: 3 } as const;
  const field = { heat, field: heatedScan, width: fieldWidth, height: fieldHeight, time: fieldTime };
  const powerOf = (
    energy: number,
    { pulses, lines, passes }: { pulses: number; lines: number; passes: number },
    time: number,
  ) => (energy * pulses * lines * passes) / time;
  const point = derived({
    ...base,
    id: `${before}heat.pointRise`,
    name: `rise by the point estimate${words}`,
    symbol: rise('point'),
    about:
      'Rise of the surface just before the next pulse where endlessly many come to one point without size. Overestimates by far where the spot is no point.',
    from: { heat, rate: repetitionRate },
    compute: ({ heat, rate }) => pointOf(heat, rate),
    formula: '\\frac{2Q\\,\\zeta(3/2)}{\\rho c\\,(4\\pi\\chi/f_\\text{rep})^{3/2}}',
    source: 'weber2014',
  });
  const brief = derived({
    ...base,
    id: `${before}heat.briefPointRise`,
    name: `rise by the point estimate after 50 pulses${words}`,
    symbol: rise('point,50'),
    about: 'The same after 50 pulses, as many as are counted of the spot that stands still.',
    from: { heat, rate: repetitionRate },
    compute: ({ heat, rate }) => pointOf(heat, rate, staticPulses),
    formula: '\\sum_{n=1}^{50}\\frac{2Q}{\\rho c\\,(4\\pi\\chi n/f_\\text{rep})^{3/2}}',
    source: 'weber2014',
  });
  const still = derived({
    ...base,
    id: `${before}heat.staticRise`,
    name: `rise under a spot that stands still${words}`,
    symbol: rise('still'),
    about: 'Rise in the middle of the spot just before the next pulse after 50 pulses in one place.',
    from: { heat, rate: repetitionRate },
    compute: ({ heat, rate }) => staticOf(endless(heat), rate, staticPulses),
    formula:
      '\\sum_{n=1}^{50}\\frac{2Q}{\\pi(w_\\text{eff}^2+8\\chi n/f_\\text{rep})\\,\\rho c\\sqrt{\\pi\\chi n/f_\\text{rep}}}',
    source: 'weber2014',
  });
  const moving = derived({
    ...base,
    id: `${before}heat.spotRise`,
    name: `rise under the moving spot${words}`,
    symbol: rise('spot'),
    about:
      'Rise where the last pulse of a line comes, just before it, from all pulses of that line before it; the spot is the Gaussian with its effective area.',
    from: { heat, field: heatedScan },
    compute: ({ heat, field }) => ownLineRise(heat, field.pulseSpacing, field.rate, field.pulses - 1),
    formula:
      '\\sum_n\\frac{2Q\\,e^{-2(np)^2/(w_\\text{eff}^2+8\\chi n/f_\\text{rep})}}{\\pi(w_\\text{eff}^2+8\\chi n/f_\\text{rep})\\,\\rho c\\sqrt{\\pi\\chi n/f_\\text{rep}}}',
    source: 'weber2014',
  });
  const own = derived({
    id: `${before}heat.profile`,
    name: `hottest place under the moving spot, by its own profile${words}`,
    symbol: `(\\Delta T, x, y)_{${mark}\\text{profile}}`,
    unit: { rise: 'K', x: 'm', y: 'm' },
    about:
      'The same with the spot’s own profile, from its spectrum, at the hottest of 35 places in the spot: along (x) and across (y) the line from the middle of the next pulse.',
    from: { heat, field: heatedScan, spot: beam.spot },
    compute: ({ heat, field, spot }) => {
      const line = { spacing: field.pulseSpacing, rate: field.rate, count: field.pulses - 1 };
      return hottestOfProfile(heat, roundSpectrum(spot, heat, field.rate), line);
    },
    shownAs: ({ rise }) => formatReadable(rise, 'K', 'K', 3),
    formula:
      '\\sum_n\\frac{Q}{\\rho c\\sqrt{\\pi\\chi t_n}}\\frac{1}{4\\pi^2}\\iint M(q)\\,e^{-q^2\\chi t_n}e^{iqx_n}d^2q',
    source: 'scaling',
    heavy: 'search',
  });
  const profile = derived({
    ...base,
    id: `${before}heat.profileRise`,
    name: `rise under the moving spot, by its own profile${words}`,
    symbol: rise('profile'),
    about:
      'Rise at the hottest place of the spot as it really is, just before the next pulse at the end of a line.',
    from: { own },
    compute: ({ own }) => own.rise,
    formula: `\\Delta T`,
    source: 'scaling',
  });
  const even = derived({
    ...base,
    id: `${before}heat.fieldRise`,
    name: `rise by the field estimate, half-space${words}`,
    symbol: rise('field'),
    about:
      'Rise in the middle of the field at its end if the heat of all pulses came evenly over field and time, into a part without an end in depth and width.',
    from: field,
    compute: ({ heat, field, time, ...size }) =>
      evenFieldRise(endless(heat), { ...size, time, power: powerOf(heat.energy, field, time) }),
    formula:
      '\\frac{P_\\text{heat}}{FG}\\int_0^{t_\\text{field}}\\frac{\\operatorname{erf}(F/4\\sqrt{\\chi t})\\operatorname{erf}(G/4\\sqrt{\\chi t})}{\\rho c\\sqrt{\\pi\\chi t}}dt',
    source: 'scaling',
  });
  const plate = derived({
    ...base,
    id: `${before}heat.plateRise`,
    name: `rise by the field estimate, wide plate${words}`,
    symbol: rise('plate'),
    about: 'The same for a part of its thickness that is insulated behind and much wider than the field.',
    from: field,
    compute: ({ heat, field, time, ...size }) =>
      evenFieldRise(heat, { ...size, time, power: powerOf(heat.energy, field, time) }),
    formula: `${rise('field')}\\ \\text{with images at}\\ 2md`,
    source: 'scaling',
  });
  const below = derived({
    ...base,
    id: `${before}heat.warmThroughRise`,
    name: `rise if all heat stays below the field${words}`,
    symbol: rise('below'),
    about:
      'Rise of the part, thickness times field, if it kept all heat of the field: nothing flows aside, nothing is lost. The other bound.',
    from: field,
    compute: ({ heat, field, time, ...size }) =>
      warmThroughRise(heat, heat.thickness, { ...size, time, power: powerOf(heat.energy, field, time) }),
    formula: '\\frac{P_\\text{heat}t_\\text{field}}{\\rho c\\,d\\,F\\,G}',
    source: 'definition',
  });
  return { point, brief, still, moving, own, profile, even, plate, below };
}

/** Spectrum of a centred round spot for all ages from one period on. */
function roundSpectrum(spot: Spot, heat: HeatInput, rate: number) {
  return heatSpectrum(spot, heat.diffusivity, 1 / rate, true);
}

export const {
  point: pointRise,
  brief: briefPointRise,
  still: staticRise,
  moving: spotRise,
  own: ownProfile,
  profile: profileRise,
  even: fieldRise,
  plate: plateRise,
  below: warmThrough,
} = estimatesOf(shapedBeam, heatInput);

export const {
  point: unshapedPointRise,
  brief: unshapedBriefPointRise,
  still: unshapedStaticRise,
  moving: unshapedSpotRise,
  own: unshapedOwnProfile,
  profile: unshapedProfileRise,
  even: unshapedFieldRise,
  plate: unshapedPlateRise,
  below: unshapedWarmThrough,
} = estimatesOf(unshapedBeam, unshapedHeatInput);
