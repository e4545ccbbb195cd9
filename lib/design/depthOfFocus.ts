import { derived, number } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { depthOfPlane, discOf, plateauDeviation } from '../optics/depthOfFocus.ts';
import { planeOfDefocus } from '../optics/light.ts';
import { furthestDefocus, radiusScale } from '../optics/roundSpot.ts';
import { Problem } from '../problem.ts';
import { shownDepth, shownPlaces } from './alongBeam.ts';
import { defocus, light, workpieceZ } from './focus.ts';
import { profile } from './spot.ts';

export const depthTolerance = number({
  id: 'focus.depthTolerance',
  name: 'tolerance of the depth of focus',
  symbol: '\\tau',
  unit: '1',
  display: '%',
  about:
    'How far the fluence may depart, either way, from its mean over the plateau, anywhere on the plateau, in a plane that still counts as in focus.',
  initial: 0.05,
  range: { min: 1e-3, max: 0.5 },
  typical: [0.02, 0.2],
});

export const planeDepth = derived({
  id: 'spot.depth',
  name: 'planes in focus with the workpiece',
  symbol: '\\text{depth}',
  unit: { deviation: '1', from: 'm', to: 'm', cut: 'none' },
  about:
    'Largest departure of the fluence from its mean over the plateau where the workpiece stands, and the planes z around it in which it stays within the tolerance of that mean. The plateau is the disc out to where the profile last crosses 95\u202f% of its peak; both ends are the workpiece itself where the tolerance is exceeded there already.',
  from: { light, z: workpieceZ, defocus, profile, tolerance: depthTolerance },
  compute: ({ light, z, defocus, profile, tolerance }) => {
    const disc = discOf(profile);
    if (disc === undefined) throw noEdge();
    const depth = depthOfPlane(light, defocus, disc / radiusScale(light, z), tolerance);
    const none = depth.from === depth.to;
    return {
      deviation: depth.deviation,
      from: none ? z : planeOfDefocus(light, depth.from),
      to: none ? z : planeOfDefocus(light, depth.to),
      cut: depth.cut,
    };
  },
  formula: '\\left|H(\\rho,z)/\\bar H-1\\right|\\le\\tau',
  source: 'definition',
});

/** Where a profile has no plateau to speak of, since it does not fall far enough. */
export function noEdge(): Problem {
  return new Problem(
    'outside',
    'The profile has no edge within the radii computed; move the workpiece nearer to the focus.',
    { input: 'workpiece.z' },
  );
}

export const unevenness = derived({
  id: 'spot.unevenness',
  name: 'unevenness of the plateau',
  symbol: 'u',
  unit: '1',
  display: '%',
  digits: 2,
  about:
    'Largest departure of the fluence from its mean over the plateau where the workpiece stands, the plateau being the disc out to where the profile last crosses 95\u202f% of its peak. A flat-top above the tolerance has no depth of focus.',
  from: { profile },
  compute: ({ profile }) => {
    const deviation = plateauDeviation(profile);
    if (deviation === undefined) throw noEdge();
    return deviation;
  },
  formula: 'u=\\max_{\\rho\\le\\rho_{95}}\\left|H(\\rho)/\\bar H-1\\right|',
  source: 'definition',
});

/** Says that the depth goes on beyond the planes computed. */
export const cutNote = ({ cut }: { readonly cut: boolean }) =>
  cut
    ? `The depth goes on beyond ${furthestDefocus} Rayleigh lengths from the focus, where profiles are no longer computed.`
    : undefined;

export const depthEnds = derived({
  id: 'spot.depthEnds',
  name: 'ends of the depth of focus',
  symbol: 'z_1, z_2',
  unit: { from: 'm', to: 'm' },
  about:
    'Nearest and furthest plane z in which the plateau, of a peaked spot the disc out to 95\u202f% of its peak, keeps its fluence within the tolerance.',
  from: { depth: planeDepth, tolerance: depthTolerance },
  compute: ({ depth: { deviation, from, to }, tolerance }) => {
    if (deviation <= tolerance) return { from, to };
    const show = (part: number) => formatReadable(part, '1', '%');
    throw new Problem(
      'absent',
      `Where the workpiece stands the fluence departs by ${show(deviation)} from its mean over the disc out to 95\u202f% of its peak, more than the tolerance of ${show(tolerance)}: there is no depth of focus. Move the workpiece to a flatter plane or allow a larger tolerance.`,
      { input: 'focus.depthTolerance', value: show(tolerance), allowed: `${show(deviation)} or more` },
    );
  },
  valid: ({ depth }) => cutNote(depth),
  shownAs: ({ from, to }) => shownPlaces([from, to]).join(' to '),
  formula: '\\left|H(\\rho,z_{1,2})/\\bar H-1\\right|=\\tau',
  source: 'definition',
});

export const depthOfFocus = derived({
  id: 'spot.depthOfFocus',
  name: 'depth of focus',
  symbol: '\\Delta z',
  unit: 'm',
  display: 'um',
  about:
    'Distance along z over which the plateau of the profile on the workpiece keeps its fluence within the tolerance of its mean, everywhere on the plateau.',
  from: { ends: depthEnds, depth: planeDepth },
  compute: ({ ends }) => ends.to - ends.from,
  enteredFor: () => ({ keys: ['ends'] }),
  valid: ({ depth }) => cutNote(depth),
  shownAs: (length) => shownDepth(length),
  formula: 'z_2-z_1',
  source: 'definition',
});
