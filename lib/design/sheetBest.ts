import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { portion } from '../numerics/progress.ts';
import type { Light } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { Problem } from '../problem.ts';
import type { PulseTrain } from '../process/chordRemoval.ts';
import { countingLevel } from '../process/cuttingLaw.ts';
import type { CuttingLight } from '../process/cuttingLight.ts';
import { energyAtPeak } from '../process/removal.ts';
import { type CutSheet, cutSheet } from '../process/sheet.ts';
import { cheapestUnit } from '../process/sheetBest.ts';
import { light } from './focus.ts';
import { passesAfter, sheetThickness } from './grooveInputs.ts';
import { pulseTrain } from './grooveLaw.ts';
import { focusOf, grooveLight, plainOf } from './grooveLight.ts';
import { opticsTransmission, usedPulseEnergy } from './losses.ts';
import { pulseSpacing } from './scanInputs.ts';
import { sheetCut } from './sheet.ts';

/** Half as fine as the cut that is shown: energies are found to a factor of 1.02 all the same. */
const steps = { across: 48, along: 48 };
/** Peak fluence in units of the threshold of one pulse. */
const peaks = [2, 300] as const;
/** Where the focus lies in the sheet, in parts of its thickness below the near face. */
const focusPlaces = [0, 0.5, 1];

/** In other places of the focus the best energy is looked for within this factor of the first. */
const near = 4;

/** A cut of the plain beam with everything that is free at its best. */
export interface BestPlainSheet {
  /** Peak fluence per pulse in the focus, J/m². */
  readonly peak: number;
  /** Pulse energy where that is measured, J. */
  readonly energy: number;
  /** Depth of the focus below the near face, m. */
  readonly focusDepth: number;
  readonly passes: number;
  readonly allPasses: number;
  readonly entryKerf: number;
  readonly exitKerf: number;
  readonly taper: number;
}

function bestPlace(
  plain: Light,
  train: Omit<PulseTrain, 'unit'>,
  thickness: number,
  after: number,
  report?: (part: number) => void,
) {
  const inFocus = spotAt(plain, focusOf(plain)).peak;
  const between = peaks.map((peak) => (peak * train.law.incubation.first) / inFocus);
  let found: { z: number; best: ReturnType<typeof cheapestUnit> } = { z: focusOf(plain), best: undefined };
  focusPlaces.forEach((place, i) => {
    const z = focusOf(plain) - place * thickness;
    // One sampling serves all energies: that of the strongest reaches 1.7 times as far as that of the weakest.
    const cutting = lightIfThere(plain, z, countingLevel(train.law) / between[1]!);
    if (cutting === undefined) return;
    const part = portion(report, i / focusPlaces.length, (i + 1) / focusPlaces.length);
    const known = found.best;
    const best = cheapestUnit(
      {
        light: cutting,
        train,
        thickness,
        after,
        between: known
          ? [known.unit / near, Math.min(between[1]!, known.unit * near)]
          : (between as [number, number]),
        // Places that differ by less than the search is fine count as equal: the first of them then.
        ...(known && { below: 0.98 * known.cost }),
      },
      part,
    );
    if (best) found = { z, best };
  });
  return found;
}

/** The light in the sheet; undefined where there is no spot on its near face. */
function lightIfThere(plain: Light, z: number, level: number): CuttingLight | undefined {
  try {
    return grooveLight(plain, z, level, steps);
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

function noneThrough(thickness: number): Problem {
  const show = formatReadable(thickness, 'm', 'auto:m', 3);
  return new Problem(
    'absent',
    `Without the plate no pulse energy up to a peak of ${peaks[1]} thresholds cuts through the sheet of ${show} with today’s lens. Take a thinner sheet.`,
    { input: sheetThickness.id, value: show },
  );
}

export const bestPlainSheet = derived({
  id: 'unshaped.sheet.best',
  name: 'cut of the beam without the plate at its own best',
  symbol: '\\text{best}_\\text{s,u}',
  unit: {
    peak: 'J/m^2',
    energy: 'J',
    focusDepth: 'm',
    passes: '1',
    allPasses: '1',
    entryKerf: 'm',
    exitKerf: 'm',
    taper: 'rad',
  },
  about:
    'The plate taken out, lens and pulse spacing as today: pulse energy and depth of the focus (near face, middle or far face of the sheet) with which the cut takes least energy for its length; found to 2 %, by peaks from 2 to 300 thresholds.',
  from: {
    light,
    train: pulseTrain,
    thickness: sheetThickness,
    after: passesAfter,
    optics: opticsTransmission,
  },
  compute: ({ light, train, thickness, after, optics }, report): BestPlainSheet => {
    const plain = plainOf(light);
    const { z, best } = bestPlace(plain, train, thickness, after, report);
    if (best === undefined) throw noneThrough(thickness);
    const { unit } = best;
    const cutting = grooveLight(plain, z, countingLevel(train.law) / unit, steps);
    const cut = cutSheet(cutting, { ...train, unit }, thickness, after);
    if ('reached' in cut) throw noneThrough(thickness);
    const spot = spotAt(plain, focusOf(plain));
    const peak = unit * spot.peak;
    const { passes, allPasses, entryKerf, exitKerf, taper } = cut;
    const energy = energyAtPeak(spot, peak) / optics;
    return { peak, energy, focusDepth: focusOf(plain) - z, passes, allPasses, entryKerf, exitKerf, taper };
  },
  shownAs: ({ energy, passes }) => `${formatReadable(energy, 'J', 'uJ', 3)}, through after ${passes} passes`,
  formula: '\\min_{E,z}\\frac{(n_\\text{through}+n_\\text{after})E}{p}',
  source: 'search',
  heavy: 'search',
});

const energyAbout =
  'Energy of all pulses of all passes over the length of the line, where the pulse energy is measured.';

/** J/m: all passes, all pulses of a burst, one burst every `spacing`. */
function energyPerLength(
  { allPasses }: Pick<CutSheet, 'allPasses'>,
  pulseEnergy: number,
  spacing: number,
  { pulsesPerBurst }: Pick<PulseTrain, 'pulsesPerBurst'>,
): number {
  return (allPasses * pulsesPerBurst * pulseEnergy) / spacing;
}

export const sheetEnergyPerLength = derived({
  id: 'sheet.energyPerLength',
  name: 'energy to cut a length',
  symbol: 'E/L',
  unit: 'J/m',
  display: 'mJ/mm',
  digits: 3,
  about: energyAbout,
  from: { cut: sheetCut, E: usedPulseEnergy, p: pulseSpacing, train: pulseTrain },
  compute: ({ cut, E, p, train }) => energyPerLength(cut, E, p, train),
  formula: '\\frac{(n_\\text{through}+n_\\text{after})\\,n_\\text{b}E}{p}',
  source: 'definition',
});

export const bestPlainEnergyPerLength = derived({
  id: 'unshaped.sheet.bestEnergyPerLength',
  name: 'energy to cut a length without the plate at its own best',
  symbol: '(E/L)_\\text{best,u}',
  unit: 'J/m',
  display: 'mJ/mm',
  digits: 3,
  about: `${energyAbout} The plate taken out, pulse energy and depth of the focus at their best.`,
  from: { best: bestPlainSheet, p: pulseSpacing, train: pulseTrain },
  compute: ({ best, p, train }) => energyPerLength(best, best.energy, p, train),
  formula: '\\frac{(n_\\text{through}+n_\\text{after})\\,n_\\text{b}E}{p}',
  source: 'definition',
});
