import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatQuantity } from '../graph/units.ts';
import type { ChosenField } from '../process/chosenField.ts';
import { netArea, type ScaleLimit, shotEnergy } from '../process/scaleUp.ts';
import { type ScaledBest, scaledBest } from '../process/scaleUpBest.ts';
import { bestShaped, bestUnshaped } from './comparison.ts';
import { focalLength } from './lens.ts';
import { limitInWords, squareMetre } from './scaleUp.ts';
import { largeMaxPulseEnergy } from './scaleUpInputs.ts';
import { work } from './scaleUpWork.ts';

const units = {
  speed: 'm/s',
  repetitionRate: 'Hz',
  power: 'W',
  fieldTime: 's',
  writingTime: 's',
  rate: 'm^2/s',
  energyPerArea: 'J/m^2',
  limit: 'none',
  next: 'none',
  pulseEnergy: 'J',
  pulseSpacing: 'm',
  lineSpacing: 'm',
  diameter: 'm',
  size: '1',
} as const;

/** One of the two beams at its own best on the larger machine. */
function bestOf(before: '' | 'unshaped.', best: Derived<ChosenField>) {
  const [words, mark] =
    before === '' ? ['with the plate', '^*'] : ['with the plate taken out', '_\\text{u}^*'];
  const own = `of the beam ${words} at its own best`;
  const field = derived({
    id: `${before}scaleUp.best`,
    name: `best setting on the larger machine, ${words}`,
    symbol: `{\\text{best}_\\text{L}}${mark}`,
    unit: units,
    about: `Field ${own}, as it was found for today’s machine under Throughput, written by the larger machine with the same number of spots: at that size of the spot, or smaller where a pulse has not enough energy for all spots. Heat is not counted.`,
    from: { best, work, maxEnergy: largeMaxPulseEnergy },
    compute: ({ best, work, maxEnergy }): ScaledBest => scaledBest(best, work, maxEnergy),
    shownAs: ({ rate, limit }) =>
      `${formatQuantity(rate, 'm^2/s', 'm^2/h', 3)}, limited by ${limitInWords(limit)}`,
    formula: '\\max_v \\dot A(v)',
    source: 'search',
  });
  const number = (
    key: 'rate' | 'energyPerArea' | 'diameter' | 'pulseEnergy' | 'speed' | 'repetitionRate',
    id: string,
    name: string,
    symbol: string,
    [unit, display]: readonly [string, string],
    about: string,
  ) =>
    derived({
      id: `${before}scaleUp.${id}`,
      name: `${name} on the larger machine, ${words} at its best`,
      symbol: `${symbol}${mark}`,
      unit,
      display,
      digits: 3,
      about: `${about} ${own}.`,
      from: { field },
      compute: ({ field }): number => field[key],
      formula: '\\text{best}',
      source: 'search',
    });
  const rate = number(
    'rate',
    'bestAreaPerHour',
    'area per hour',
    '{\\dot A_\\text{L}}',
    ['m^2/s', 'm^2/h'],
    'Area that the larger machine finishes per hour',
  );
  const energy = number(
    'energyPerArea',
    'bestEnergyPerSquareMetre',
    'laser energy for a square metre',
    '{(E/A)_\\text{L}}',
    ['J/m^2', 'kJ/m^2'],
    'Energy of the laser, where it is measured, per area, splitter losses and overlap counted,',
  );
  const diameter = number(
    'diameter',
    'bestDiameter',
    'diameter of each spot',
    '{D_\\text{L}}',
    ['m', 'um'],
    'Diameter of the spot as scanned, smaller than that found where a pulse has not enough energy for all spots,',
  );
  const pulse = number(
    'pulseEnergy',
    'bestPulseEnergy',
    'pulse energy of a spot',
    '{E_\\text{L}}',
    ['J', 'uJ'],
    'Energy of one pulse of one spot, where the laser’s energy is measured,',
  );
  const speed = number(
    'speed',
    'bestSpeed',
    'scan speed',
    '{v_\\text{L}}',
    ['m/s', 'm/s'],
    'Speed of the spots along a line',
  );
  const repetition = number(
    'repetitionRate',
    'bestRepetitionRate',
    'repetition rate',
    '{f_\\text{L}}',
    ['Hz', 'kHz'],
    'Pulses per second',
  );
  const time = derived({
    id: `${before}scaleUp.bestTimePerSquareMetre`,
    name: `time for a square metre on the larger machine, ${words} at its best`,
    symbol: `{t_{\\mathrm{m^2}}}${mark}`,
    unit: 's',
    display: 'h',
    digits: 3,
    about: `A square metre over the area per hour ${own}.`,
    from: { area: squareMetre, rate },
    compute: ({ area, rate }) => area / rate,
    formula: `1\\,\\mathrm{m^2}/{\\dot A_\\text{L}}${mark}`,
    source: 'definition',
  });
  const limit = derived({
    id: `${before}scaleUp.bestLimit`,
    name: `what limits the larger machine, ${words} at its best`,
    symbol: `{\\text{limit}_\\text{L}}${mark}`,
    unit: 'none',
    about: `What stops the speed or the work ${own}.`,
    from: { field },
    compute: ({ field }): ScaleLimit => field.limit,
    shownAs: (kind) => limitInWords(kind),
    formula: '\\arg\\min_i v_i',
    source: 'search',
  });
  const lens = derived({
    id: `${before}scaleUp.bestFocalLength`,
    name: `focal length for that spot on the larger machine, ${words}`,
    symbol: `{f_\\text{L}}${mark}`,
    unit: 'm',
    display: 'mm',
    digits: 3,
    about: `Focal length of a lens that makes the spot as large as that ${own}, the beam on the plate left as it is; making the beam narrower behind the plate does the same.`,
    from: { best, field, focalLength },
    compute: ({ best, field, focalLength }) => best.scale * field.size * focalLength,
    formula: 'f\\,w_0/w_{0,\\text{today}}',
    source: 'scaling',
  });
  const shot = derived({
    id: `${before}scaleUp.bestShotEnergy`,
    name: `energy of one pulse for all spots on the larger machine, ${words} at its best`,
    symbol: `{E_\\text{shot}}${mark}`,
    unit: 'J',
    display: 'uJ',
    digits: 3,
    about: `Energy that the laser gives in one pulse for all spots, splitter losses counted, ${own}.`,
    from: { pulse, work },
    compute: ({ pulse, work }) => shotEnergy({ energy: pulse }, work.machine),
    formula: `N{E_\\text{L}}${mark}/\\eta_\\text{s}`,
    source: 'definition',
  });
  return { field, rate, time, energy, diameter, pulse, speed, repetition, limit, lens, shot };
}

export const {
  field: scaledShaped,
  rate: scaledShapedRate,
  time: scaledShapedTime,
  energy: scaledShapedEnergy,
  diameter: scaledShapedDiameter,
  pulse: scaledShapedPulse,
  speed: scaledShapedSpeed,
  repetition: scaledShapedRepetition,
  limit: scaledShapedLimit,
  lens: scaledShapedLens,
  shot: scaledShapedShot,
} = bestOf('', bestShaped);

export const {
  field: scaledUnshaped,
  rate: scaledUnshapedRate,
  time: scaledUnshapedTime,
  energy: scaledUnshapedEnergy,
  diameter: scaledUnshapedDiameter,
  pulse: scaledUnshapedPulse,
  speed: scaledUnshapedSpeed,
  repetition: scaledUnshapedRepetition,
  limit: scaledUnshapedLimit,
  lens: scaledUnshapedLens,
  shot: scaledUnshapedShot,
} = bestOf('unshaped.', bestUnshaped);

export const scaledTimeGain = derived({
  id: 'scaleUp.timeGain',
  name: 'gain in time with the plate on the larger machine',
  symbol: 'G_{t,\\text{L}}',
  unit: '1',
  digits: 3,
  about:
    'Time for an area with the unshaped beam over that with the shaped one, each at its own best, on the larger machine with the same number of spots.',
  from: { shaped: scaledShaped, unshaped: scaledUnshaped },
  compute: ({ shaped, unshaped }) => shaped.rate / unshaped.rate,
  formula: '\\dot A_\\text{L}^*/\\dot A_{\\text{L},\\text{u}}^*',
  source: 'search',
});

export const scaledFieldGain = derived({
  id: 'scaleUp.fieldGain',
  name: 'gain in time with the plate on the larger machine, moves left out',
  symbol: 'G_{t,\\text{field}}',
  unit: '1',
  digits: 3,
  about:
    'Time for one field with the unshaped beam over that with the shaped one, each at its own best, on the larger machine with the same number of spots; moves between fields, which are as long with either beam, are left out.',
  from: { shaped: scaledShaped, unshaped: scaledUnshaped },
  compute: ({ shaped, unshaped }) => unshaped.fieldTime / shaped.fieldTime,
  formula: 't_{\\text{field},\\text{L},\\text{u}}^*/t_{\\text{field},\\text{L}}^*',
  source: 'search',
});

export const todayBestRate = derived({
  id: 'scaleUp.todayBestRate',
  name: 'area per hour of today’s machine with the plate at its best',
  symbol: '\\dot A_\\text{today}^*',
  unit: 'm^2/s',
  display: 'm^2/h',
  digits: 3,
  about:
    'Area that today’s laser and scanner would finish per hour with one spot and the setting that is best for them with the plate, moves between fields and overlap counted as on the larger machine; heat is not counted.',
  from: { best: bestShaped, work },
  compute: ({ best, work: { recipe, stitching } }) =>
    netArea(recipe.hatch, stitching) / (best.fieldTime + stitching.moveTime),
  formula: '\\frac{(F-o)(G-o)}{t_\\text{field}^*+t_\\text{move}}',
  source: 'search',
});
