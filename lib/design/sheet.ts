import { derived } from '../graph/define.ts';
import type { Derived, Report } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import type { Light } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { Problem } from '../problem.ts';
import type { PulseTrain } from '../process/chordRemoval.ts';
import { countingLevel } from '../process/cuttingLaw.ts';
import { type CutSheet, cutSheet, mostSheetPasses } from '../process/sheet.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import { plainUnit } from './groove.ts';
import { nothingCut } from './grooveCut.ts';
import { passesAfter, sheetThickness } from './grooveInputs.ts';
import { pulseTrain } from './grooveLaw.ts';
import { focusOf, grooveLight, plainOf } from './grooveLight.ts';
import { scanSpeed } from './scanInputs.ts';

const units = {
  passes: '1',
  allPasses: '1',
  y: 'm',
  opening: 'm',
  depth: 'm',
  entryKerf: 'm',
  exitKerf: 'm',
  besideDepth: 'm',
  taper: 'rad',
} as const;

function sheetAt(
  light: Light,
  z: number,
  train: PulseTrain,
  thickness: number,
  after: number,
  report?: Report,
): CutSheet {
  const cutting = grooveLight(light, z, countingLevel(train.law) / train.unit);
  const cut = cutSheet(cutting, train, thickness, after, report);
  if (!('reached' in cut)) return cut;
  if (cut.reached === 0) throw nothingCut(train.unit * spotAt(light, z).peak, train.law.incubation.first);
  const show = (length: number) => formatReadable(length, 'm', 'auto:m', 3);
  throw new Problem(
    'absent',
    `The sheet of ${show(thickness)} is not through in ${mostSheetPasses} passes: after ${cut.passes} the groove is ${show(cut.reached)} deep, and a pass cuts no more than ${show(cut.lastPass)}. Raise the pulse energy, widen the spot, or take a thinner sheet.`,
    { input: 'sheet.thickness', value: show(thickness), allowed: `below ${show(cut.reached)}` },
  );
}

const about =
  'Cross-section of the sheet when the line first opens on the far side and after the further passes, by the model of the groove; behind the far face there is nothing to cut.';
const inWords = ({ passes, entryKerf, exitKerf }: CutSheet) =>
  `through after ${passes} passes, ${formatReadable(entryKerf, 'm', 'um', 3)} wide in front and ${formatReadable(exitKerf, 'm', 'um', 3)} behind`;
const shared = { thickness: sheetThickness, after: passesAfter, train: pulseTrain, light };

export const sheetCut: Derived<CutSheet> = derived({
  id: 'sheet.cut',
  name: 'cut through the sheet',
  symbol: 'd_\\text{s}(y)',
  unit: units,
  about: `${about} With the plate, the near face where the workpiece lies.`,
  from: { ...shared, z: workpieceZ, unit: unshapedPeak },
  compute: ({ light, z, unit, train, thickness, after }, report) =>
    sheetAt(light, z, { ...train, unit }, thickness, after, report),
  shownAs: inWords,
  formula: 'd(y)\\ge t_\\text{s}',
  source: 'nolte1997',
  heavy: 'picture',
});

export const plainSheetCut: Derived<CutSheet> = derived({
  id: 'unshaped.sheet.cut',
  name: 'cut through the sheet without the plate',
  symbol: 'd_\\text{s,u}(y)',
  unit: units,
  about: `${about} With the plate taken out and the near face in the focus, at the energy of the groove without the plate.`,
  from: { ...shared, unit: plainUnit },
  compute: ({ light, unit, train, thickness, after }, report) =>
    sheetAt(plainOf(light), focusOf(light), { ...train, unit }, thickness, after, report),
  shownAs: inWords,
  formula: 'd(y)\\ge t_\\text{s}',
  source: 'nolte1997',
  heavy: 'picture',
});

/** Deeper than so many widths the model tells little. */
const deepFor = 2;

function noteOn({ entryKerf }: CutSheet, thickness: number): string | undefined {
  return thickness > deepFor * entryKerf
    ? 'The sheet is more than twice as thick as the cut is wide: light sent on by the walls and melt that does not come out then decide, and the model knows neither.'
    : undefined;
}

function partsOf(before: '' | 'unshaped.', words: string, mark: string, cut: Derived<CutSheet>) {
  const from = { cut, thickness: sheetThickness };
  const part = (
    id: string,
    name: string,
    symbol: string,
    unit: 'm' | 'rad' | '1',
    text: string,
    formula: string,
    read: (sheet: CutSheet) => number,
  ) =>
    derived({
      id: `${before}sheet.${id}`,
      name: `${name}${words}`,
      symbol: `${symbol}${mark}`,
      unit,
      ...(unit === 'm' ? { display: 'um' } : unit === 'rad' ? { display: 'deg' } : {}),
      digits: 3,
      about: text,
      from,
      compute: ({ cut }) => read(cut),
      valid: ({ cut, thickness }) => noteOn(cut, thickness),
      formula,
      source: 'definition',
    });
  const timePerLength = derived({
    id: `${before}sheet.timePerLength`,
    name: `time to cut a length${words}`,
    symbol: `t/L${mark}`,
    unit: 's/m',
    display: 's/mm',
    digits: 3,
    about:
      'All passes over the scan speed, for each millimetre of the line; turns between passes are not counted.',
    from: { cut, v: scanSpeed },
    compute: ({ cut, v }) => cut.allPasses / v,
    formula: '(n_\\text{through}+n_\\text{after})/v',
    source: 'definition',
  });
  return {
    passes: part(
      'passes',
      'passes until the sheet is through',
      'n_\\text{through}',
      '1',
      'Passes over the line after which it first opens on the far side.',
      'd\\ge t_\\text{s}',
      (sheet) => sheet.passes,
    ),
    entryKerf: part(
      'entryKerf',
      'kerf in the near face',
      'b_\\text{in}',
      'm',
      'Width of the cut in the face that meets the beam first, after all passes, read like that of a groove: rings beside it that are less than half as deep do not count.',
      'b_\\text{top}',
      (sheet) => sheet.entryKerf,
    ),
    exitKerf: part(
      'exitKerf',
      'kerf in the far face',
      'b_\\text{out}',
      'm',
      'Width of the cut in the far face after all passes.',
      'd(y)\\ge t_\\text{s}',
      (sheet) => sheet.exitKerf,
    ),
    besideDepth: part(
      'besideDepth',
      'depth beside the cut',
      'd_\\text{beside,s}',
      'm',
      'Greatest depth cut into the near face beside the kerf after all passes, by rings of the spot and at the foot of the walls.',
      '\\max_{|y|>b_\\text{in}/2} d(y)',
      (sheet) => sheet.besideDepth,
    ),
    taper: part(
      'taper',
      'taper of the cut',
      '\\tau',
      'rad',
      'Angle of the sides against the upright after all passes, mean over the thickness: half the difference of the kerfs over the thickness; 0 for straight sides.',
      '\\arctan\\frac{b_\\text{in}-b_\\text{out}}{2t_\\text{s}}',
      (sheet) => sheet.taper,
    ),
    timePerLength,
  };
}

export const sheet = partsOf('', '', '', sheetCut);
export const plainSheet = partsOf('unshaped.', ' without the plate', '^{(\\text{u})}', plainSheetCut);
