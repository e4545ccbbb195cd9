import { derived } from '../graph/define.ts';
import {
  bestRemoval,
  energyAtPeak,
  flatTopBest as flatBest,
  gaussianBest as gaussBest,
} from '../process/removal.ts';
import { law } from './depthLaw.ts';
import { opticsTransmission, plateTransmission } from './losses.ts';
import { asked, shapedParts, unshapedAsked, unshapedParts } from './marks.ts';
import { removalQuantities } from './removalQuantities.ts';

export const { volume, volumePerEnergy, deepest, crater } = removalQuantities(shapedParts, asked);

export const {
  volume: unshapedVolume,
  volumePerEnergy: unshapedVolumePerEnergy,
  deepest: unshapedDeepest,
  crater: unshapedCrater,
} = removalQuantities(unshapedParts, unshapedAsked);

export const best = derived({
  id: 'removal.best',
  name: 'most volume per energy',
  symbol: '\\text{best}',
  unit: { peak: 'J/m^2', volumePerEnergy: 'm^3/J' },
  about:
    'Peak fluence in this plane at which one pulse removes most per energy behind the losses and before the stop, and that volume per energy.',
  from: { spot: asked, law },
  compute: ({ spot, law }) => bestRemoval(spot, law),
  formula: "\\max_{F_\\text{peak}}V_1/E'",
  source: 'search',
});

export const bestPeak = derived({
  id: 'removal.bestPeak',
  name: 'peak fluence that removes most per energy',
  symbol: 'F_\\text{best}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'Peak fluence of a pulse in this plane at which it removes most per energy: e² = 7.4 thresholds for a Gaussian, for single craters; not for trenches with incubation.',
  from: { best },
  compute: ({ best }) => best.peak,
  formula: '\\text{best}',
  source: 'search',
});

export const bestEnergy = derived({
  id: 'removal.bestEnergy',
  name: 'pulse energy that removes most per energy',
  symbol: 'E_\\text{best}',
  unit: 'J',
  display: 'uJ',
  digits: 3,
  about: 'Pulse energy, where it is measured, that gives the best peak fluence in this plane.',
  from: { spot: asked, peak: bestPeak, optics: opticsTransmission, plate: plateTransmission },
  compute: ({ spot, peak, optics, plate }) => energyAtPeak(spot, peak) / (optics * plate),
  formula: '\\frac{F_\\text{best}A_\\text{eff}}{T\\,T_\\text{optics}T_\\text{plate}}',
  source: 'definition',
});

export const bestVolumePerEnergy = derived({
  id: 'removal.bestVolumePerEnergy',
  name: 'most volume removed per energy',
  symbol: '(V/E)_\\text{best}',
  unit: 'm^3/J',
  display: 'um^3/uJ',
  digits: 3,
  about:
    'Volume one pulse removes per pulse energy where that is measured, at the best peak fluence in this plane: losses and stop count.',
  from: { best, optics: opticsTransmission, plate: plateTransmission },
  compute: ({ best, optics, plate }) => best.volumePerEnergy * optics * plate,
  formula: '\\text{best}\\cdot T_\\text{optics}T_\\text{plate}',
  source: 'search',
});

export const gaussianBest = derived({
  id: 'removal.gaussianBest',
  name: 'most volume per energy with a Gaussian',
  symbol: '(V/E)_\\text{Gauss}',
  unit: 'm^3/J',
  display: 'um^3/uJ',
  digits: 3,
  about:
    'Volume one pulse removes per pulse energy where that is measured, with a Gaussian without plate and stop at its own best peak, in any plane; single craters.',
  from: { law, optics: opticsTransmission },
  compute: ({ law, optics }) => gaussBest(law) * optics,
  formula: '\\frac{2\\delta}{e^2F_{\\text{th},N}}T_\\text{optics}\\ (\\text{one branch})',
  source: 'raciukaitis2009',
});

export const flatTopBest = derived({
  id: 'removal.flatTopBest',
  name: 'most volume per energy with an ideal flat-top',
  symbol: '(V/E)_\\text{flat}',
  unit: 'm^3/J',
  display: 'um^3/uJ',
  digits: 3,
  about:
    'Volume one pulse removes per pulse energy where that is measured, with an even disc and no other losses than the optics: e/2 = 1.36 times the Gaussian’s for one branch, the most there is.',
  from: { law, optics: opticsTransmission },
  compute: ({ law, optics }) => flatBest(law) * optics,
  formula: '\\max_i\\frac{\\delta_i}{eF_{\\text{th},i}}T_\\text{optics}',
  source: 'raciukaitis2009',
});

export const removalGain = derived({
  id: 'removal.gain',
  name: 'gain in removed volume',
  symbol: 'G_V',
  unit: '1',
  digits: 3,
  about:
    'Most volume per energy with the plate over that of a Gaussian, each at its own best peak; the losses of the plate and the stop count against it.',
  from: { shaped: bestVolumePerEnergy, gaussian: gaussianBest },
  compute: ({ shaped, gaussian }) => shaped / gaussian,
  formula: '\\frac{(V/E)_\\text{best}}{(V/E)_\\text{Gauss}}',
  source: 'definition',
});
