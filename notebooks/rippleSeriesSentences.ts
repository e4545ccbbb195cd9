import { ambientIndex, incidence } from '../lib/design/rippleInputs.ts';
import { rippleSeries, seriesPlaces } from '../lib/design/rippleSeries.ts';
import { formatNumber, formatReadable } from '../lib/graph/units.ts';
import type { RipplePlace } from '../lib/process/ripplePoints.ts';
import { says } from './prose.ts';

const order: readonly RipplePlace[] = [
  'inside',
  'inside the longer',
  'shorter',
  'longer',
  'another mechanism',
];
const placeWords: Readonly<Record<RipplePlace, (many: boolean) => string>> = {
  inside: (many) => `${many ? 'lie' : 'lies'} inside what is expected`,
  'inside the longer': (many) =>
    `${many ? 'lie' : 'lies'} inside what would be expected of the wave that runs with the light`,
  shorter: (many) => `${many ? 'are' : 'is'} shorter`,
  longer: (many) => `${many ? 'are' : 'is'} longer`,
  'another mechanism': (many) =>
    `${many ? 'are' : 'is'} finer than half the wavelength, which another mechanism makes`,
};

/** Periods beyond this many wavelengths are no ripples of this kind. */
const farBeyond = 5;

const seriesParts = { series: rippleSeries, places: seriesPlaces, ambient: ambientIndex, incidence };

/** Where the measured periods lie, and where the series runs. */
export const seriesSaid = says(seriesParts, ({ series, places, ambient, incidence }) => {
  const counted = order
    .map((place) => [place, places.filter((one) => one.place === place).length] as const)
    .filter(([, count]) => count > 0)
    .map(([place, count]) => `${count} ${placeWords[place](count > 1)}`);
  const far = places.filter(({ overWavelength }) => overWavelength > farBeyond).length;
  const slip =
    far === 0
      ? ''
      : ` ${far} ${far === 1 ? 'is' : 'are'} more than ${farBeyond} times the wavelength: is the unit of the table right?`;
  const usual =
    ambient === 1 && incidence === 0
      ? ''
      : ' What is expected is carried over from normal incidence in air to this tilt or ambient, where it has not been shown.';
  const which = `Of ${places.length === 1 ? 'one measured period' : `${places.length} measured periods`} ${counted.join(', ')}.${slip}${usual}`;
  const { setting, period, against } = series!;
  const first = setting.indexOf(Math.min(...setting));
  const last = setting.indexOf(Math.max(...setting));
  if (setting[first] === setting[last]) return which;
  const change = period[last]! / period[first]! - 1;
  const more = against === 'pulses' ? 'the most pulses' : 'the highest fluence';
  const less = against === 'pulses' ? 'the fewest' : 'the lowest';
  if (Math.abs(change) < 0.01) return `${which} At ${more} the period is that at ${less}, within 1\u202f%.`;
  return `${which} At ${more} the period is ${formatNumber(100 * Math.abs(change), 2)}\u202f% ${change < 0 ? 'shorter' : 'longer'} than at ${less}${change > 0 && against === 'pulses' ? ', though it mostly falls with the number of pulses' : ''}.`;
});

/** Every measured period with its own place. */
export const seriesRowsSaid = says({ series: rippleSeries, places: seriesPlaces }, ({ series, places }) => {
  const { against, setting } = series!;
  const of = (value: number) =>
    against === 'pulses'
      ? `${formatNumber(value)} ${value === 1 ? 'pulse' : 'pulses'}`
      : formatReadable(value, 'J/m^2', 'J/cm^2');
  const shown = places.map(
    ({ period, place }, i) => `${of(setting[i]!)}: ${formatReadable(period, 'm', 'nm')}, ${place}`,
  );
  const most = 20;
  const rest = shown.length > most ? `; and ${shown.length - most} more` : '';
  return `One by one: ${shown.slice(0, most).join('; ')}${rest}.`;
});
