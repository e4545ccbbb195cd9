import { derived, number } from '../graph/define.ts';
import { niceEnd } from '../numerics/niceEnd.ts';
import { familyMap } from '../optics/familyMap.ts';
import { spaced } from '../optics/focusMaps.ts';
import { focusRadius as focusRadiusOf } from '../optics/light.ts';
import { spreadOf } from './familyMap.ts';
import { light } from './focus.ts';

/** Planes side by side: four before the focal plane of the lens, itself, four behind. */
const stripPlanes = 9;
const stripRadii = 61;
/** Each is drawn out to this many 1/e² radii of the unshaped focus. */
const stripFocusRadii = 3.5;

export const stripStep = number({
  id: 'focus.stripStep',
  name: 'distance between planes side by side',
  symbol: '\\Delta z',
  unit: 'm',
  display: 'mm',
  about: 'How far apart along z the profiles lie that are drawn side by side.',
  initial: 5e-5,
  range: { min: 0, max: 1e-2, above: true },
  typical: [1e-5, 3e-4],
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
    'Irradiance against radius in nine planes about the focal plane of the lens, M² included, relative to the axis of the unshaped, unclipped, M² = 1 beam in its focus.',
  from: { light, step: stripStep },
  compute: ({ light, step }): FamilyStrip => {
    const half = (stripPlanes - 1) / 2;
    const planes = Float64Array.from({ length: stripPlanes }, (_, i) => (i - half) * step);
    const reach = niceEnd(stripFocusRadii * focusRadiusOf(light) * spreadOf(light));
    const radii = spaced(0, reach, stripRadii);
    return { planes, radii, values: familyMap(light, planes, radii) };
  },
  shownAs: ({ planes }) => `${planes.length} profiles`,
  formula: '(f/B)^2\\,|U(\\varrho,\\zeta_i)|^2 \\ast \\text{blur}(M^2)',
  source: 'collins1970',
  heavy: 'picture',
});
