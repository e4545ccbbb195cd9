import { derived, number } from '../graph/define.ts';
import { reachedPlanes, survivalOf } from '../optics/depthInUse.ts';
import { shownDepth, shownPlaces } from './alongBeam.ts';
import { depthOfFocus, depthTolerance, planeDepth } from './depthOfFocus.ts';
import { workpieceZ } from './focus.ts';

export const fieldWidth = number({
  id: 'scan.fieldWidth',
  name: 'width of the field',
  symbol: 'F',
  unit: 'm',
  display: 'mm',
  about: 'Width of the field that is worked without moving the workpiece along z, from edge to edge.',
  initial: 10e-3,
  range: { min: 0, max: 1, above: true },
  typical: [1e-3, 100e-3],
});

export const tilt = number({
  id: 'workpiece.tilt',
  name: 'tilt of the workpiece',
  symbol: '\\alpha',
  unit: 'rad',
  display: 'mrad',
  about:
    'Angle between the surface and the focal plane. About the middle of the field it moves one edge forward and the other back: field width times its tangent in all.',
  initial: 0,
  range: { min: 0, max: 0.5 },
  typical: [0, 10e-3],
});

export const tiltDirection = number({
  id: 'workpiece.tiltDirection',
  name: 'direction of the tilt over the field',
  symbol: '\\beta',
  unit: 'rad',
  display: 'deg',
  about:
    'Direction in which the tilted surface goes away from the lens, from the direction of the first lines: 0 along the width of the field, 90° along its height.',
  initial: 0,
  range: { min: -Math.PI, max: Math.PI },
  typical: [0, Math.PI / 2],
});

export const heightError = number({
  id: 'workpiece.heightError',
  name: 'height error, ±',
  symbol: 'h',
  unit: 'm',
  display: 'um',
  about:
    'Largest departure of the surface from the height meant, either way (±): setting the height, thickness of the part, waviness. It spans twice this value.',
  initial: 0,
  range: { min: 0, max: 10e-3 },
  typical: [0, 100e-6],
});

export const fieldCurvature = number({
  id: 'scan.fieldCurvature',
  name: 'field curvature of the scan lens',
  symbol: 's',
  unit: 'm',
  display: 'um',
  about:
    'How much further from the lens the focus lies at the edge of the field than in its middle; below 0 where it lies nearer.',
  initial: 0,
  range: { min: -10e-3, max: 10e-3 },
  typical: [-100e-6, 100e-6],
});

export const thermalShift = number({
  id: 'lens.thermalShift',
  name: 'thermal focus shift',
  symbol: '\\delta',
  unit: 'm',
  display: 'um',
  about:
    'How much further from the lens the focus lies once the optics are warm than when they are cold; below 0 where it comes nearer.',
  initial: 0,
  range: { min: -10e-3, max: 10e-3 },
  typical: [-100e-6, 100e-6],
});

const causes = { tilt, field: fieldWidth, height: heightError, sag: fieldCurvature, shift: thermalShift };

export const zReached = derived({
  id: 'workpiece.zReached',
  name: 'planes reached over the field',
  symbol: 'z_\\text{a}, z_\\text{b}',
  unit: { from: 'm', to: 'm' },
  about:
    'Nearest and furthest position against the focus that the surface takes over the field, with tilt and height error either way and focus shifts one way, all at their worst together.',
  from: { z: workpieceZ, ...causes },
  compute: ({ z, ...causes }) => reachedPlanes(z, causes),
  shownAs: ({ from, to }) => shownPlaces(from === to ? [from] : [from, to]).join(' to '),
  formula: 'z\\mp\\left(\\tfrac12F\\tan\\alpha+h\\right)-\\{0,s\\}-\\{0,\\delta\\}',
  source: 'definition',
});

export const zSpread = derived({
  id: 'workpiece.zSpread',
  name: 'spread in z over the field',
  symbol: '\\Delta z_\\text{F}',
  unit: 'm',
  display: 'um',
  about:
    'Whole distance along z, from nearest to furthest, that the surface takes against the focus over the field: to be compared with the whole depth of focus.',
  from: causes,
  compute: (causes) => {
    const { from, to } = reachedPlanes(0, causes);
    return to - from;
  },
  shownAs: (length) => shownDepth(length),
  formula: 'F\\tan\\alpha+2h+|s|+|\\delta|',
  source: 'definition',
});

export const survives = derived({
  id: 'workpiece.survives',
  name: 'does the plane survive the field',
  symbol: '\\text{survives}',
  unit: { verdict: 'none', room: 'm', move: 'm' },
  about:
    'Whether all that the surface takes over the field lies within the depth of focus where the workpiece stands: yes; only when the workpiece is moved; no; or no depth at this tolerance. With it the depth left over (below 0 where it lacks) and by how much to move the workpiece to the middle of the depth.',
  from: { depth: planeDepth, tolerance: depthTolerance, reached: zReached },
  compute: ({ depth, tolerance, reached }) => survivalOf(depth, tolerance, reached),
  shownAs: ({ verdict }) => verdict,
  formula: '[z_\\text{a},z_\\text{b}]\\subset[z_1,z_2]',
  source: 'definition',
});

export const allowedTilt = derived({
  id: 'workpiece.allowedTilt',
  name: 'tilt that the depth allows',
  symbol: '\\alpha_\\text{max}',
  unit: 'rad',
  display: 'mrad',
  digits: 3,
  about:
    'Largest tilt over the field that the depth of focus leaves room for after height error, field curvature and thermal shift, the middle of the depth set to the middle of what is reached; 0 where they use it up.',
  from: {
    depth: depthOfFocus,
    field: fieldWidth,
    height: heightError,
    sag: fieldCurvature,
    shift: thermalShift,
  },
  compute: ({ depth, field, ...others }) => {
    const { from, to } = reachedPlanes(0, { ...others, field, tilt: 0 });
    return Math.atan(Math.max(0, depth - (to - from)) / field);
  },
  formula: '\\arctan\\frac{\\Delta z-2h-|s|-|\\delta|}{F}',
  source: 'definition',
});
