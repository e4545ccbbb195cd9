import type { Case } from './sentenceCases.ts';

const um = 1e-6;
const tilt = (mrad: number) => ({ 'workpiece.tilt': mrad * 1e-3 });
const open = { 'plate.stop': 'open' };

/** The lecture table in its focus: 81.8 µm deep at 5 %, a field of 10 mm. */
export const depthCases: readonly Case[] = [
  {
    says: 'depthOfFocusSaid',
    text: /^The plateau keeps its fluence within 5\s% of its mean from −0\.04091\smm to 0\.04091\smm: the plane is 81\.8\sµm deep\.$/,
    truth: (value) => Math.abs(value('spot.depthOfFocus') - 81.83 * um) < 0.01 * um,
  },
  {
    says: 'depthOfFocusSaid',
    design: open,
    text: /departs by up to 57\.4\s% from its mean over the plateau, more than the tolerance of 5\s%: this plane has no depth of focus\.$/,
    truth: (value) => Number.isNaN(value('spot.depthOfFocus')),
  },
  {
    says: 'depthOfFocusSaid',
    design: { 'plate.stepDiameter': 0.5e-3, 'plate.apertureDiameter': 1e-3 },
    text: /as far as profiles are computed \(12 Rayleigh lengths from the focus\): it is at least [\d.]+\s[mµ]m deep\.$/,
    truth: (value) => Math.abs(value('spot.depthOfFocus') / value('focus.rayleighLength') - 24) < 1e-6,
  },
  {
    says: 'depthOfFocusSaid',
    design: { 'laser.beamPropagationRatio': 4 },
    text: /^The spot is peaked and has no plateau\. On the disc out to 95\s% of its peak the fluence stays within 5\s% of its mean from .* to .*mm: the plane is \d+\sµm deep\.$/,
    truth: (value) => value('spot.kind') === ('peaked' as unknown) && value('spot.depthOfFocus') > 0,
  },
  {
    says: 'depthOfFocusSaid',
    design: { 'laser.beamPropagationRatio': 4, 'focus.depthTolerance': 0.01 },
    text: /departs by up to 2\.\d+\s% from its mean over the disc out to 95\s% of its peak, more than the tolerance of 1\s%/,
    truth: (value) =>
      value('spot.kind') === ('peaked' as unknown) && Number.isNaN(value('spot.depthOfFocus')),
  },
  {
    says: 'depthInUseSaid',
    text: /^Nothing moves the surface over the field of 10\smm\. The depth of focus of 81\.8\sµm would allow a tilt of 8\.18\smrad\.$/,
    truth: (value) => value('workpiece.zSpread') === 0,
  },
  {
    says: 'depthInUseSaid',
    design: { ...open, ...tilt(1) },
    text: /^There is no depth of focus here at the tolerance asked for, so no tilt/,
    truth: (value) => Number.isNaN(value('spot.depthOfFocus')),
  },
  {
    says: 'depthInUseSaid',
    design: tilt(5),
    text: /^Over the field of 10\smm the surface takes positions 50\sµm apart against the focus; the plane is 81\.8\sµm deep\. It survives, with 31\.8\sµm to spare\.$/,
    truth: (value) => value('workpiece.zSpread') < value('spot.depthOfFocus'),
  },
  {
    says: 'depthInUseSaid',
    design: { 'lens.thermalShift': 60 * um },
    text: /positions 60\sµm apart .* It survives when the workpiece is moved by 30\sµm away from the lens, to the middle of the depth; where it stands, part/,
    truth: (value) => value('workpiece.zSpread') < value('spot.depthOfFocus'),
  },
  {
    says: 'depthInUseSaid',
    design: { 'lens.thermalShift': -60 * um },
    text: /It survives when the workpiece is moved by 30\sµm towards the lens/,
    truth: (value) => value('workpiece.zSpread') < value('spot.depthOfFocus'),
  },
  {
    says: 'depthInUseSaid',
    design: tilt(10),
    text: /positions 100\sµm apart .* It does not survive: 18\.2\sµm are lacking\. Most of it is the tilt: level the part/,
    truth: (value) => value('workpiece.zSpread') > value('spot.depthOfFocus'),
  },
  ...(
    [
      [{ 'workpiece.heightError': 60e-6 }, /Most of it is the height error: set the height better/],
      [{ 'scan.fieldCurvature': -120e-6 }, /Most of it is the curvature of the field: take a smaller field/],
      [{ 'lens.thermalShift': 130e-6 }, /Most of it is the thermal shift: let the optics warm up/],
    ] as const
  ).map(
    ([design, text]): Case => ({
      says: 'depthInUseSaid',
      design,
      text,
      truth: (value) => value('workpiece.zSpread') > value('spot.depthOfFocus'),
    }),
  ),
];
