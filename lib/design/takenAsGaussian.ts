import { derived } from '../graph/define.ts';
import { formatNumber } from '../graph/units.ts';
import { focusRadius } from '../optics/light.ts';
import { markGrowth, thresholdEnergyOf } from '../process/markGrowth.ts';
import { takenAsGaussian as take } from '../process/takenAsGaussian.ts';
import { light } from './focus.ts';
import { usedPulseEnergy } from './losses.ts';
import { asked, thresholdLevel } from './marks.ts';

/** Highest energies of the two series, over the least that marks: a careful one and a wide one. */
const reaches = { narrow: 3, wide: 20 } as const;
/** Energies of the curve, and how far it goes. */
const [curveEnergies, curveReach] = [81, 25];

const fitUnits = { upTo: '1', energyFactor: '1', fluenceFactor: '1', beamRadius: 'm' } as const;

export const takenAsGaussian = derived({
  id: 'spot.takenAsGaussian',
  name: 'marks of this plane taken for those of a Gaussian',
  symbol: 'D^2(\\ln E)_N',
  unit: { startEnergy: 'J', energies: 'J', areas: 'm^2', narrow: fitUnits, wide: fitUnits },
  about:
    'What a straight line through the squared diameters of the predicted marks against ln E would give, if it were read as that of a Gaussian: threshold energy and peak fluence over the true ones and 1/e² radius, from eight energies between 1.2 and 3 times, and 1.2 and 20 times, the least energy that marks.',
  from: { light, spot: asked, level: thresholdLevel, energy: usedPulseEnergy },
  compute: ({ light, spot, level, energy }) => {
    const startEnergy = thresholdEnergyOf(spot, level * energy);
    const energies = Float64Array.from(
      { length: curveEnergies },
      (_, i) => startEnergy * curveReach ** (i / (curveEnergies - 1)),
    );
    const { area } = markGrowth(
      spot,
      energies.map((E) => (level * energy) / E),
    );
    const readAs = (upTo: number) => take(spot, focusRadius(light), upTo);
    return { startEnergy, energies, areas: area, narrow: readAs(reaches.narrow), wide: readAs(reaches.wide) };
  },
  shownAs: ({ narrow, wide }) =>
    `threshold ${formatNumber(narrow.fluenceFactor, 2)} or ${formatNumber(wide.fluenceFactor, 2)} times the true one`,
  formula: 'D^2=2w^2\\ln(E/E_\\text{th})',
  source: 'liu1982',
  heavy: 'picture',
});
