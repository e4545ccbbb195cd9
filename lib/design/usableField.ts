import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { Stretch } from '../optics/depthInUse.ts';
import { Problem } from '../problem.ts';
import { largestSlope, partWithin, rangeOver, steadyWithin, usableTimes } from '../process/fieldSurface.ts';
import { shownDepth } from './alongBeam.ts';
import { thermalShift, tiltDirection } from './depthInUse.ts';
import { cutNote, depthEnds, planeDepth } from './depthOfFocus.ts';
import { field, surface, unsteady } from './fieldPlanes.ts';

const used = { surface, field, ends: depthEnds, depth: planeDepth, ...unsteady };

/** Positions on which the surface may lie so that the worst case stays within the depth; rounding decides nothing. */
function limitsOf(ends: Stretch, unsteady: { readonly height: number; readonly shift: number }): Stretch {
  const slack = 1e-9 * (ends.to - ends.from);
  return steadyWithin({ from: ends.from - slack, to: ends.to + slack }, unsteady);
}

export const fieldInTolerance = derived({
  id: 'scan.fieldInTolerance',
  name: 'part of the field within the tolerance',
  symbol: 'a_\\tau',
  unit: '1',
  display: '%',
  digits: 3,
  about:
    'Part of the area of the field on which the surface stays within the depth of focus where the workpiece stands, whatever height error and thermal shift do within their bounds.',
  from: used,
  compute: ({ surface, field, ends, height, shift }) =>
    partWithin(surface, field, limitsOf(ends, { height, shift })),
  enteredFor: () => ({ keys: ['surface', 'field', 'ends', 'height', 'shift'] }),
  valid: ({ depth }) => cutNote(depth),
  formula: '\\frac{A\\{\\text{surface}\\pm h-\\{0,\\delta\\}\\in[z_1,z_2]\\}}{F\\,G}',
  source: 'definition',
});

export const usableFields = derived({
  id: 'scan.usableFields',
  name: 'largest fields',
  symbol: 'F_\\tau',
  unit: { set: 'm', moved: 'm', move: 'm' },
  about:
    'Width of the largest field of the same shape about the same middle over which the surface stays within the depth of focus: where the workpiece stands, and where it is moved along z to the best place for it; 0 where height error and thermal shift leave none, empty where the depth sets no limit. With them by how much to move the workpiece so that the field as it is lies in the middle of the depth.',
  from: used,
  compute: ({ surface, field, ends, height, shift }) => {
    const limits = limitsOf(ends, { height, shift });
    const { set, moved } = usableTimes(surface, field, limits);
    const { from, to } = rangeOver(surface, field);
    const width = (times: number | null) => (times === null ? null : times * field.width);
    return { set: width(set), moved: width(moved), move: (limits.from + limits.to) / 2 - (from + to) / 2 };
  },
  enteredFor: () => ({ keys: ['surface', 'field', 'ends', 'height', 'shift'] }),
  valid: ({ depth }) => cutNote(depth),
  shownAs: ({ set, moved }) =>
    [set, moved]
      .map((width) => (width === null ? 'no limit' : formatReadable(width, 'm', 'mm', 3)))
      .join('; moved: '),
  formula: '\\max\\{F:\\ \\text{surface}\\pm h-\\{0,\\delta\\}\\in[z_1,z_2]\\}',
  source: 'definition',
});

function noLimit(): Problem {
  return new Problem(
    'absent',
    'Neither tilt nor field curvature moves the surface against the focus over the field, so that the depth of focus sets no limit to its size: the scan lens does.',
    { input: 'workpiece.tilt' },
  );
}

/** Width of one of the two largest fields, or what keeps it from having a limit. */
const usable = (key: 'set' | 'moved', words: Record<'id' | 'name' | 'symbol' | 'about', string>) =>
  derived({
    ...words,
    unit: 'm',
    display: 'mm',
    digits: 3,
    from: { fields: usableFields },
    compute: ({ fields }) => {
      const width = fields[key];
      if (width === null) throw noLimit();
      return width;
    },
    formula: 'F_\\tau',
    source: 'definition',
  });

export const usableField = usable('set', {
  id: 'scan.usableField',
  name: 'largest usable field',
  symbol: 'F_\\text{max}',
  about:
    'Width of the largest field of the same shape about the same middle on which the profile keeps its tolerance everywhere, with the workpiece where it stands; 0 where none does.',
});

export const usableFieldMoved = usable('moved', {
  id: 'scan.usableFieldMoved',
  name: 'largest usable field, workpiece moved',
  symbol: "F'_\\text{max}",
  about:
    'The same with the workpiece moved along z to where the largest field fits into the depth of focus, as it is around the plane set now; 0 where height error and thermal shift use it up.',
});

/** Depth left for the surface itself, and what it takes. */
const left = (ends: Stretch, { height, shift }: { readonly height: number; readonly shift: number }) =>
  ends.to - ends.from - 2 * height - Math.abs(shift);

export const allowedHeightError = derived({
  id: 'workpiece.allowedHeightError',
  name: 'height error that the depth allows, ±',
  symbol: 'h_\\text{max}',
  unit: 'm',
  display: 'um',
  digits: 3,
  about:
    'Largest departure from the height meant, either way, that the depth of focus leaves room for over the whole field, corners included, after tilt, field curvature and thermal shift, with the middle of the depth set to the middle of what is met: half the flatness that the fixture must hold. 0 where they use it up.',
  from: { surface, field, ends: depthEnds, depth: planeDepth, shift: thermalShift },
  compute: ({ surface, field, ends, shift }) => {
    const { from, to } = rangeOver(surface, field);
    return Math.max(0, left(ends, { height: 0, shift }) - (to - from)) / 2;
  },
  enteredFor: () => ({ keys: ['surface', 'field', 'ends', 'shift'] }),
  valid: ({ depth }) => cutNote(depth),
  shownAs: (length) => shownDepth(length),
  formula: '\\tfrac12\\left(z_2-z_1-|\\delta|-\\Delta\\,\\text{surface}\\right)',
  source: 'definition',
});

export const allowedFieldTilt = derived({
  id: 'workpiece.allowedFieldTilt',
  name: 'tilt that the depth allows, corners included',
  symbol: '\\alpha_\\text{G}',
  unit: 'rad',
  display: 'mrad',
  digits: 3,
  about:
    'Largest tilt in the direction it has for which the surface takes no more than the depth of focus over the whole field, corners included, after height error, field curvature and thermal shift, with the middle of the depth set to the middle of what is met; 0 where they use it up.',
  from: { direction: tiltDirection, ...used },
  compute: ({ direction, surface, field, ends, ...unsteady }) =>
    Math.atan(largestSlope(surface, direction, field, left(ends, unsteady))),
  enteredFor: () => ({ keys: ['direction', 'surface', 'field', 'ends', 'height', 'shift'] }),
  valid: ({ depth }) => cutNote(depth),
  formula: '\\max\\{\\alpha:\\ \\Delta\\,\\text{surface}\\le z_2-z_1-2h-|\\delta|,\\ \\beta\\}',
  source: 'definition',
});
