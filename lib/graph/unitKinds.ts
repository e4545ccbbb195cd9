import { Problem } from '../problem.ts';
import { type Dimensions, readUnitScale, sameDimensions, type UnitScale } from './unitScale.ts';

/** What a unit measures, in words with its article, and texts that a person could type. */
interface UnitKind {
  /** SI unit by which the kind is declared. */
  readonly unit: string;
  readonly name: string;
  readonly examples: string;
}

/** By SI unit; the first row with the same dimensions counts. */
const kinds: readonly (readonly [unit: string, name: string, examples: string])[] = [
  ['m', 'a length', '10 mm, 0.4 in or 250 µm'],
  ['rad', 'an angle or phase', '180°, 0.5 waves or 0.9 π'],
  ['s', 'a time', '250 fs or 30 s'],
  ['Hz', 'a frequency', '200 kHz or 1 MHz'],
  ['J', 'an energy', '50 µJ or 1 mJ'],
  ['W', 'a power', '10 W or 200 mW'],
  ['J/m^2', 'a fluence', '0.2 J/cm² or 2000 J/m²'],
  ['W/m^2', 'an irradiance', '1e9 W/cm² or 1e13 W/m²'],
  ['1', 'a pure number', '0.05, 5 % or 3 pulses'],
  ['K', 'a temperature rise', '20 K'],
  ['m^2', 'an area', '3 mm² or 100 µm²'],
  ['m^3', 'a volume', '0.35 mm³'],
  ['1/m', 'a spatial frequency', '200 /mm'],
  ['m/s', 'a speed', '2 m/s or 500 mm/s'],
  ['m/s^2', 'an acceleration', '50 m/s²'],
  ['rad/s', 'an angular speed', '100 rad/s or 3000 rpm'],
  ['m^2/s', 'an area rate or a diffusivity', '3.33 mm²/s'],
  ['m^3/s', 'a volume rate', '5 mm³/min'],
  ['m^3/J', 'a volume per energy', '0.35 mm³/(W·min) or 5 µm³/µJ'],
  ['m^2/J', 'an area per energy', '500 µm²/µJ'],
  ['m^2/W', 'a nonlinear index', '2.7e-20 m²/W'],
  ['W/(m*K)', 'a thermal conductivity', '15 W/(m·K)'],
  ['J/(kg*K)', 'a specific heat', '500 J/(kg·K)'],
  ['kg/m^3', 'a density', '8000 kg/m³ or 8 g/cm³'],
  ['K/m', 'a temperature gradient', '5 K/mm'],
  ['J/m', 'an energy per length', '10 J/m'],
  ['kg', 'a mass', '5 g'],
  ['N', 'a force', '1 N'],
  ['Pa', 'a pressure', '1 bar'],
  ['A', 'an electric current', '1 A'],
  ['mol', 'an amount of substance', '1 mol'],
  ['cd', 'a luminous intensity', '1 cd'],
];

/** The kind with these dimensions; undefined for a combination without a name. */
export function kindOf(dimensions: Dimensions): UnitKind | undefined {
  const row = kinds.find(([unit]) => sameDimensions(readUnitScale(unit)!.dimensions, dimensions));
  return row && { unit: row[0], name: row[1], examples: row[2] };
}

/** Where a text was typed: the unit wanted, and examples of its own. */
interface Place {
  readonly target: UnitScale;
  readonly examples: string | undefined;
}

function belongsHere({ target, examples }: Place): string {
  const kind = kindOf(target.dimensions);
  if (kind) return `${kind.name} such as ${examples ?? kind.examples} belongs here`;
  return examples === undefined
    ? 'a number with its unit belongs here'
    : `a number with its unit such as ${examples} belongs here`;
}

/** Units by which a slip of upper and lower case is recognised; mHz is no rate of pulses, so MHz is meant. */
const usualUnits = [
  ...['nm', 'um', 'mm', 'cm', 'm', 'in', 'fs', 'ps', 'ns', 'us', 'ms', 's', 'Hz', 'kHz', 'MHz', 'GHz'],
  ...['nJ', 'uJ', 'mJ', 'J', 'uW', 'mW', 'W', 'kW', 'J/cm^2', 'J/m^2', 'W/cm^2', 'W/m^2'],
  ...['rad', 'mrad', 'deg', 'waves', 'pi'],
];

function sameInOtherCase(name: string, target: UnitScale): string | undefined {
  const plain = name.toLowerCase();
  return usualUnits.find(
    (unit) =>
      unit.toLowerCase() === plain && sameDimensions(readUnitScale(unit)!.dimensions, target.dimensions),
  );
}

/** The u that stands for µ in plain spelling. */
function withMicro(unit: string): string {
  return unit.replace(/^u(?=.)/, 'µ');
}

export function noNumber(text: string, place: Place): Problem {
  const shown = text.trim();
  const start = shown === '' ? 'The field is empty' : `'${shown}' has no number that can be read`;
  return new Problem('unreadable', `${start}; ${belongsHere(place)}.`, parts(text, place));
}

export function unknownUnit(text: string, name: string, place: Place): Problem {
  const message = `The unit '${name}' in '${text.trim()}' is not known; ${nextStep(name, place)}.`;
  return new Problem('unreadable', message, parts(text, place));
}

export function wrongKind(text: string, name: string, scale: UnitScale, place: Place): Problem {
  const kind = kindOf(scale.dimensions)?.name ?? 'another kind of quantity';
  const twice = /^([a-z]+) \1$/i.exec(name)?.[1];
  const what = twice === undefined ? `is ${kind}` : `has the unit ${withMicro(twice)} twice`;
  const message = `'${text.trim()}' ${what}; ${nextStep(name, place)}.`;
  return new Problem('impossible', message, parts(text, place));
}

/** What belongs here, after the unit that was probably meant. */
function nextStep(name: string, place: Place): string {
  const near = sameInOtherCase(name, place.target);
  const belongs = belongsHere(place);
  return near === undefined ? belongs : `did you mean ${withMicro(near)}? A${belongs.slice(1)}`;
}

export function beyondReach(text: string, size: string): Problem {
  return new Problem(
    'impossible',
    `'${text.trim()}' is too ${size}; type a number between 1e-300 and 1e300.`,
    {
      value: text,
    },
  );
}

function parts(text: string, place: Place): { value: string; allowed: string } {
  return { value: text, allowed: belongsHere(place) };
}
