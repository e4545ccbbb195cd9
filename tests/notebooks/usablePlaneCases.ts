import { cut, goal, noStep, open, range, ratio, within7 } from './familyDesigns.ts';
import type { Case } from './sentenceCases.ts';

type Values = Parameters<Case['truth']>[0];
const always = () => true;

interface Plane {
  readonly kind: string;
  readonly dip: number;
  readonly defocus: number;
  readonly depth: number;
}
function planesOf(value: Values): readonly Plane[] {
  return value('focus.usablePlanes') as unknown as readonly Plane[];
}
function depths(value: Values): readonly number[] {
  return planesOf(value).map(({ depth }) => depth);
}
function zeros(value: Values): readonly Plane[] {
  return value('focus.zeroCurvatureKinds') as unknown as readonly Plane[];
}

export const usablePlaneCases: readonly Case[] = [
  {
    says: 'usablePlanesSaid',
    text: /^The profile changes its kind 10 times within 7 Rayleigh lengths of the focus; of each of the 11 stretches one plane is listed\. 5 of them have a depth of focus/,
    truth: (value) => depths(value).filter((depth) => depth > 0).length === 5,
  },
  {
    says: 'usablePlanesSaid',
    design: { ...open, ...range(1), 'focus.depthTolerance': 1e-3 },
    text: /None of them has a depth of focus/,
    truth: (value) => depths(value).every((depth) => depth === 0),
  },
  {
    says: 'usablePlanesSaid',
    design: range(0.2),
    text: /changes its kind 2 times .* All have a depth of focus/,
    truth: (value) => depths(value).every((depth) => depth > 0),
  },
  {
    says: 'usablePlanesSaid',
    design: noStep,
    text: new RegExp(`^The profile stays of one kind ${within7}; its plane is listed\\.$`),
    truth: (value) => depths(value).length === 1,
  },
  {
    says: 'usablePlanesSaid',
    design: goal('flat'),
    text: /^4 planes serve the wish “flat-top: least dip” within 7 .* The best lies at z = −0\.05\d+\smm: a flat-top, 18\.\d\sµm wide, in focus over 27\.\d\sµm\.$/,
    truth: (value) => depths(value)[0]! > (1 - 1e-6) * Math.max(...depths(value)),
  },
  {
    says: 'usablePlanesSaid',
    design: { ...goal('ring'), ...open, ...range(1) },
    text: /^One plane serves the wish “ring: strongest contrast” within 1 Rayleigh length of the focus, at z = .*: a ring, .* wide, with no depth of focus at the tolerance asked for\.$/,
    truth: (value) => depths(value).join() === '0',
  },
  {
    says: 'usablePlanesSaid',
    design: goal('smallest'),
    text: /^11 planes serve the wish “smallest spot” .* a peaked spot,/,
    truth: (value) => depths(value).length === 11,
  },
  {
    says: 'usablePlanesSaid',
    design: { ...goal('ring'), ...range(0.3) },
    text: /^No plane can be listed for this wish and range\.$/,
    truth: (value) => Number.isNaN(value('focus.usablePlanes')),
  },
  {
    says: 'goodForSaid',
    text: /^Flat-tops that have a depth of focus give .* Shallow rings even out .* Rings put .* Peaked planes put .* \(Common practice, no source\.\)$/,
    truth: (value) => new Set(planesOf(value).map(({ kind }) => kind)).size === 4,
  },
  {
    says: 'goodForSaid',
    design: goal('flat'),
    text: /^Flat-tops that have a depth of focus give[^:]*: [^:]*\. \(Common practice, no source\.\)$/,
    truth: (value) => planesOf(value).every(({ kind }) => kind === 'flat-top'),
  },
  {
    says: 'goodForSaid',
    design: { ...goal('ring'), ...open },
    text: /^Rings put[^:]*: [^:]*\. \(Common practice/,
    truth: (value) => planesOf(value).every(({ kind }) => kind === 'ring'),
  },
  {
    says: 'goodForSaid',
    design: noStep,
    text: /^Peaked planes put [^.]*\. \(Common practice/,
    truth: (value) => planesOf(value).every(({ kind }) => kind === 'peaked'),
  },
  {
    says: 'zeroCurvatureSaid',
    design: noStep,
    text: /^No plane within 7 Rayleigh lengths of the focus is without curvature on the axis\.$/,
    truth: (value) => zeros(value).length === 0,
  },
  {
    says: 'zeroCurvatureSaid',
    design: { ...noStep, ...ratio(1.2) },
    text: /^For coherent light, without the blur by M², no plane within 7/,
    truth: (value) => zeros(value).length === 0,
  },
  {
    says: 'zeroCurvatureSaid',
    design: open,
    text: /^4 planes are without curvature on the axis within 7 .*, but none is a flat-top \(z = −0\.73\smm, .*\): there the axis is the broad floor of a ring, with a dip of up to 71\s%\.$/,
    truth: (value) => zeros(value).every(({ kind, dip }) => kind === 'ring' && dip < 0.72),
  },
  {
    says: 'zeroCurvatureSaid',
    text: /^4 planes are .* At z = −0\.05549\smm and 0\.05549\smm the profile is a flat-top; at z = −0\.6765\smm and 0\.6765\smm it is not: .* up to 54\s%\.$/,
    truth: (value) => zeros(value).filter(({ kind }) => kind === 'flat-top').length === 2,
  },
  {
    says: 'zeroCurvatureSaid',
    design: ratio(1.3),
    text: /^For coherent light, without the blur by M², 4 planes are without curvature/,
    truth: (value) => zeros(value).length === 4,
  },
  {
    says: 'zeroCurvatureSaid',
    pins: { 'focus.zeroCurvatureKinds': [{ kind: 'flat-top', z: 1e-4, dip: 0.01 }] },
    text: /^One plane is without curvature on the axis within 7 .*, at z = 0\.1\smm, and there the profile is a flat-top\.$/,
    truth: always,
  },
  {
    says: 'zeroCurvatureSaid',
    pins: { 'focus.zeroCurvatureKinds': [{ kind: 'peaked', z: 1e-4, dip: 0.01 }] },
    text: /^One plane is .*, but none is a flat-top \(z = 0\.1\smm\): there the profile is peaked\.$/,
    truth: always,
  },
  {
    says: 'zeroCurvatureSaid',
    design: { ...open, ...range(1) },
    text: /^2 planes are without curvature on the axis within 1 Rayleigh length of the focus, but none is a flat-top \(z = .*\): there the axis is the broad floor of a ring, with a dip of up to 18\s%\.$/,
    // physics.md §1: ±0.3631, dip 18 %; ±5.5667 lie outside.
    truth: (value) => zeros(value).every(({ defocus }) => Math.abs(Math.abs(defocus) - 0.3631) < 5e-5),
  },
  {
    says: 'zeroCurvatureSaid',
    design: { ...open, ...range(12) },
    text: /^8 planes are without curvature on the axis within 12 Rayleigh lengths of the focus/,
    // physics.md §1: also ±7.0094, ±11.829.
    truth: (value) => {
      const places = zeros(value).map(({ defocus }) => Math.abs(defocus));
      return [7.0094, 11.829].every((place) => places.some((found) => Math.abs(found - place) < 5e-4));
    },
  },
  {
    says: 'zeroCurvatureSaid',
    design: { ...cut, ...range(7) },
    text: /^.* without curvature on the axis between −[\d.]+ and [\d.]+ Rayleigh lengths from the focus \(as far as the formulas hold\)[.,]/,
    truth: (value) => zeros(value).every(({ defocus }) => Math.abs(defocus) < 7),
  },
  {
    says: 'zeroCurvatureSaid',
    pins: {
      'focus.zeroCurvatureKinds': [
        { kind: 'peaked', z: 1e-4, dip: 0.01 },
        { kind: 'shallow ring', z: 2e-4, dip: 0.08 },
      ],
    },
    text: /but none is a flat-top \(z = 0\.1\smm and 0\.2\smm\): there the profile is peaked \(z = 0\.1\smm\), or the axis is the broad floor of a ring, with a dip of 8\s%\.$/,
    truth: always,
  },
];
