import { derived, number } from '../graph/define.ts';
import { niceEnd } from '../numerics/niceEnd.ts';
import { familyMap } from '../optics/familyMap.ts';
import { spaced } from '../optics/focusMaps.ts';
import { focusRadius as focusRadiusOf, planeOfDefocus } from '../optics/light.ts';
import { Problem } from '../problem.ts';
import { spreadOf } from './familyMap.ts';
import { light } from './focus.ts';

/** Planes side by side: four before the focus of the unshaped beam, itself, four behind. */
const stripPlanes = 9;
const stripRadii = 61;
/** Each is drawn out to this many 1/e² radii of the unshaped focus. */
const stripFocusRadii = 3.5;

export const stripStep = number({
  id: 'focus.stripStep',
  name: 'distance between planes side by side',
  symbol: '\\Delta\\zeta',
  unit: '1',
  about:
    'How far apart along z the profiles lie that are drawn side by side, in Rayleigh lengths of the unshaped beam (M² = 1).',
  initial: 0.4,
  range: { min: 0.01, max: 3 },
  typical: [0.05, 1.5],
});

/** Relative irradiance in a few planes: a row a plane, a column a radius. */
export interface FamilyStrip {
  readonly planes: Float64Array;
  readonly radii: Float64Array;
  readonly values: Float64Array;
}

export const strip = derived({
  id: 'focus.strip',
  name: 'profiles side by side',
  symbol: 'I(\\rho,z_i)',
  unit: 'none',
  about:
    'Irradiance against radius in nine planes about the focus of the unshaped beam, M² included, relative to the axis of the unshaped, unclipped, M² = 1 beam in its focus.',
  from: { light, step: stripStep },
  compute: ({ light, step }): FamilyStrip => {
    const half = (stripPlanes - 1) / 2;
    const planes = Float64Array.from({ length: stripPlanes }, (_, i) =>
      planeOfDefocus(light, (i - half) * step),
    );
    if (planes.some((z, i) => i > 0 && !(z > planes[i - 1]!))) throw beyondLight();
    const reach = niceEnd(stripFocusRadii * focusRadiusOf(light) * spreadOf(light));
    const radii = spaced(0, reach, stripRadii);
    return { planes, radii, values: familyMap(light, planes, radii) };
  },
  shownAs: ({ planes }) => `${planes.length} profiles`,
  formula: '(f/B)^2\\,|U(\\varrho,\\zeta_i)|^2 \\ast \\text{blur}(M^2)',
  source: 'collins1970',
  heavy: 'picture',
});

function beyondLight(): Problem {
  return new Problem(
    'outside',
    'With this wavefront and this distance from plate to lens the light does not come to all of these planes; take them nearer together.',
    { input: 'focus.stripStep' },
  );
}
