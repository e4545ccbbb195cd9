import { derived, file } from '../graph/define.ts';
import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import { namingFile } from '../measured/namingFile.ts';
import { type NamedRipples, readRippleTable } from '../measured/rippleTable.ts';
import { Problem } from '../problem.ts';
import { placeOfPeriod } from '../process/ripplePoints.ts';
import { checkText, toMetres } from './causticFile.ts';
import { wavelength } from './laser.ts';
import { barePeriods } from './rippleDirection.ts';

export const rippleSeries = file<NamedRipples>({
  id: 'ripples.series',
  name: 'table of measured periods',
  symbol: '\\text{series}',
  unit: { name: 'none', against: 'none', setting: 'none', period: 'm' },
  about:
    'Ripple periods measured on your own surface, a row a measurement, against the pulses on a place or the fluence of a pulse, as in "N; period (nm)" or "fluence (J/cm²); period (nm)".',
  shownAs: ({ name, period }) => `${name}, ${period.length} ${period.length === 1 ? 'period' : 'periods'}`,
});

/**
 * Reads a series of periods from the text of a file. Throws Problem 'unreadable' that names the file and, where it can,
 * row and column.
 */
export function readRippleFile(text: string, name: string): NamedRipples {
  checkText(text, name, 'ripple periods');
  return namingFile(name, `"${name}" is no table of ripple periods`, () => ({
    name,
    ...readRippleTable(text, toMetres, toFluence),
  }));
}

function toFluence(value: number, unit: string): number | undefined {
  const known = isKnownUnit(unit) && sameDimensions(dimensionsOf(unit), dimensionsOf('J/m^2'));
  return known ? fromUnit(value, 'J/m^2', unit) : undefined;
}

export const seriesPlaces = derived({
  id: 'ripples.seriesPlaces',
  name: 'where the measured periods lie',
  symbol: '\\text{places}',
  unit: { period: 'm', overWavelength: '1', place: 'none' },
  about:
    'Each measured period over the wavelength in vacuum, and whether it lies inside what is expected, of the wave that runs against the light or of the one with it, is shorter or longer, or so fine that another mechanism made it.',
  from: { series: rippleSeries, wavelength, bare: barePeriods },
  compute: ({ series, wavelength, bare }) => {
    if (series === null) throw noSeries();
    const [short, long] = [bare.short / wavelength, bare.long / wavelength];
    return series.period.map((period) => ({
      period,
      overWavelength: period / wavelength,
      place: placeOfPeriod(period / wavelength, short, long),
    }));
  },
  shownAs: (places) =>
    `${places.filter(({ place }) => place === 'inside').length} of ${places.length} inside`,
  formula: '\\Lambda_i/\\lambda',
  source: 'bonse2020',
});

function noSeries(): Problem {
  return new Problem(
    'absent',
    'No table of measured periods has been given yet: choose one or paste it, as in "N; period (nm)".',
    { input: rippleSeries.id },
  );
}
