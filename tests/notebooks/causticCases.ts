import {
  narrowBeam as beam,
  drawCaustic,
  isoPlaces,
  rayleighLengthOf,
  type SyntheticCaustic,
} from '../measured/syntheticCaustic.ts';
import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const rayleigh = rayleighLengthOf(beam);

/** The initial design with a caustic drawn from the beam above, changed, whose M² counts. */
const caustic = (changes: Partial<SyntheticCaustic> = {}, more: Values = {}): Values => ({
  'laser.causticTable': drawCaustic({ ...beam, ...changes }),
  'laser.ratioSource': 'measured',
  ...more,
});
const typed = { 'laser.ratioSource': 'typed' };
const own = { 'laser.beamSource': 'caustic' };
const lenses = { 'expander.kind': 'lenses' };
const measuredWaist = { 'expander.waistSource': 'measured' };

/** Points of a table within one Rayleigh length of the true waist, and beyond two. */
function placed(places: readonly number[]) {
  const distances = places.map(Math.abs);
  return { near: distances.filter((d) => d <= 1).length, far: distances.filter((d) => d >= 2).length };
}
const crowded = [-0.9, -0.7, -0.5, -0.3, -0.1, 0.1, 0.3, 0.5, 0.7, 0.9, 1.2, 1.4];
const distant = [-3.2, -3, -2.8, -2.6, -2.4, -2.2, -0.3, 0.3, 2.2, 2.4, 2.6, 2.8];
const oneSided = [1.2, 1.6, 2, 2.4, 2.8, 3.2, 3.6, 4, 4.4, 4.8, 5.2, 5.6];
const noisy = { scatter: 0.12, seed: 8 };
/** Deviation of M² from 1 in standard uncertainties. */
const deviations = (value: (id: string) => number) =>
  (value('laser.causticRatio') - 1) / value('laser.causticRatioUncertainty');
/** A perfect Gaussian whose scatter brings the fit a little below or above 1. */
const [justBelow, justAbove] = [1, 10].map((seed) => ({ ratio: 1, scatter: 0.03, seed }));

export const causticCases: readonly Case[] = [
  {
    says: 'causticSaid',
    design: caustic(),
    text: /^The hyperbola through the 12 points has a waist [\d.]+\sµm ±\s[\d.]+\sµm in diameter at z\s=\s[\d.]+\smm ±\s[\d.]+\smm and a Rayleigh length of [\d.]+\smm ±\s[\d.]+\smm\. At 1030\snm that is M²\s=\s1\.[\d]+ ±\s0\.0[\d]+\..* by 0\.[\d]+\s%/,
    truth: (value) =>
      Math.abs(value('laser.causticWaistDiameter') - beam.waistDiameter) <
        3 * value('laser.causticWaistDiameterUncertainty') &&
      Math.abs(value('laser.causticRayleighLength') - rayleigh) <
        3 * value('laser.causticRayleighLengthUncertainty'),
  },
  {
    says: 'causticPointsSaid',
    design: caustic(),
    text: /^The points lie as ISO 11146-1 asks: 6 of 12 within one Rayleigh length of the waist and 6 beyond two\.$/,
    truth: () => placed(isoPlaces).near === 6 && placed(isoPlaces).far === 6 && isoPlaces.length >= 10,
  },
  {
    says: 'causticPointsSaid',
    design: caustic({ places: isoPlaces.slice(2, 10), scatter: 0.001 }),
    text: /rests on 8 points; ISO 11146-1 asks for at least ten\. Measure 2 more\./,
    truth: () => isoPlaces.slice(2, 10).length === 8,
  },
  {
    says: 'causticPointsSaid',
    design: caustic({ places: crowded, scatter: 0.001 }),
    text: /^0 of 12 points lie beyond two Rayleigh lengths \(75\d mm\) from the waist; about half should/,
    truth: () => placed(crowded).far === 0 && placed(crowded).near >= 6,
  },
  {
    says: 'causticPointsSaid',
    design: caustic({ places: distant, scatter: 0.001 }),
    text: /^2 of 12 points lie within one Rayleigh length \(37\d mm\) of the waist; about half should, .* near (399|400|401) mm\.$/,
    truth: () => placed(distant).near === 2 && placed(distant).far >= 6,
  },
  {
    says: 'causticPointsSaid',
    design: caustic({ places: oneSided, scatter: 0.001 }),
    text: /The waist at [\d.]+ mm lies outside the measured range: it is an extrapolation/,
    truth: (value) =>
      Math.abs(value('laser.causticWaistPosition') - beam.waistPosition) < 0.1 * rayleigh &&
      Math.min(...oneSided) > 0,
  },
  {
    says: 'causticPointsSaid',
    design: caustic(noisy),
    text: /The diameters scatter by \d+\s% about the fit, where a camera gives 1\s% to 2\s%/,
    truth: (value) => value('laser.causticScatter') > 0.05,
  },
  {
    says: 'causticRatioSaid',
    design: caustic(),
    text: /^M² lies above 1 by more than twice its standard uncertainty: the beam spreads faster/,
    truth: (value) => deviations(value) > 2 && value('laser.usedBeamPropagationRatio') > 1,
  },
  {
    says: 'causticRatioSaid',
    design: caustic(justAbove),
    text: /^M² agrees with 1 within twice its standard uncertainty: this measurement does not tell/,
    truth: (value) => deviations(value) >= 0 && deviations(value) <= 2,
  },
  {
    says: 'causticRatioSaid',
    design: caustic(justBelow),
    text: /^M² came out below 1, which no beam can be, but agrees with 1 .*; the design takes 1\.$/,
    truth: (value) =>
      deviations(value) < 0 && deviations(value) > -2 && value('laser.usedBeamPropagationRatio') === 1,
  },
  {
    says: 'causticRatioSaid',
    design: caustic(justBelow, { ...typed, ...own, 'laser.beamPropagationRatio': 1.2 }),
    text: /^M² came out below 1, .* agrees with 1 within twice its standard uncertainty\.$/,
    truth: (value) => deviations(value) < 0 && value('laser.usedBeamPropagationRatio') === 1.2,
  },
  {
    says: 'causticRatioSaid',
    design: caustic({ ratio: 0.5 }),
    text: /^M² came out below 1 by more than twice .* as diameters\. Until then the design has no M²\.$/,
    truth: (value) => deviations(value) < -2 && Number.isNaN(value('laser.usedBeamPropagationRatio')),
  },
  {
    says: 'causticRatioSaid',
    design: caustic({ ratio: 0.5 }, { ...typed, ...own }),
    text: /^M² came out below 1 by more than twice .* as diameters\.$/,
    truth: (value) => deviations(value) < -2 && value('laser.usedBeamPropagationRatio') === 1,
  },
  {
    says: 'causticRatioSaid',
    design: caustic({ ratio: 6 }),
    text: /^M² lies above 4, where this model ends: .* given as radii\. Until then the design has no M²\.$/,
    truth: (value) =>
      value('laser.causticRatio') > 4 && Number.isNaN(value('laser.usedBeamPropagationRatio')),
  },
  {
    says: 'causticRatioSaid',
    design: caustic({ ratio: 6 }, { ...typed, ...own }),
    text: /^M² lies above 4, where this model ends: check the wavelength, .* given as radii\.$/,
    truth: (value) => value('laser.causticRatio') > 4 && value('laser.usedBeamPropagationRatio') === 1,
  },
  {
    says: 'causticUseSaid',
    design: caustic(),
    text: /takes M² alone from the caustic, and the beam diameter from elsewhere\. A lens without aberrations/,
    truth: (value) => value('laser.usedBeamDiameter') === value('laser.beamDiameter'),
  },
  {
    says: 'causticUseSaid',
    design: caustic({}, own),
    text: /takes M² from the caustic and its waist as the raw beam: the table must be of the beam that enters/,
    truth: (value) =>
      value('laser.usedBeamDiameter') === value('laser.causticWaistDiameter') &&
      value('laser.usedBeamPropagationRatio') === value('laser.causticRatio'),
  },
  {
    says: 'causticUseSaid',
    design: caustic({}, { ...own, ...typed }),
    text: /takes the waist of the caustic as the raw beam: .* M² stays as typed, 1, where the caustic has 1\.[\d]+\.$/,
    truth: (value) =>
      value('laser.usedBeamDiameter') === value('laser.causticWaistDiameter') &&
      value('laser.usedBeamPropagationRatio') === 1,
  },
  {
    says: 'causticUseSaid',
    design: caustic({}, { ...typed, ...lenses, ...measuredWaist }),
    text: /^The design takes M² and beam diameter from elsewhere\.$/,
    truth: (value) =>
      value('laser.usedBeamDiameter') === 5e-3 && value('laser.usedBeamPropagationRatio') === 1,
  },
  {
    says: 'causticPlaceSaid',
    design: caustic({}, own),
    text: /given by its magnification takes the waist itself .* within the Rayleigh length of 37\d(\.\d)?\smm/,
    truth: (value) => value('plate.beamDiameter') === 2 * value('laser.causticWaistDiameter'),
  },
  { says: 'causticPlaceSaid', design: caustic(), text: /^$/, truth: () => true },
  { says: 'causticPlaceSaid', design: caustic({}, lenses), text: /^$/, truth: () => true },
  {
    says: 'causticPlaceSaid',
    design: caustic({}, { ...own, ...lenses }),
    text: /distance from the waist to the first lens is typed, 500\smm; it can also follow/,
    truth: (value) => value('expander.usedWaistDistance') === 0.5,
  },
  {
    says: 'causticPlaceSaid',
    design: caustic({}, { ...own, ...lenses, ...measuredWaist, 'expander.causticOrigin': 1 }),
    text: /^The first lens stands at z\s=\s1000\smm, [\d.]+\smm from the waist along the light\.$/,
    truth: (value) => Math.abs(value('expander.usedWaistDistance') - 0.6) < 0.02,
  },
  {
    says: 'causticPlaceSaid',
    design: caustic({}, { ...own, ...lenses, ...measuredWaist, 'expander.causticOrigin': 0.1 }),
    text: /^The first lens stands at z\s=\s100\smm, −[\d.]+\smm from the waist along the light, so that the waist would form behind it\.$/,
    truth: (value) => Math.abs(value('expander.usedWaistDistance') + 0.3) < 0.02,
  },
  {
    says: 'causticPlaceSaid',
    design: caustic({}, { ...lenses, ...measuredWaist, 'expander.causticOrigin': 1 }),
    text: /The place of the waist is the caustic’s while the diameter is not: take both from the same beam\.$/,
    truth: (value) => value('laser.usedBeamDiameter') === 5e-3 && value('expander.usedWaistDistance') < 1,
  },
];
