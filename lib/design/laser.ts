import { derived, file, number } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import type { CameraImage } from '../measured/cameraImage.ts';
import { measureBeam } from '../measured/measureBeam.ts';
import { type BeamNoteKind, type MeasuredBeam, spoilingNotes } from '../measured/measuredBeam.ts';
import { Problem } from '../problem.ts';
import { namingInput } from './namingInput.ts';

export const wavelength = number({
  id: 'laser.wavelength',
  name: 'wavelength',
  symbol: '\\lambda',
  unit: 'm',
  display: 'nm',
  about: 'Centre wavelength in vacuum.',
  initial: 1.03e-6,
  range: { min: 250e-9, max: 2300e-9 },
  typical: [343e-9, 1064e-9],
});

export const beamDiameter = number({
  id: 'laser.beamDiameter',
  name: 'raw beam diameter',
  symbol: 'd_\\text{typed}',
  unit: 'm',
  display: 'mm',
  about: '1/e² diameter of the laser beam before the expander, as typed.',
  initial: 5e-3,
  range: { min: 0.1e-3, max: 50e-3 },
  typical: [1e-3, 10e-3],
});

export const beamImage = file<CameraImage>({
  id: 'laser.beamImage',
  name: 'camera image of the raw beam',
  symbol: '\\text{image}',
  about: 'Camera image of the laser beam before the expander.',
  shownAs: ({ name, width, height }) => `${name}, ${width} × ${height} pixels`,
});

export const beamImagePitch = number({
  id: 'laser.beamImagePitch',
  name: 'pixel pitch of the camera',
  symbol: 'p_\\text{px}',
  unit: 'm',
  display: 'um',
  about:
    'Distance between neighbouring pixels on the camera, square pixels; with a magnifying relay, pitch divided by magnification.',
  initial: 5.5e-6,
  range: { min: 0.1e-6, max: 1e-3 },
});

export const beamImagePitchUncertainty = number({
  id: 'laser.beamImagePitchUncertainty',
  name: 'standard uncertainty of the pixel pitch',
  symbol: 'u(p_\\text{px})',
  unit: 'm',
  display: 'um',
  about:
    'How well the pixel pitch, or the magnification of a relay before the camera, is known: standard uncertainty, 0 where the pitch counts as exact.',
  initial: 0,
  range: { min: 0, max: 0.1e-3 },
});

/** The problem of a measurement without an image. */
export function noImage(): Problem {
  return new Problem(
    'absent',
    'No camera image has been given yet: choose one, or take the typed beam diameter as the source.',
    { input: 'laser.beamImage' },
  );
}

export const measuredBeam = derived({
  id: 'laser.measuredBeam',
  name: 'measured beam',
  symbol: '\\text{beam}',
  unit: 'none',
  about: 'Second-moment diameters, angle and Gaussian fit of the camera image, background subtracted.',
  from: { image: beamImage, pitch: beamImagePitch, pitchUncertainty: beamImagePitchUncertainty },
  compute: ({ image, pitch, pitchUncertainty }) => {
    if (image === null) throw noImage();
    return namingInput('laser.beamImage', () => measureBeam(image, pitch, pitchUncertainty));
  },
  shownAs: ({ diameterX, diameterY }) => {
    const show = (length: number) => formatQuantity(length, 'm', 'mm');
    return `${show(diameterX)} × ${show(diameterY)}`;
  },
  formula: 'd_{x,y} = 4\\sigma_{x,y}',
  source: 'iso11146',
});

/** What tells against a number measured from the image: it is spoilt, or has a note of these kinds; undefined where nothing does. */
export function doubtOf(beam: MeasuredBeam, kinds: readonly BeamNoteKind[] = []): string | undefined {
  const against = [...spoilingNotes(beam), ...beam.notes.filter(({ kind }) => kinds.includes(kind))];
  return against.length === 0 ? undefined : against.map(({ text }) => text).join(' ');
}

export const measuredDiameter = derived({
  id: 'laser.measuredDiameter',
  name: 'measured raw beam diameter',
  symbol: 'd_\\text{measured}',
  unit: 'm',
  display: 'mm',
  about: 'Second-moment diameter of the measured beam, √(dx·dy); equals the 1/e² diameter for a Gaussian.',
  from: { beam: measuredBeam },
  compute: ({ beam }) => beam.equivalentDiameter,
  valid: ({ beam }) => doubtOf(beam, ['not-round']),
  formula: '\\sqrt{d_x d_y}',
  source: 'iso11146',
});

export const pulseEnergy = number({
  id: 'laser.pulseEnergy',
  name: 'pulse energy',
  symbol: 'E_\\text{typed}',
  unit: 'J',
  display: 'uJ',
  about:
    'Energy of one pulse where it is measured, as typed: before the losses that are named, and before the stop.',
  initial: 20e-6,
  range: { min: 1e-9, max: 1 },
  typical: [1e-6, 200e-6],
});

export const repetitionRate = number({
  id: 'laser.repetitionRate',
  name: 'repetition rate',
  symbol: 'f_\\text{rep}',
  unit: 'Hz',
  display: 'kHz',
  about: 'Pulses per second; with bursts, bursts per second.',
  initial: 200e3,
  range: { min: 1, max: 1e9 },
  typical: [1e3, 1e6],
});

export const pulseDuration = number({
  id: 'laser.pulseDuration',
  name: 'pulse duration',
  symbol: '\\tau',
  unit: 's',
  display: 'fs',
  about: 'Full width at half maximum of the pulse in time.',
  initial: 250e-15,
  range: { min: 5e-15, max: 1e-9 },
  typical: [100e-15, 1e-12],
});

export const beamPropagationRatio = number({
  id: 'laser.beamPropagationRatio',
  name: 'beam propagation ratio M²',
  symbol: 'M^2_\\text{typed}',
  unit: '1',
  about:
    'How much wider the focus is than that of a perfect Gaussian of the same diameter, same in both axes; 1 is perfect.',
  initial: 1,
  range: { min: 1, max: 4 },
  typical: [1, 1.6],
});
