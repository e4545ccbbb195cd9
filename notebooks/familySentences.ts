import { searchedRange } from '../lib/design/family.ts';
import { verdict } from '../lib/design/familyRule.ts';
import { usedBeamPropagationRatio } from '../lib/design/rawBeam.ts';
import { planeGoal, usablePlanes, zeroCurvatureKinds } from '../lib/design/usablePlanes.ts';
import type { ValueOf } from '../lib/graph/quantity.ts';
import { formatQuantity, formatReadable } from '../lib/graph/units.ts';
import type { ProfileKind } from '../lib/optics/profileMetrics.ts';
import { within } from './familyRuleSentences.ts';
import { uses } from './kindUses.ts';
import { phrase, says } from './prose.ts';
import { lengthText, listed } from './shortTexts.ts';

const millimetres = (length: number): string => formatReadable(length, 'm', 'mm', 4);
const percent = (part: number): string => formatQuantity(part, '1', '%', 2);

/** "a flat-top", "a peaked spot". */
const named = (kind: ProfileKind): string => (kind === 'peaked' ? 'a peaked spot' : `a ${kind}`);

/** The planes found, counted, with the range that was searched. */
export const usablePlanesSaid = says(
  { planes: usablePlanes, goal: planeGoal, verdict, range: searchedRange },
  ({ planes, goal, verdict, range }) => {
    const where = within(verdict, range);
    const deep = planes.filter(({ depth }) => depth > 0).length;
    const one = planes.length === 1;
    if (goal === 'all') {
      const depth =
        deep === 0
          ? 'None of them has'
          : deep === planes.length
            ? 'All have'
            : `${deep} of them ${deep === 1 ? 'has' : 'have'}`;
      if (one) return phrase`The profile stays of one kind ${where}; its plane is listed.`;
      return phrase`The profile changes its kind ${String(planes.length - 1)} times ${where}; of each of the ${String(planes.length)} stretches one plane is listed. ${depth} a depth of focus at the tolerance asked for.`;
    }
    const { kind, z, width, depth } = planes[0]!;
    const first = `at z = ${millimetres(z)}: ${named(kind)}, ${lengthText(width)} wide, ${depth > 0 ? `in focus over ${lengthText(depth)}` : 'with no depth of focus at the tolerance asked for'}`;
    return one
      ? phrase`One plane serves the wish “${planeGoal}” ${where}, ${first}.`
      : phrase`${String(planes.length)} planes serve the wish “${planeGoal}” ${where}. The best lies ${first}.`;
  },
  [],
  'No plane can be listed for this wish and range.',
);

/** What the kinds in the list are good for. */
export const goodForSaid = says({ planes: usablePlanes }, ({ planes }) => {
  const present = (Object.keys(uses) as ProfileKind[]).filter((kind) =>
    planes.some((plane) => plane.kind === kind),
  );
  return `${present.map((kind) => uses[kind]).join(' ')} (Common practice, no source.)`;
});

type Curved = ValueOf<typeof zeroCurvatureKinds>;

/** What planes that are no flat-tops are instead: "rings with broad floors, the deepest with a dip of 71 %". */
function otherwise(planes: Curved): string {
  const peaked = planes.filter(({ kind }) => kind === 'peaked');
  if (peaked.length === planes.length) return 'there the profile is peaked';
  const deepest = percent(Math.max(...planes.map(({ dip }) => dip)));
  const ring = `the axis is the broad floor of a ring, with a dip of ${planes.length - peaked.length > 1 ? 'up to ' : ''}${deepest}`;
  return peaked.length === 0
    ? `there ${ring}`
    : `there the profile is peaked (z = ${places(peaked)}), or ${ring}`;
}

const places = (planes: Curved): string => listed(planes.map(({ z }) => millimetres(z)));

/** Planes without curvature on the axis against flat-tops. */
export const zeroCurvatureSaid = says(
  { planes: zeroCurvatureKinds, ratio: usedBeamPropagationRatio, verdict, range: searchedRange },
  ({ planes, ratio, verdict, range }) => {
    const where = within(verdict, range);
    const light = ratio > 1 ? 'For coherent light, without the blur by M², ' : '';
    const begin = (text: string) => light + (light ? text : text[0]!.toUpperCase() + text.slice(1));
    if (planes.length === 0) return phrase`${begin('no')} plane ${where} is without curvature on the axis.`;
    const flat = planes.filter(({ kind }) => kind === 'flat-top');
    const not = planes.filter(({ kind }) => kind !== 'flat-top');
    const count = planes.length === 1 ? 'one plane is' : `${planes.length} planes are`;
    const intro = phrase`${begin(count)} without curvature on the axis ${where}`;
    if (not.length === 0)
      return phrase`${intro}, at z = ${places(flat)}, and there the profile is a flat-top.`;
    if (flat.length === 0)
      return phrase`${intro}, but none is a flat-top (z = ${places(not)}): ${otherwise(not)}.`;
    return phrase`${intro}. At z = ${places(flat)} the profile is a flat-top; at z = ${places(not)} it is not: ${otherwise(not)}.`;
  },
);
