import { plateIrradiance } from '../lib/design/expander.ts';
import {
  axisIrradianceHalfWave,
  axisIrradianceInFocus,
  centreAmplitude,
  outerAmplitude,
} from '../lib/design/explain.ts';
import {
  halfWaveHeight,
  plateIndex,
  plateSource,
  stepHeight,
  stepPhase,
  stop,
  transmission,
} from '../lib/design/plate.ts';
import {
  dipLessPhase,
  dipMorePhase,
  dipNarrowerBeam,
  dipWiderBeam,
  fluenceChangeBeam,
  fluenceChangePhase,
  widthChangeBeam,
  widthChangePhase,
} from '../lib/design/sensitivity.ts';
import { dip } from '../lib/design/spot.ts';
import { phrase, says } from './prose.ts';

/** How a phase of the step turns the light through it: over, not at all, or part of the way. */
export function turnOf(phase: number): 'over' | 'none' | 'part' {
  const waves = phase / (2 * Math.PI);
  if (Math.abs(waves - Math.round(waves)) < 0.02) return 'none';
  return Math.abs(waves - Math.round(waves - 0.5) - 0.5) < 0.005 ? 'over' : 'part';
}

/** What the two amplitudes on the axis make of each other with today's phase, and with half a wave where that differs. */
export const whySaid = says(
  {
    centre: centreAmplitude,
    outer: outerAmplitude,
    phase: stepPhase,
    today: axisIrradianceInFocus,
    halfWave: axisIrradianceHalfWave,
  },
  ({ outer, phase }) => {
    if (outer < 5e-4)
      return phrase`Here next to all of the light passes through the step, with an amplitude of ${centreAmplitude}, and next to none around it: whatever the step delays by, there is nothing that it could cancel, and ${axisIrradianceInFocus} of the irradiance without plate and stop stays on the axis.`;
    const parts = phrase`The light through the step carries the amplitude ${centreAmplitude}, the light around it ${outerAmplitude}.`;
    const off =
      'away from the axis the narrow pattern of the whole beam fades sooner than the broad pattern of its centre, and what remains there fills the flat top or the ring.';
    const turn = turnOf(phase);
    if (turn === 'over')
      return phrase`${parts} Today’s step of ${stepPhase} turns the first one over, so that the two subtract and leave ${axisIrradianceInFocus} of the irradiance that the axis has without plate and stop. A${off.slice(1)}`;
    const halfWave = phrase`Half a wave would turn it over, so that the two subtract and leave ${axisIrradianceHalfWave}; ${off}`;
    if (turn === 'none')
      return phrase`${parts} Today’s step of ${stepPhase} leaves the first one nearly as it was, so that the two add and give ${axisIrradianceInFocus} of the irradiance that the axis has without plate and stop. ${halfWave}`;
    const [doing, giving] = Math.cos(phase) < 0 ? ['cancel', 'leave'] : ['add', 'give'];
    return phrase`${parts} Today’s step of ${stepPhase} turns the first one part of the way, so that the two ${doing} only in part and ${giving} ${axisIrradianceInFocus} of the irradiance that the axis has without plate and stop. ${halfWave}`;
  },
);

/** How strongly dip, peak fluence and width answer to 5 %. */
export const sensitivitySaid = says(
  {
    dip,
    wider: dipWiderBeam,
    narrower: dipNarrowerBeam,
    more: dipMorePhase,
    less: dipLessPhase,
    fluenceBeam: fluenceChangeBeam,
    fluencePhase: fluenceChangePhase,
    widthBeam: widthChangeBeam,
    widthPhase: widthChangePhase,
  },
  ({ dip, wider, narrower, more, less, fluenceBeam, fluencePhase, widthBeam, widthPhase }) => {
    const beam = Math.max(Math.abs(wider - dip), Math.abs(narrower - dip));
    const phase = Math.max(Math.abs(more - dip), Math.abs(less - dip));
    const rest = phrase`At the same z and pulse energy, five per cent of beam diameter changes the peak fluence by up to ${fluenceChangeBeam} and the width by up to ${widthChangeBeam}; five per cent of phase changes them by up to ${fluenceChangePhase} and ${widthChangePhase}.`;
    if (Math.max(beam, phase) < 0.01) {
      const little = 'Five per cent on beam size or phase changes the dip by less than one percentage point';
      return Math.max(fluenceBeam, fluencePhase, widthBeam, widthPhase) < 0.01
        ? `${little}, and peak fluence and width by less than 1\u00a0%.`
        : phrase`${little}, but the dip is not all. ${rest}`;
    }
    if (beam > 1.5 * phase)
      return phrase`Here the dip answers more to the size of the beam than to the height of the step: measure the beam first. ${rest}`;
    if (phase > 1.5 * beam)
      return phrase`Here the dip answers more to the height of the step than to the size of the beam: check step height and wavelength first. ${rest}`;
    return phrase`Here the dip answers about equally to the size of the beam and to the height of the step. ${rest}`;
  },
);

/** What to order, or what the plate at hand is. */
export const orderSaid = says(
  {
    source: plateSource,
    phase: stepPhase,
    height: stepHeight,
    halfWave: halfWaveHeight,
    index: plateIndex,
    stop,
    transmission,
  },
  ({ source, phase, stop }) => {
    const passed = stop === 'open' ? '' : phrase` The stop passes ${transmission} of the pulse energy.`;
    if (source === 'designed')
      return phrase`A step of ${stepPhase} at this wavelength is ${stepHeight} high in a material of refractive index ${plateIndex}.${passed}`;
    const needed =
      Math.abs(phase / Math.PI - 1) < 0.01 ? '' : phrase`; half a wave would need ${halfWaveHeight}`;
    return phrase`Your step, ${stepHeight} high in a material of refractive index ${plateIndex}, gives ${stepPhase} at this wavelength${needed}.${passed}`;
  },
);

/** Load of the plate; stands whether or not it can be worked out. */
export const plateLoadSaid = says(
  { plateIrradiance },
  () => phrase`The peak irradiance on the plate is ${plateIrradiance}.`,
  [],
  'The peak irradiance on the plate cannot be worked out for this design.',
);

/** What the step height does when the wavelength is changed. */
export const heightSaid = says({ source: plateSource, stepHeight }, ({ source }) =>
  source === 'designed'
    ? phrase`The plate is one designed for a phase: the height of its step, ${stepHeight} now, follows the wavelength. For a plate that you have, choose “${plateSource.options.made}” among the inputs of the plate.`
    : phrase`The plate is one made with a height: its step stays ${stepHeight} high at any wavelength, and the phase follows.`,
);
