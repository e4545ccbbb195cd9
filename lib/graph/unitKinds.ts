import { Problem } from '../problem.ts';
import { type Dimensions, readUnitScale, sameDimensions, type UnitScale } from './unitScale.ts';

/** What a unit measures, in words with its article, and texts that a person could type. */
interface UnitKind {
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
function kindOf(dimensions: Dimensions): UnitKind | undefined {
  const row = kinds.find(([unit]) => sameDimensions(readUnitScale(unit)!.dimensions, dimensions));
  return row && { name: row[1], examples: row[2] };
}

function belongsHere(target: UnitScale): string {
  const kind = kindOf(target.dimensions);
  return kind ? `${kind.name} such as ${kind.examples} belongs here` : 'a number with its unit belongs here';
}

export function noNumber(text: string, target: UnitScale): Problem {
  const shown = text.trim();
  const start = shown === '' ? 'The field is empty' : `'${shown}' has no number that can be read`;
  return new Problem('unreadable', `${start}; ${belongsHere(target)}.`, parts(text, target));
}

export function unknownUnit(text: string, name: string, target: UnitScale): Problem {
  const message = `The unit '${name}' in '${text.trim()}' is not known; ${belongsHere(target)}.`;
  return new Problem('unreadable', message, parts(text, target));
}

export function wrongKind(text: string, scale: UnitScale, target: UnitScale): Problem {
  const kind = kindOf(scale.dimensions)?.name ?? 'another kind of quantity';
  return new Problem(
    'impossible',
    `'${text.trim()}' is ${kind}; ${belongsHere(target)}.`,
    parts(text, target),
  );
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

function parts(text: string, target: UnitScale): { value: string; allowed: string } {
  return { value: text, allowed: belongsHere(target) };
}
