import { findPlateColumn } from './plateColumn.ts';
import { asSpots, type SpotTableKind } from './spotColumns.ts';
import { areas, axes, diameters, energies, ofAxis, planes, powers, radii } from './spotNames.ts';
import type { HeaderCell } from './tableHeader.ts';

const sizeNames = new Set([
  ...diameters,
  ...radii,
  ...axes.flat().flatMap((axis) => [...ofAxis(diameters, axis), ...ofAxis(radii, axis)]),
  ...areas,
]);

/** What a header names beside the size of a mark, with units or without: an energy or power, or z and the plate. */
export function kindNamed(given: readonly HeaderCell[]): SpotTableKind | undefined {
  const header = given.map(asSpots);
  const has = (names: readonly string[]) => header.some(({ name }) => names.includes(name));
  if (!header.some(({ name }) => sizeNames.has(name))) return undefined;
  if (has(planes) && findPlateColumn(header) !== undefined) return 'ladder';
  return has(energies) || has(powers) ? 'spots' : undefined;
}
