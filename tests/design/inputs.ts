import fc from 'fast-check';
import { designGraph } from '../../lib/design/design.ts';
import type { FileInput, InputQuantity, ListInput, ListItem, NumberInput } from '../../lib/graph/quantity.ts';
import { isInput } from '../../lib/graph/quantity.ts';
import {
  allowedCaustics,
  caustics,
  focusCaustics,
  images,
  ladderTables,
  markPictures,
  rippleTables,
  spots,
  spotTables,
} from './files.ts';
import { micrographs } from './micrographFiles.ts';
import { sections } from './sectionFiles.ts';

/** Values of all inputs of the design, SI. */
export type Inputs = Record<string, unknown>;

const inputs = designGraph.order.filter(isInput);

/** Log-uniform over the range where it lies above 0, else uniform; half of the draws lean to the ends. */
function overRange(low: number, high: number): fc.Arbitrary<number> {
  const [from, to] = low > 0 ? [Math.log(low), Math.log(high)] : [low, high];
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  return fc
    .oneof(share, fc.noBias(share))
    .map((part) => from + (to - from) * part)
    .map((x) => Math.min(high, Math.max(low, low > 0 ? Math.exp(x) : x)));
}

function wholeRange(input: NumberInput): fc.Arbitrary<number> {
  const { min, max, above } = input.range;
  return overRange(above ? min + 1e-6 * (max - min) : min, max);
}

function usualSpan(input: NumberInput): fc.Arbitrary<number> {
  return overRange(...(input.typical ?? [input.initial, input.initial * 1.1]));
}

const files: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  'laser.beamImage': fc.constantFrom(...images),
  'laser.causticTable': allowedCaustics,
  'spot.measuredProfile': fc.constantFrom(...spots),
  'focus.measuredCaustic': focusCaustics,
  'threshold.spotTable': fc.constantFrom(...spotTables),
  'markPicture.picture': fc.constantFrom(...markPictures),
  'micrograph.picture': fc.constantFrom(...micrographs),
  'otherMicrograph.picture': fc.constantFrom(...micrographs),
  'ladder.table': fc.constantFrom(...ladderTables),
  'ripples.series': fc.constantFrom(...rippleTables),
  'groove.sectionFile': fc.constantFrom(...sections),
};

/** A file of any quality; in one design of five none. */
function fileFor(input: FileInput): fc.Arbitrary<unknown> {
  return fc.option(files[input.id]!, { freq: 5 });
}

/** A file of any quality, with the inputs that belong to it. */
function itemOf({ of }: ListInput): fc.Arbitrary<ListItem> {
  const one = (input: ListInput['of'][number]): fc.Arbitrary<unknown> => {
    if (input.kind === 'number') return usualSpan(input);
    return input.kind === 'choice' ? fc.constantFrom(...Object.keys(input.options)) : files[input.id]!;
  };
  return fc.record(Object.fromEntries(of.map((input) => [input.id, one(input)])));
}

function designs(numbers: (input: NumberInput) => fc.Arbitrary<number>): fc.Arbitrary<Inputs> {
  const one = (input: InputQuantity): fc.Arbitrary<unknown> => {
    if (input.kind === 'number') return numbers(input);
    // Mostly short: every item is computed in a plane of its own.
    if (input.kind === 'list') return fc.array(itemOf(input), { maxLength: 2 });
    return input.kind === 'choice' ? fc.constantFrom(...Object.keys(input.options)) : fileFor(input);
  };
  return fc.record(Object.fromEntries(inputs.map((input) => [input.id, one(input)])));
}

/** Designs over everything that the inputs allow, with and without files. */
export const allowedDesigns = designs(wholeRange);

/** Nothing measured: files would cost time and change nothing. */
const typedBeam = {
  'laser.beamSource': 'typed',
  'laser.ratioSource': 'typed',
  'laser.beamImage': null,
  'laser.causticTable': null,
  'spot.measuredProfile': null,
  'spot.otherProfiles': [],
  'focus.measuredCaustic': null,
  'threshold.spotTable': null,
  'ripples.series': null,
  'threshold.leftOut': [],
  'markPicture.picture': null,
  'micrograph.picture': null,
  'otherMicrograph.picture': null,
  'ladder.table': null,
  'groove.sectionFile': null,
};

/** Rayleigh length behind an expander given by its magnification. */
function rayleighLengthOf(design: Inputs): number {
  const number = (id: string) => design[id] as number;
  const beam = number('laser.beamDiameter') * number('expander.magnification');
  return (number('laser.wavelength') * number('lens.focalLength') ** 2) / (Math.PI * (beam / 2) ** 2);
}

/** Designs over everything allowed, as far as the step lies inside the stop and the workpiece near the focus. */
export const allowedSpots: fc.Arbitrary<Inputs> = fc
  .tuple(allowedDesigns, overRange(1.001, 100), overRange(-12, 12))
  .map(([design, stopPerStep, defocus]) => {
    const z = defocus * rayleighLengthOf(design);
    const aperture = stopPerStep * (design['plate.stepDiameter'] as number);
    return {
      ...design,
      ...typedBeam,
      'expander.kind': 'magnification',
      'plate.apertureDiameter': Math.min(0.2, aperture),
      'workpiece.z': Math.min(0.1, Math.max(-0.1, z)),
    };
  });

/**
 * Designs with every input in its usual span and a spot: κ from 0.5 to 2, the stop 1.1 to 3 steps wide, and the
 * workpiece within 1.5 Rayleigh lengths of the focus for a flat wavefront.
 */
export const usualDesigns: fc.Arbitrary<Inputs> = fc
  .tuple(designs(usualSpan), overRange(0.5, 2), overRange(1.1, 3), overRange(-1.5, 1.5))
  .map(([design, stepRatio, stopPerStep, defocus]) => {
    const number = (id: string) => design[id] as number;
    const beam = number('laser.beamDiameter') * number('expander.magnification');
    return {
      ...design,
      ...typedBeam,
      'expander.kind': 'magnification',
      'plate.stepDiameter': stepRatio * beam,
      'plate.apertureDiameter': stopPerStep * stepRatio * beam,
      'workpiece.z': defocus * rayleighLengthOf(design),
    };
  });

/** Usual designs that take what they can from a good image and a good caustic, behind either kind of expander. */
export const measuredDesigns: fc.Arbitrary<Inputs> = usualDesigns.chain((design) => {
  const table = caustics(design['laser.wavelength'] as number, [1, 2]);
  const waist = fc.constantFrom('typed', 'measured');
  const source = fc.constantFrom('measured', 'caustic', 'typed');
  const expander = fc.constantFrom('magnification', 'lenses');
  const spot = fc.constantFrom(...spots);
  return fc
    .tuple(table, waist, source, expander, spot, focusCaustics)
    .map(([table, waistSource, beamSource, kind, spot, focus]) => ({
      ...design,
      'laser.beamImage': images[0],
      'laser.beamImagePitch': 50e-6,
      'laser.causticTable': table,
      'spot.measuredProfile': spot,
      'focus.measuredCaustic': focus,
      'laser.ratioSource': 'measured',
      'laser.beamSource': beamSource,
      'expander.waistSource': waistSource,
      'expander.kind': kind,
    }));
});
