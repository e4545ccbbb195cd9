import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { spotOfProfile } from '../optics/centredSpot.ts';
import type { Peak, RadialProfile } from '../optics/radialProfile.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { Problem } from '../problem.ts';
import { markOf, meanAbove } from '../process/marks.ts';
import { light, workpieceZ } from './focus.ts';
import { thresholdAtN } from './threshold.ts';

/** One of the two beams: shaped, or with the plate taken out. */
export interface BeamParts {
  /** Before the id: '' or 'unshaped.'. */
  readonly before: '' | 'unshaped.';
  readonly profile: Derived<RadialProfile>;
  readonly peak: Derived<Peak>;
  /** Fluence of relative irradiance 1, J/m². */
  readonly unit: Derived<number>;
  /** Behind names: '' or ' without the step'. */
  readonly words: string;
  /** In symbols: '' or '\\text{u},'. */
  readonly mark: string;
}

/** The spot on the workpiece as process code asks it, and the threshold in its measure. */
export function askedOf({ before, profile, peak, unit, words, mark }: BeamParts) {
  const asked = derived({
    id: `${before}spot.asked`,
    name: `light on the workpiece${words}`,
    symbol: `\\text{${mark === '' ? 'spot' : 'plain spot'}}`,
    unit: 'none',
    about: 'The spot on the workpiece for whoever asks for irradiance at a place or area above a level.',
    from: { light, z: workpieceZ, profile, peak },
    compute: ({ light, z, profile, peak }): Spot =>
      spotOfProfile(before === '' ? light : withPhaseScaled(light, 0), z, profile, peak),
    shownAs: ({ effectiveArea }) => `effective area ${formatReadable(effectiveArea, 'm^2', 'um^2')}`,
    formula: 'I(x, y)',
    source: 'definition',
  });
  const level = derived({
    id: `${before}spot.thresholdLevel`,
    name: `threshold in relative irradiance${words}`,
    symbol: `I_{${mark}\\text{th}}`,
    unit: '1',
    about:
      'Threshold for the pulses on a place over the peak fluence of the unshaped, unclipped, M² = 1 beam in its focus.',
    from: { threshold: thresholdAtN, unit },
    compute: ({ threshold, unit }) => threshold / unit,
    formula: `F_{\\text{th},N}/${mark === '' ? 'F_0' : 'F_\\text{u,0}'}`,
    source: 'definition',
  });
  return { asked, level };
}

/** Effective area, mean fluence and mark of one of the two beams. */
export function markQuantities(parts: BeamParts, asked: Derived<Spot>, level: Derived<number>) {
  const { before, words, mark, unit } = parts;
  const effectiveArea = derived({
    id: `${before}spot.effectiveArea`,
    name: `effective area${words}`,
    symbol: `A_{${mark}\\text{eff}}`,
    unit: 'm^2',
    display: 'auto:m^2',
    about:
      'Energy that passes the stop over peak fluence, per pulse: the area that would take it at the peak throughout; πw²/2 for a Gaussian.',
    from: { spot: asked },
    compute: ({ spot }) => spot.effectiveArea,
    formula: `\\frac{E'\\,T}{F_{${mark}\\text{peak}}}`,
    source: 'garcia2021',
  });
  const marked = derived({
    id: `${before}spot.mark`,
    name: `predicted mark${words}`,
    symbol: `\\text{mark}_{${mark}N}`,
    unit: { area: 'm^2', outerDiameter: 'm', innerDiameter: 'm', cut: 'none' },
    about:
      'Area where the fluence per pulse is above the threshold for the pulses on a place, with the discs of equal area for its outer contour and its unmarked centre; all 0 where nothing is marked.',
    from: { spot: asked, level },
    compute: ({ spot, level }) => markOf(spot, level),
    formula: 'A\\{F>F_{\\text{th},N}\\}',
    source: 'liu1982',
  });
  const meanFluence = derived({
    id: `${before}spot.meanFluence`,
    name: `mean fluence over the mark${words}`,
    symbol: `\\bar F_{${mark}N}`,
    unit: 'J/m^2',
    display: 'J/cm^2',
    about: 'Mean over the marked area of the fluence of one pulse, incident; not the peak.',
    from: { spot: asked, level, unit, threshold: thresholdAtN },
    compute: ({ spot, level, unit, threshold }) => {
      const mean = meanAbove(spot, level);
      if (mean === undefined) throw nothingMarked(spot.peak * unit, threshold);
      return mean * unit;
    },
    formula: '\\frac{1}{A}\\int_{F>F_{\\text{th},N}}F\\,dA',
    source: 'definition',
  });
  const part = (key: 'area' | 'outerDiameter' | 'innerDiameter', text: PartText) =>
    derived({
      ...text,
      id: `${before}spot.${text.id}`,
      name: text.name + words,
      symbol: text.symbol.replace('*', mark),
      from: { marked },
      compute: ({ marked }) => marked[key],
      valid: ({ marked }) => (marked.cut ? cutNote : undefined),
      formula: `\\text{mark}_{${mark}N}`,
      source: 'liu1982',
    });
  return {
    effectiveArea,
    marked,
    meanFluence,
    markArea: part('area', areaText),
    markDiameter: part('outerDiameter', diameterText),
    markInnerDiameter: part('innerDiameter', innerText),
  };
}

const cutNote =
  'The threshold lies so far below the peak that faint rings beyond the radii computed are marked too: the mark is larger than this.';

interface PartText {
  readonly id: string;
  readonly name: string;
  readonly symbol: string;
  readonly unit: string;
  readonly display: string;
  readonly about: string;
}

const areaText: PartText = {
  id: 'markArea',
  name: 'area marked',
  symbol: 'A_{*N}',
  unit: 'm^2',
  display: 'auto:m^2',
  about: 'Area where the fluence of each pulse is above the threshold for the pulses on a place; 0 for none.',
};
const diameterText: PartText = {
  id: 'markDiameter',
  name: 'diameter of the mark',
  symbol: 'D_{*N}',
  unit: 'm',
  display: 'um',
  about:
    'Diameter of a disc with the area inside the outer contour of the mark, an unmarked centre included; 0 for none.',
};
const innerText: PartText = {
  id: 'markInnerDiameter',
  name: 'diameter of the unmarked centre',
  symbol: 'D_{*N,\\text{in}}',
  unit: 'm',
  display: 'um',
  about:
    'Diameter of a disc with the area of the centre that stays unmarked because the dip lies below threshold; 0 where the centre is marked.',
};

function nothingMarked(peak: number, threshold: number): Problem {
  const show = (fluence: number) => formatReadable(fluence, 'J/m^2', 'J/cm^2', 3);
  return new Problem(
    'absent',
    `Nothing is marked: the peak fluence of ${show(peak)} is not above the threshold of ${show(threshold)}. Raise the pulse energy or move the workpiece.`,
    { input: 'laser.pulseEnergy', value: show(peak), allowed: `above ${show(threshold)}` },
  );
}
