import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import type { CutGroove } from './grooveCut.ts';
import { topIs, wallIs } from './grooveWords.ts';
import { incidence } from './rippleInputs.ts';

/** What the model leaves out here; undefined where it holds. */
function notesOn({ leftRange, shape }: CutGroove, incidence: number): string | undefined {
  const said = [
    ...(incidence === 0 ? [] : ['The beam is taken to fall straight onto the surface.']),
    ...(leftRange === 0
      ? []
      : [
          `From pass ${leftRange} on it is further than twelve Rayleigh lengths from the focus, where spots are not computed: nothing more is cut there.`,
        ]),
    ...(shape.depth > shape.topWidth
      ? [
          'It is deeper than wide: light sent on by the walls, and melt and debris that do not come out, then decide; the model knows neither.',
        ]
      : []),
  ];
  return said.join(' ') || undefined;
}

/** One of the beams that cut beside each other. */
export interface GrooveBeam {
  /** Before the id, with its dot. */
  readonly before: string;
  /** Behind names: " in the first plane". */
  readonly words: string;
  /** In symbols. */
  readonly mark: string;
  readonly cut: Derived<CutGroove>;
}

/** The numbers of one groove. */
export function partsOf({ before, words, mark, cut }: GrooveBeam) {
  const part = (
    id: string,
    name: string,
    symbol: string,
    about: string,
    formula: string,
    read: (groove: CutGroove) => number,
    kind: 'length' | 'angle' | 'number' = 'length',
  ) =>
    derived({
      id: `${before}${id}`,
      name: `${name}${words}`,
      symbol: `${symbol}${mark}`,
      unit: { length: 'm', angle: 'rad', number: '1' }[kind],
      ...(kind === 'length' ? { display: 'um' } : kind === 'angle' ? { display: 'deg' } : {}),
      digits: 3,
      about,
      from: { cut, incidence },
      compute: ({ cut }) => read(cut),
      valid: ({ cut, incidence }) => notesOn(cut, incidence),
      formula,
      source: 'definition',
    });
  return {
    depth: part(
      'depth',
      'depth of the groove',
      'd',
      'Greatest depth of the groove below the fresh surface.',
      '\\max_y d(y)',
      ({ shape }) => shape.depth,
    ),
    meanDepth: part(
      'meanDepth',
      'mean depth of the groove',
      '\\bar d',
      'Area of the cross-section over the width at the top.',
      '\\frac{1}{b_\\text{top}}\\int d\\,dy',
      ({ shape }) => shape.meanDepth,
    ),
    topWidth: part(
      'topWidth',
      'width at the top',
      'b_\\text{top}',
      `Width at the surface, ${topIs}.`,
      'd^{2/3}(y^2)\\to 0',
      ({ shape }) => shape.topWidth,
    ),
    bottomWidth: part(
      'bottomWidth',
      'width at the bottom',
      'b_\\text{bottom}',
      'Width over which the groove is deeper than nine tenths of its greatest depth, from outermost wall to outermost wall.',
      'd(y)\\ge 0.9\\,d',
      ({ shape }) => shape.bottomWidth,
    ),
    wallAngle: part(
      'wallAngle',
      'angle of the walls',
      '\\beta',
      `Angle of the walls ${wallIs}.`,
      '\\arctan\\frac{0.6\\,d}{y_{0.2}-y_{0.8}}',
      ({ shape }) => shape.wallAngle,
      'angle',
    ),
    centreToMeanDepth: part(
      'centreToMeanDepth',
      'centre against mean depth',
      'd_0/\\bar d',
      'Depth in the middle of the line over the mean depth: 1 for a level floor with upright walls, 1.70 for a shallow groove of a Gaussian, 2 for a V.',
      'd(0)/\\bar d',
      ({ shape }) => shape.centreToMeanDepth,
      'number',
    ),
    lastPassDepth: part(
      'lastPassDepth',
      'depth of the last pass',
      '\\Delta d',
      'Greatest depth that the last pass removed anywhere.',
      '\\max_y \\Delta d(y)',
      ({ lastPass }) => lastPass.reduce((most, one) => Math.max(most, one), 0),
    ),
    stoppedPart: part(
      'stoppedPart',
      'part of the width that stands still',
      's_\\text{still}',
      'Part of the width of the groove in which the walls are so steep that nothing is removed, though the same fluence would cut a level floor there.',
      'F\\cos\\alpha\\le F_{\\text{th},N}',
      ({ stoppedPart }) => stoppedPart,
      'number',
    ),
    besideDepth: part(
      'besideDepth',
      'depth beside the groove',
      'd_\\text{beside}',
      'Greatest depth beyond the top edges, cut by rings of the spot and at the foot of the walls.',
      '\\max_{|y|>b_\\text{top}/2} d(y)',
      ({ shape }) => shape.besideDepth,
    ),
  };
}
