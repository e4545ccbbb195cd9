import type { CuttingLaw } from './cuttingLaw.ts';
import { countingLevel } from './cuttingLaw.ts';
import { cellGrid, type LayerCell, type LayerLattice, layerCell } from './engravingCell.ts';
import type { EngravingBeam } from './engravingPlanes.ts';
import { type FluenceTable, fluenceTable } from './fluenceTable.ts';

/** Root mean square deviation over mean of what a layer removes; 0 where it removes nothing. */
export function unevennessOf({ removed, meanRemoved }: LayerCell): number {
  if (meanRemoved === 0) return 0;
  const squares = removed.reduce((sum, depth) => sum + (depth - meanRemoved) ** 2, 0);
  return Math.sqrt(squares / removed.length) / meanRemoved;
}

/** The first layer of a beam on the fresh surface. */
export function firstLayer(beam: EngravingBeam, law: CuttingLaw, lattice: LayerLattice): LayerCell {
  return layerOn(firstTable(beam, law), beam, law, lattice);
}

function firstTable(beam: EngravingBeam, law: CuttingLaw): FluenceTable {
  return fluenceTable(beam.spotAt(beam.plane), beam.unit, countingLevel(law));
}

function layerOn(
  table: FluenceTable,
  beam: EngravingBeam,
  law: CuttingLaw,
  lattice: LayerLattice,
): LayerCell {
  return layerCell(table, law, cellGrid(lattice, beam.finest), 0);
}

/** Spacings tried, each so much wider than the one before; and halvings of the last interval. */
const [tries, factor, halvings] = [26, 1.2, 12];

/** A line spacing and the layer it leaves. */
export interface SpacedLayer {
  readonly across: number;
  readonly layer: LayerCell;
}

/**
 * The widest line spacing, m, before the first at which a first layer is more uneven than `unevenness`, among spacings
 * from a twentieth of `diameter` on to five of them, to 1e-4; undefined where the closest lines are too uneven already.
 */
export function widestLines(
  beam: EngravingBeam,
  law: CuttingLaw,
  { along, pulses }: Pick<LayerLattice, 'along' | 'pulses'>,
  unevenness: number,
  diameter: number,
): SpacedLayer | undefined {
  const table = firstTable(beam, law);
  const at = (across: number): SpacedLayer => ({
    across,
    layer: layerOn(table, beam, law, { along, across, pulses }),
  });
  const even = ({ layer }: SpacedLayer) => layer.meanRemoved > 0 && unevennessOf(layer) <= unevenness;
  let good = at(diameter / 20);
  if (!even(good)) return undefined;
  let bad: number | undefined;
  for (let i = 1; i <= tries && bad === undefined; i++) {
    const next = at(good.across * factor);
    if (even(next)) good = next;
    else bad = next.across;
  }
  for (let i = 0; bad !== undefined && i < halvings; i++) {
    const middle = at((good.across + bad) / 2);
    if (even(middle)) good = middle;
    else bad = middle.across;
  }
  return good;
}
