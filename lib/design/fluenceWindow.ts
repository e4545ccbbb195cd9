import { derived, number } from '../graph/define.ts';
import { areaBetween, bestWindow, gainPeakAtTop, gaussianBestWindow } from '../process/fluenceWindow.ts';
import { energyAtPeak } from '../process/removal.ts';
import { unshapedPeak } from './focus.ts';
import { opticsTransmission, plateTransmission } from './losses.ts';
import { asked, unshapedAsked } from './marks.ts';
import { fluenceWithoutPlate } from './unshaped.ts';

export const lowFluence = number({
  id: 'window.lowFluence',
  name: 'lower bound of the fluence window',
  symbol: 'F_1',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about: 'Incident fluence per pulse from which the wanted structure appears.',
  initial: 2000,
  range: { min: 0, above: true, max: 1e7 },
  typical: [300, 2e4],
});

export const highFluence = number({
  id: 'window.highFluence',
  name: 'upper bound of the fluence window',
  symbol: 'F_2',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about: 'Incident fluence per pulse above which something else appears; nothing may lie above it.',
  initial: 2600,
  range: { min: 0, above: true, max: 1e7 },
  typical: [300, 2e4],
});

const bounds = { low: lowFluence, high: highFluence };

export const windowArea = derived({
  id: 'window.area',
  name: 'area within the window',
  symbol: 'A_\\text{window}',
  unit: 'm^2',
  display: 'auto:m^2',
  digits: 3,
  about: 'Area where the fluence of one pulse lies between the two bounds, at the pulse energy as it is.',
  from: { spot: asked, unit: unshapedPeak, ...bounds },
  compute: ({ spot, unit, low, high }) => areaBetween(spot, low / unit, Math.max(low, high) / unit),
  formula: 'A\\{F_1<F\\le F_2\\}',
  source: 'definition',
});

export const unshapedWindowArea = derived({
  id: 'unshaped.window.area',
  name: 'area within the window without the step',
  symbol: 'A_\\text{u,window}',
  unit: 'm^2',
  display: 'auto:m^2',
  digits: 3,
  about:
    'Area where the fluence of one pulse lies between the two bounds with the plate taken out, at the same pulse energy.',
  from: { spot: unshapedAsked, unit: fluenceWithoutPlate, ...bounds },
  compute: ({ spot, unit, low, high }) => areaBetween(spot, low / unit, Math.max(low, high) / unit),
  formula: 'A\\{F_1<F_\\text{u}\\le F_2\\}',
  source: 'definition',
});

export const areaAboveWindow = derived({
  id: 'window.areaAbove',
  name: 'area above the window',
  symbol: 'A_{>F_2}',
  unit: 'm^2',
  display: 'auto:m^2',
  digits: 3,
  about: 'Area where the fluence of one pulse is above the upper bound, at the pulse energy as it is.',
  from: { spot: asked, unit: unshapedPeak, high: highFluence },
  compute: ({ spot, unit, high }) => areaBetween(spot, high / unit, Number.POSITIVE_INFINITY),
  formula: 'A\\{F>F_2\\}',
  source: 'definition',
});

export const bestInWindow = derived({
  id: 'window.best',
  name: 'best use of the window',
  symbol: '\\text{best}_w',
  unit: { peakOverLow: '1', efficiency: '1' },
  about:
    'Peak fluence over the lower bound that gives most area within the window per energy, nothing above the upper bound, and that area times the lower bound over the energy before the stop.',
  from: { spot: asked, ...bounds },
  compute: ({ spot, low, high }) => bestWindow(spot, high / low),
  formula: "\\max_{F_\\text{peak}\\le F_2}A\\{F>F_1\\}F_1/E'",
  source: 'search',
});

export const windowBestPeak = derived({
  id: 'window.bestPeak',
  name: 'best peak fluence in the window',
  symbol: 'F_{w,\\text{best}}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'Peak fluence of one pulse, at most the upper bound, that gives most area above the lower bound per energy.',
  from: { best: bestInWindow, low: lowFluence },
  compute: ({ best, low }) => best.peakOverLow * low,
  formula: '\\text{best}_w\\cdot F_1',
  source: 'search',
});

export const windowBestEnergy = derived({
  id: 'window.bestEnergy',
  name: 'best pulse energy for the window',
  symbol: 'E_{w,\\text{best}}',
  unit: 'J',
  display: 'uJ',
  digits: 3,
  about: 'Pulse energy, where it is measured, that gives the best peak fluence for the window in this plane.',
  from: { spot: asked, peak: windowBestPeak, optics: opticsTransmission, plate: plateTransmission },
  compute: ({ spot, peak, optics, plate }) => energyAtPeak(spot, peak) / (optics * plate),
  formula: '\\frac{F_{w,\\text{best}}A_\\text{eff}}{T\\,T_\\text{optics}T_\\text{plate}}',
  source: 'definition',
});

export const areaPerEnergy = derived({
  id: 'window.areaPerEnergy',
  name: 'area within the window per energy',
  symbol: 'A/E',
  unit: 'm^2/J',
  display: 'um^2/uJ',
  digits: 3,
  about:
    'Area of one pulse within the window, nothing above it, over its energy where that is measured, at the best peak fluence: losses and stop count.',
  from: { best: bestInWindow, low: lowFluence, optics: opticsTransmission, plate: plateTransmission },
  compute: ({ best, low, optics, plate }) => (best.efficiency * optics * plate) / low,
  formula: '\\frac{\\text{best}_w}{F_1}T_\\text{optics}T_\\text{plate}',
  source: 'search',
});

export const gaussianAreaPerEnergy = derived({
  id: 'window.gaussianAreaPerEnergy',
  name: 'area within the window per energy with a Gaussian',
  symbol: '(A/E)_\\text{Gauss}',
  unit: 'm^2/J',
  display: 'um^2/uJ',
  digits: 3,
  about: 'The same for a Gaussian of any width without plate and stop, at its own best peak min(F₂, e F₁).',
  from: { ...bounds, optics: opticsTransmission },
  compute: ({ low, high, optics }) => (gaussianBestWindow(high / low).efficiency * optics) / low,
  formula: '\\frac{\\ln q}{q\\,F_1}T_\\text{optics},\\ q=\\min(F_2/F_1, e)',
  source: 'integration',
});

export const flatTopAreaPerEnergy = derived({
  id: 'window.flatTopAreaPerEnergy',
  name: 'area within the window per energy with an ideal flat-top',
  symbol: '(A/E)_\\text{flat}',
  unit: 'm^2/J',
  display: 'um^2/uJ',
  digits: 3,
  about:
    'The same for an even disc at the lower bound with no other losses than the optics: the most there is.',
  from: { low: lowFluence, optics: opticsTransmission },
  compute: ({ low, optics }) => optics / low,
  formula: 'T_\\text{optics}/F_1',
  source: 'definition',
});

export const windowGain = derived({
  id: 'window.gain',
  name: 'gain in area within the window',
  symbol: 'G_A',
  unit: '1',
  digits: 3,
  about:
    'Area within the window per energy over that of a Gaussian, each at its own best peak; the losses of the plate and the stop count against it.',
  from: { shaped: areaPerEnergy, gaussian: gaussianAreaPerEnergy },
  compute: ({ shaped, gaussian }) => shaped / gaussian,
  formula: '\\frac{A/E}{(A/E)_\\text{Gauss}}',
  source: 'definition',
});

export const windowGainAtTop = derived({
  id: 'window.gainAtTop',
  name: 'gain in area with both peaks at the upper bound',
  symbol: 'G_{A,F_2}',
  unit: '1',
  digits: 3,
  about:
    'Area within the window per energy over that of a Gaussian where both peaks lie at the upper bound: larger than the gain at the best peaks wherever a Gaussian would better stay below it.',
  from: { spot: asked, ...bounds, plate: plateTransmission },
  compute: ({ spot, low, high, plate }) => gainPeakAtTop(spot, high / low) * plate,
  formula: '\\frac{(A/E)_{F_2}}{(A/E)_{\\text{Gauss},F_2}}',
  source: 'search',
});
