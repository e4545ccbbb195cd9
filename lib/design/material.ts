import { choice, constant, derived } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import { differencesFrom, handbookMaterial, thresholdRange } from '../process/handbook.ts';
import { differenceText, publishedText } from './handbookWords.ts';
import { pulseDuration, repetitionRate, wavelength } from './laser.ts';

export const material = choice({
  id: 'workpiece.material',
  name: 'material of the workpiece',
  symbol: '\\text{material}',
  about:
    'What the workpiece is made of: published thresholds and optical constants are looked up by it, where there are any.',
  initial: 'stainless',
  options: {
    stainless: 'stainless steel',
    carbonSteel: 'carbon steel AISI 1045',
    copper: 'copper',
    titanium: 'titanium',
    niobium: 'niobium',
    silicon: 'silicon',
    nickel: 'nickel',
    chromium: 'chromium',
    iron: 'iron',
    aluminium: 'aluminium',
    gold: 'gold',
    silver: 'silver',
    tungsten: 'tungsten',
    molybdenum: 'molybdenum',
    other: 'another material',
  },
});

/** The handbook holds numbers in SI; as a quantity its unit scales with the design. */
export const handbookUnit = constant({
  id: 'threshold.handbookUnit',
  name: 'unit of the handbook',
  symbol: '\\mathrm{J/m^2}',
  unit: 'J/m^2',
  about: 'Fluence that the published thresholds are counted in.',
  value: 1,
  source: 'definition',
});

export const publishedThresholds = derived({
  id: 'threshold.published',
  name: 'thresholds as published',
  symbol: '\\{F_i\\}',
  unit: 'none',
  about:
    'Incident threshold fluences of this material as published, each with its criterion, wavelength, pulse duration, repetition rate and source, in words.',
  from: { material },
  compute: ({ material }): readonly string[] => handbookMaterial(material).rows.map(publishedText),
  shownAs: (texts) => `${texts.length === 1 ? 'one' : texts.length}, such as ${texts[0]!.split(';')[0]}`,
  formula: '\\text{handbook}(\\text{material})',
  source: 'definition',
});

export const handbookRange = derived({
  id: 'threshold.handbookRange',
  name: 'published thresholds',
  symbol: '[F_\\text{low}, F_\\text{high}]',
  unit: { low: 'J/m^2', high: 'J/m^2', start: 'J/m^2', uncertainty: 'J/m^2' },
  about:
    'Range of published threshold fluences of this material, incident, per pulse, reaching half as much again beyond the lowest and the highest; a place to start from, to be measured.',
  from: { material, unit: handbookUnit },
  compute: ({ material, unit }) => {
    const { low, high, start, uncertainty } = thresholdRange(handbookMaterial(material));
    return { low: low * unit, high: high * unit, start: start * unit, uncertainty: uncertainty * unit };
  },
  shownAs: ({ low, high }) =>
    `${formatQuantity(low, 'J/m^2', 'J/cm^2', 2)} to ${formatQuantity(high, 'J/m^2', 'J/cm^2', 2)}`,
  formula: '[\\min F/1.5,\\ 1.5\\max F]',
  source: 'common practice',
});

export const handbookDifferences = derived({
  id: 'threshold.handbookDifferences',
  name: 'how the published conditions differ',
  symbol: '\\text{differences}',
  unit: 'none',
  about:
    'Where wavelength, pulse duration, repetition rate or pulses on a place of the published thresholds differ from the design, in words; the thresholds are not corrected for it.',
  from: { material, wavelength, pulseDuration, repetitionRate },
  compute: ({ material, ...conditions }): readonly string[] =>
    differencesFrom(handbookMaterial(material), conditions).map((one) => differenceText(one, conditions)),
  shownAs: (differences) =>
    differences.length === 0 ? 'none' : `${differences.length}, first: ${differences[0]}`,
  formula: '\\text{differences}(\\lambda, \\tau, f_\\text{rep})',
  source: 'definition',
});
