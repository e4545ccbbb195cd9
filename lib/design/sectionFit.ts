import { derived, ifThere } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { Light } from '../optics/light.ts';
import { Problem } from '../problem.ts';
import type { PulseTrain } from '../process/chordRemoval.ts';
import { countingLevel } from '../process/cuttingLaw.ts';
import { cutGroove } from '../process/groove.ts';
import { depthAt, type GrooveShape, shapeOf } from '../process/grooveShape.ts';
import { fitSection, type SectionFit } from '../process/sectionFit.ts';
import type { SectionModel } from '../process/sectionModel.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import { pulseTrain } from './grooveLaw.ts';
import { grooveLight } from './grooveLight.ts';
import { measuredSection } from './measuredSection.ts';
import { namingInput } from './namingInput.ts';
import { sectionFile, sectionPasses } from './sectionFile.ts';

/** The fluence down to which light is sampled falls in such steps, so that most thresholds tried share one light. */
const levelStep = 4;

/** The groove of `passes` passes from a fresh surface at z, for any depth per pulse and threshold; the rest of the law stays. */
export function grooveModel(light: Light, z: number, train: PulseTrain, passes: number): SectionModel {
  return (depth, first) => {
    const law = { ...train.law, depth, incubation: { ...train.law.incubation, first } };
    const level = countingLevel(law) / train.unit;
    const sampled = levelStep ** Math.floor(Math.log(level) / Math.log(levelStep));
    return cutGroove(grooveLight(light, z, sampled), { ...train, law, passes: Math.round(passes) });
  };
}

const made = { light, z: workpieceZ, unit: unshapedPeak, train: pulseTrain, passes: sectionPasses };

export const todaysSection = derived({
  id: 'groove.sectionToday',
  name: 'the measured groove as computed today',
  symbol: 'd_\\text{today}(y)',
  unit: { y: 'm', depth: 'm', deviation: 'm' },
  about:
    'Cross-section that the model cuts in the plane of the workpiece with the passes of the measured groove and the depth per pulse and threshold as they stand; and the root mean square of measured less computed depth over all measured places.',
  from: { section: measuredSection, ...made },
  compute: ({ section, light, z, unit, train, passes }) => {
    const { depth, incubation } = train.law;
    const cut = grooveModel(light, z, { ...train, unit }, passes)(depth, incubation.first);
    const apart = section.depth.map((measured, i) => measured - depthAt(cut, section.position[i]!));
    const deviation = Math.sqrt(apart.reduce((sum, d) => sum + d * d, 0) / apart.length);
    return { y: cut.y, depth: cut.depth, deviation };
  },
  shownAs: ({ y }) => `${y.length} places`,
  formula: '\\sum_\\text{passes}\\frac1p\\int d(F\\cos\\alpha, N)\\,dx',
  source: 'nolte1997',
  heavy: 'picture',
});

export const todaysShape = derived({
  id: 'groove.sectionTodayShape',
  name: 'the measured groove as computed today, in numbers',
  symbol: '\\text{shape}_\\text{today}',
  unit: 'none',
  about:
    'Depth, widths and wall angle of the groove that the model cuts today with the passes of the measured one.',
  from: { section: todaysSection },
  compute: ({ section }): GrooveShape => shapeOrProblem(section),
  shownAs: (shape) => shapeText(shape),
  formula: 'd_\\text{today}(y)',
  source: 'definition',
});

function shapeOrProblem(section: { readonly y: Float64Array; readonly depth: Float64Array }): GrooveShape {
  const shape = shapeOf(section);
  if (shape !== undefined) return shape;
  throw new Problem(
    'absent',
    'With the threshold of today the model cuts nothing where the groove was measured. Raise the pulse energy, choose the plane it was made in, or fit the threshold.',
    { input: 'laser.pulseEnergy' },
  );
}

function shapeText({ depth, topWidth }: GrooveShape): string {
  return `${formatReadable(depth, 'm', 'um', 3)} deep, ${formatReadable(topWidth, 'm', 'um', 3)} wide`;
}

export const sectionFit = derived({
  id: 'groove.sectionFit',
  name: 'fit to the measured groove',
  symbol: '(\\delta, F_\\text{th})_\\text{m}',
  unit: 'none',
  about:
    'Depth per pulse and threshold of one pulse by which the model cuts the measured groove in the plane of the workpiece, with standard uncertainties from the scatter, their correlation, and what is left. Centre, level and tilt are fitted too; the incubation exponent, the floor and a second branch stay as they are.',
  from: { section: measuredSection, ...made },
  compute: ({ section, light, z, unit, train, passes }, report): SectionFit => {
    const start = { depthPerPulse: train.law.depth, threshold: train.law.incubation.first };
    const model = grooveModel(light, z, { ...train, unit }, passes);
    return namingInput(sectionFile.id, () => fitSection(section, model, start, report));
  },
  shownAs: ({ depthPerPulse, threshold }) =>
    `${formatReadable(depthPerPulse.value, 'm', 'nm', 3)}, ${formatReadable(threshold.value, 'J/m^2', 'J/cm^2', 3)}`,
  formula: '\\min_{\\delta,F_\\text{th}}\\sum(d_\\text{m}-d)^2',
  source: 'fit',
  heavy: 'search',
});

export const fittedShape = derived({
  id: 'groove.sectionFittedShape',
  name: 'the fitted groove in numbers',
  symbol: '\\text{shape}_\\text{fit}',
  unit: 'none',
  about:
    'Depth, widths and wall angle of the groove that the model cuts with the fitted depth per pulse and threshold.',
  from: { fit: sectionFit },
  compute: ({ fit }): GrooveShape => shapeOrProblem(fit.fitted),
  shownAs: (shape) => shapeText(shape),
  formula: 'd(y)',
  source: 'definition',
});

export const sectionFitThere = ifThere({
  of: sectionFit,
  id: 'groove.sectionFitThere',
  name: 'fit to the measured groove, where there is one',
  symbol: '(\\delta, F_\\text{th})_\\text{m}',
  unit: 'none',
  about:
    'The fit to the measured groove for what is drawn beside it; nothing while it is worked out or where it fails.',
  shownAs: (fit) => (fit === null ? 'none' : 'there'),
});
