import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { type CraterSection, craterSection, depthAt, volumeAtPeak } from '../process/removal.ts';
import { law } from './depthLaw.ts';
import { usedPulseEnergy } from './losses.ts';
import type { BeamParts } from './markQuantities.ts';
import { pulsesOnPlace } from './threshold.ts';

/** Places of a cut through a crater, either side of the centre. */
const places = 120;

/** What one of the two beams removes at the pulse energy and in the plane of the design. */
export function removalQuantities({ before, words, mark, unit }: BeamParts, asked: Derived<Spot>) {
  const volume = derived({
    id: `${before}removal.volume`,
    name: `volume removed per pulse${words}`,
    symbol: `V_{${mark}1}`,
    unit: 'm^3',
    display: 'auto:m^3',
    digits: 3,
    about:
      'Volume that each of the pulses on a place removes at the pulse energy and in the plane as they are; 0 where no place is above threshold.',
    from: { spot: asked, law, unit },
    compute: ({ spot, law, unit }) => volumeAtPeak(spot, law, spot.peak * unit),
    formula: `\\int d(F${mark === '' ? '' : '_\\text{u}'})\\,dA`,
    source: 'nolte1997',
  });
  const volumePerEnergy = derived({
    id: `${before}removal.volumePerEnergy`,
    name: `volume removed per energy${words}`,
    symbol: `V_{${mark}1}/E`,
    unit: 'm^3/J',
    display: 'um^3/uJ',
    digits: 3,
    about: 'Volume that one pulse removes over its energy where that is measured: losses and stop count.',
    from: { volume, E: usedPulseEnergy },
    compute: ({ volume, E }) => volume / E,
    formula: `\\frac{V_{${mark}1}}{E}`,
    source: 'definition',
  });
  const deepest = derived({
    id: `${before}removal.deepest`,
    name: `greatest depth of the crater${words}`,
    symbol: `d_{${mark}N}`,
    unit: 'm',
    display: 'auto:m',
    digits: 3,
    about:
      'Depth that all the pulses on one place remove together where the fluence is highest; every pulse removes alike.',
    from: { spot: asked, law, unit, N: pulsesOnPlace },
    compute: ({ spot, law, unit, N }) => N * depthAt(law, spot.peak * unit),
    formula: `N\\,d(F_{${mark}\\text{peak}})`,
    source: 'nolte1997',
  });
  const crater = derived({
    id: `${before}removal.crater`,
    name: `cut through the crater${words}`,
    symbol: `d_{${mark}N}(x)`,
    unit: { x: 'm', depth: 'm' },
    about:
      'Depth across the centre that all the pulses on one place remove together; every pulse removes alike: walls, melt and defocus are left out.',
    from: { spot: asked, law, unit, N: pulsesOnPlace },
    compute: ({ spot, law, unit, N }): CraterSection => {
      // Out to where a Gaussian of the same effective area has 1/e⁴ of its peak, or further where the mark reaches.
      const reach = 2 * Math.sqrt(Math.max(spot.effectiveArea, spot.areaAbove(law[0]!.threshold / unit)) / 2);
      const x = Float64Array.from({ length: 2 * places + 1 }, (_, i) => ((i - places) * reach) / places);
      return craterSection(spot, law, unit, N, x);
    },
    shownAs: ({ x, depth }) =>
      `${x.length} places, down to ${formatReadable(Math.max(...depth), 'm', 'nm', 3)}`,
    formula: `N\\,d(F${mark === '' ? '' : '_\\text{u}'}(x, 0))`,
    source: 'nolte1997',
  });
  return { volume, volumePerEnergy, deepest, crater };
}
