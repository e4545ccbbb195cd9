import { type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { type AreaTable, tabulateAreas } from '../../lib/process/areaTable.ts';
import { lightBehind } from '../optics/lightBehind.ts';
import type { MarkRecipe } from './syntheticMarks.ts';

/** Round zones: a phase step of `phase` half-waves inside κ, to the stop. */
export function roundLight(ratio: number, stop: number, phase = 1): Light {
  return lightBehind([
    { outer: ratio, phase: Math.PI * phase },
    { outer: stop, phase: 0 },
  ]);
}

/** Crossed steps at the ratio of the flattest focus. */
export const crossedLight: Light = {
  ...roundLight(1, 1.5),
  plate: {
    kind: 'crossed',
    halfWidthX: 1.0876520317581673 * 5e-3,
    halfWidthY: 1.0876520317581673 * 5e-3,
    phase: Math.PI,
    stop: 7.5e-3,
  },
};

/** The plates whose marks the fits are tried on, each in a plane in Rayleigh lengths. */
export const shapedSpots: readonly {
  readonly name: string;
  readonly light: Light;
  readonly plane: number;
}[] = [
  { name: 'round flat-top', light: roundLight(1, Number.POSITIVE_INFINITY), plane: 0.44 },
  { name: 'round ring', light: roundLight(1, Number.POSITIVE_INFINITY), plane: 0 },
  { name: 'round with a stop', light: roundLight(1, 1.4), plane: 0 },
  { name: 'crossed steps', light: crossedLight, plane: 0 },
];

/** Area above a level relative to the peak, in the plane ζ. */
export function areaAboveIn(light: Light, plane: number): (level: number) => number {
  const spot = spotAt(light, planeOfDefocus(light, plane));
  return (level) => spot.areaAbove(level * spot.peak);
}

/** The same tabulated. */
export function tableIn(light: Light, plane: number): AreaTable {
  return tabulateAreas(areaAboveIn(light, plane));
}

/** Marks of a spot as its exact areas say. */
export function markFrom(areaAbove: (level: number) => number): MarkRecipe['markAt'] {
  return (ratio) => ({ area: areaAbove(1 / ratio) });
}
