import { type AxisCurves, axisCurves } from '../lib/design/familyMap.ts';
import { light } from '../lib/design/focus.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { type Light, planeOfDefocus } from '../lib/optics/light.ts';
import { question } from './document.ts';
import { prose, says } from './prose.ts';

/** Heights nearer than this part count as alike. */
const alike = 0.02;

/** Where the axis is brightest behind the plate: in the focus of the unshaped beam, on both sides of it alike, or on one side. */
export function brightest(
  { shaped, extent }: AxisCurves,
  light: Light,
): { place: 0 | 1 | 2; fromFocus: number; other: number } {
  const step = (extent.high - extent.low) / (shaped.length - 1);
  const at = shaped.indexOf(shaped.reduce((a, b) => Math.max(a, b)));
  const focus = planeOfDefocus(light, 0);
  const fromFocus = extent.low + at * step - focus;
  // The highest one on the other side of the focus.
  const sides = shaped.filter((_, i) => (extent.low + i * step - focus) * fromFocus < 0);
  const other = sides.reduce((a, b) => Math.max(a, b), 0) / shaped[at]!;
  if (Math.abs(fromFocus) <= 1.5 * step) return { place: 0, fromFocus: 0, other: 1 };
  return { place: other >= 1 - alike ? 1 : 2, fromFocus, other };
}

/** A guess before looking at the curve. */
export const brightestPlace = question({
  id: 'guess-axis',
  question: prose`**Guess before you look.** Without the plate the axis is brightest in the focus. Where is it brightest with the plate?`,
  options: ['In the focus still', 'Before and behind the focus alike', 'On one side of the focus'],
  from: { curves: axisCurves, light },
  answer: ({ curves, light }) => brightest(curves, light).place,
  explanation: prose`${says({ curves: axisCurves, light }, ({ curves, light }) => {
    const { place, fromFocus, other } = brightest(curves, light);
    const where = formatReadable(Math.abs(fromFocus), 'm', 'mm', 2);
    const side = fromFocus > 0 ? 'behind' : 'before';
    if (place === 0)
      return 'The part of the beam inside the step and the part outside it still add up best where both are in step, in the focus.';
    if (place === 1)
      return `Both sides have a bright place about ${where} from the focus. There the two parts of the beam, of opposite sign in the focus, have slipped in phase and add up; a step of half a wave makes both sides alike.`;
    return `It is brightest ${where} ${side} the focus; the best place on the other side has ${formatReadable(other, '1', '%', 2)} of that. A phase other than half a wave, or a plate away from one focal length before the lens, tells the two sides apart.`;
  })}`,
});
