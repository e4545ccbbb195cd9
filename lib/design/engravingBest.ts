import { derived } from '../graph/define.ts';
import type { Report } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import { lowestNear } from '../numerics/lowestNear.ts';
import { Problem } from '../problem.ts';
import { firstLayer, unevennessOf, widestLines } from '../process/engravingBest.ts';
import { bestRemoval, energyAtPeak, removalLaw } from '../process/removal.ts';
import { engravingBeam, layerPlan, unshapedEngravingBeam } from './engravingParts.ts';
import { opticsTransmission, usedPulseEnergy } from './losses.ts';
import { unshapedSpotDiameter } from './pulsesOnPlace.ts';

export const firstLayerNumbers = derived({
  id: 'engraving.firstLayer',
  name: 'first layer',
  symbol: '(d_1, u_1)',
  unit: { depth: 'm', unevenness: '1' },
  about:
    'Mean depth that the first layer removes, and the root mean square deviation of it from place to place over that mean.',
  from: { beam: engravingBeam, plan: layerPlan },
  compute: ({ beam, plan }) => {
    const layer = firstLayer(beam, plan.law, plan.lattice);
    return { depth: layer.meanRemoved, unevenness: unevennessOf(layer) };
  },
  shownAs: ({ depth, unevenness }) =>
    `${formatReadable(depth, 'm', 'um', 3)}, uneven by ${formatReadable(unevenness, '1', '%', 3)}`,
  formula: '\\bar d_1,\\ \\sqrt{\\overline{(d_1-\\bar d_1)^2}}/\\bar d_1',
  source: 'search',
  heavy: 'search',
});

export const engravingUnevenness = derived({
  id: 'engraving.unevenness',
  name: 'unevenness of the first layer',
  symbol: 'u_1',
  unit: '1',
  display: '%',
  digits: 3,
  about: 'Root mean square deviation of what the first layer removes from place to place, over its mean.',
  from: { first: firstLayerNumbers },
  compute: ({ first }) => first.unevenness,
  formula: '\\sqrt{\\overline{(d_1-\\bar d_1)^2}}/\\bar d_1',
  source: 'definition',
});

export const engravingVolumePerEnergy = derived({
  id: 'engraving.volumePerEnergy',
  name: 'volume per energy of the first layer',
  symbol: '(V/E)_1',
  unit: 'm^3/J',
  display: 'um^3/uJ',
  digits: 3,
  about:
    'Volume that the first layer removes over the energy of its pulses where that is measured: losses and stop count.',
  from: { first: firstLayerNumbers, plan: layerPlan, E: usedPulseEnergy },
  compute: ({ first, plan, E }) => {
    const { along, across, pulses } = plan.lattice;
    return (first.depth * along * across) / (pulses * E);
  },
  formula: '\\frac{d_1\\,p\\,\\Delta y}{n_\\text{b}E}',
  source: 'definition',
});

/** A first layer evener than this counts as even: further lines closer would bring nothing. */
const evenEnough = 1e-3;

/** With incubation: the factor to either side of the best peak of single craters that is searched, tries to each side, and fineness. */
const [searched, tries, fineness] = [30, 4, 0.05];

export const unshapedBestLayer = derived({
  id: 'unshaped.engraving.best',
  name: 'first layer without the step at its own best',
  symbol: '\\text{best}_\\text{u}',
  unit: { peak: 'J/m^2', energy: 'J', lineSpacing: 'm', depth: 'm', volumePerEnergy: 'm^3/J' },
  about:
    'The plate taken out: peak fluence with which the first layer removes most per energy, pulses as far apart as today, and lines as far apart as leaves it no more uneven than with the plate, or than a thousandth. Without incubation the peak is that of single craters; with it the peak is searched, to 5 %.',
  from: {
    beam: unshapedEngravingBeam,
    plan: layerPlan,
    shaped: firstLayerNumbers,
    diameter: unshapedSpotDiameter,
    optics: opticsTransmission,
  },
  compute: ({ beam, plan, shaped, diameter, optics }, report) => {
    const { law, lattice } = plan;
    const spot = beam.spotAt(beam.plane);
    const branches = removalLaw({ depth: law.depth, threshold: law.incubation.first }, law.second);
    const layerAt = (peak: number) => {
      const at = { ...beam, unit: peak / spot.peak };
      const found = widestLines(at, law, lattice, Math.max(evenEnough, shaped.unevenness), diameter);
      if (found === undefined) return undefined;
      const energy = energyAtPeak(spot, peak) / optics;
      const depth = found.layer.meanRemoved;
      const volumePerEnergy = (depth * lattice.along * found.across) / (lattice.pulses * energy);
      return { peak, energy, lineSpacing: found.across, depth, volumePerEnergy };
    };
    const single = bestRemoval(spot, branches).peak;
    const best = layerAt(law.incubation.exponent === 1 ? single : bestPeak(layerAt, single, report));
    if (best === undefined) throw noneAsEven();
    return best;
  },
  shownAs: ({ lineSpacing, depth }) =>
    `lines ${formatReadable(lineSpacing, 'm', 'um', 3)} apart, ${formatReadable(depth, 'm', 'um', 3)}`,
  formula: '\\max_{F,\\Delta y}(V/E)_{1,\\text{u}}:\\ u_\\text{u}\\le u_1',
  source: 'search',
  heavy: 'search',
});

/** The peak fluence with which a first layer removes most per energy, near that of single craters. */
function bestPeak(
  layerAt: (peak: number) => { readonly volumePerEnergy: number } | undefined,
  single: number,
  report?: Report,
): number {
  let asked = 0;
  // Nine tries and some nine sections.
  const expected = 2 * (2 * tries + 1);
  const lessIsBetter = (logarithm: number) => {
    report?.(Math.min(1, ++asked / expected));
    return -(layerAt(Math.exp(logarithm))?.volumePerEnergy ?? 0);
  };
  return Math.exp(lowestNear(lessIsBetter, Math.log(single), Math.log(searched), tries, fineness).at);
}

function noneAsEven(): Problem {
  return new Problem(
    'absent',
    'Without the plate no line spacing leaves a first layer as even as with it: the pulses along a line lie too far apart. Scan slower for pulses closer together.',
    { input: 'scan.speed' },
  );
}

export const unshapedBestVolumePerEnergy = derived({
  id: 'unshaped.engraving.bestVolumePerEnergy',
  name: 'volume per energy of the first layer without the step at its own best',
  symbol: '(V/E)_{1,\\text{u}}',
  unit: 'm^3/J',
  display: 'um^3/uJ',
  digits: 3,
  about:
    'Volume that the first layer removes per pulse energy where that is measured, plate taken out, peak and line spacing at their best for that beam.',
  from: { best: unshapedBestLayer },
  compute: ({ best }) => best.volumePerEnergy,
  formula: '\\text{best}_\\text{u}',
  source: 'definition',
});
