import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { countingDiameter } from '../process/fieldChecks.ts';
import { effectiveArea, unshapedEffectiveArea } from './marks.ts';
import { lineSpacing, pulseSpacing, pulsesInPlace } from './scanInputs.ts';

/** How often one of the two beams meets each place; `area` is its effective area. */
function countsOf(before: '' | 'unshaped.', area: Derived<number>) {
  const [words, mark, plate] =
    before === '' ? ['', '', ''] : [' without the step', '\\text{u},', ', with the plate taken out'];
  const spotDiameter = derived({
    id: `${before}scan.spotDiameter`,
    name: `diameter of the spot as scanned${words}`,
    symbol: `D${mark === '' ? '' : '_\\text{u}'}`,
    unit: 'm',
    display: 'um',
    digits: 3,
    about: `Diameter that counts for pulses per spot: that of the Gaussian, at 1/e², with the same effective area${plate}.`,
    from: { area },
    compute: ({ area }) => countingDiameter({ effectiveArea: area }),
    formula: `2\\sqrt{2A_{${mark}\\text{eff}}/\\pi}`,
    source: 'scaling',
  });
  const pulsesPerSpot = derived({
    id: `${before}scan.pulsesPerSpot`,
    name: `pulses per spot along a line${words}`,
    symbol: `N_{${mark}\\text{pps}}`,
    unit: '1',
    digits: 3,
    about: `Pulses of one line that land while the spot moves by its own diameter${plate}; those of bursts counted one by one in "pulses in each place".`,
    from: { D: spotDiameter, p: pulseSpacing },
    compute: ({ D, p }) => D / p,
    formula: `D/p`,
    source: 'definition',
  });
  const linesPerSpot = derived({
    id: `${before}scan.linesPerSpot`,
    name: `lines per spot${words}`,
    symbol: `N_{${mark}\\text{lps}}`,
    unit: '1',
    digits: 3,
    about: `Lines of one pass across the diameter of the spot${plate}.`,
    from: { D: spotDiameter, spacing: lineSpacing },
    compute: ({ D, spacing }) => D / spacing,
    formula: `D/\\Delta y`,
    source: 'definition',
  });
  const accumulatedPulses = derived({
    id: `${before}scan.accumulatedPulses`,
    name: `accumulated fluence in peak fluences${words}`,
    symbol: `N_{${mark}\\text{acc}}`,
    unit: '1',
    digits: 3,
    about: `Mean accumulated fluence of a wide field over the peak fluence of one pulse${plate}: as many full peaks come to each place on average, all lines, passes and bursts together.`,
    from: { area, p: pulseSpacing, spacing: lineSpacing, n: pulsesInPlace },
    compute: ({ area, p, spacing, n }) => (n * area) / (p * spacing),
    formula: `n\\,A_{${mark}\\text{eff}}/(p\\,\\Delta y)`,
    source: 'definition',
  });
  return { spotDiameter, pulsesPerSpot, linesPerSpot, accumulatedPulses };
}

export const { spotDiameter, pulsesPerSpot, linesPerSpot, accumulatedPulses } = countsOf('', effectiveArea);
export const {
  spotDiameter: unshapedSpotDiameter,
  pulsesPerSpot: unshapedPulsesPerSpot,
  linesPerSpot: unshapedLinesPerSpot,
  accumulatedPulses: unshapedAccumulatedPulses,
} = countsOf('unshaped.', unshapedEffectiveArea);
