import type { Case } from './sentenceCases.ts';

const um = 1e-6;
const tilt = (mrad: number) => ({ 'workpiece.tilt': mrad * 1e-3 });
const fields = (value: (id: string) => number) =>
  value('scan.usableFields') as unknown as { set: number | null; moved: number | null };
const taken = (value: (id: string) => number) =>
  value('workpiece.depthTaken') as unknown as Record<'tilt' | 'curvature' | 'height' | 'shift', number>;
const width = 10e-3;

/** The lecture table in its focus: 81.8 µm deep at 5 %, −40.9 to 40.9 µm, a field of 10 mm × 10 mm. */
export const planeMetCases: readonly Case[] = [
  {
    says: 'usableFieldSaid',
    text: /^Neither tilt nor field curvature .* sets no limit to its size; the scan lens does\.$/,
    truth: (value) => fields(value).set === null,
  },
  {
    says: 'usableFieldSaid',
    design: { ...tilt(1), 'workpiece.heightError': 60 * um },
    text: /^Height error and thermal shift alone take more than the depth of focus of 81\.8\sµm: no field,/,
    truth: (value) => 120 * um > value('spot.depthOfFocus') && fields(value).moved === 0,
  },
  {
    says: 'usableFieldSaid',
    design: tilt(4),
    text: /^The profile keeps its tolerance over the whole field of 10\smm, and would over one of 20\.5\smm of the same shape\.$/,
    truth: (value) => Math.abs(value('scan.usableField') - 81.83e-6 / Math.tan(4e-3)) < 1e-5,
  },
  {
    says: 'usableFieldSaid',
    design: { ...tilt(10) },
    text: /^Where the workpiece stands, 81\.8\s% of the field keeps the tolerance for sure; a field without any fault may be 8\.18\smm wide\. Moving it helps, but not enough for a field of 10\smm: the largest is then 8\.18\smm wide\.$/,
    truth: (value) => fields(value).moved! < width,
  },
  {
    says: 'usableFieldSaid',
    design: { 'scan.fieldCurvature': 30 * um },
    text: /may be 8\.26\smm wide\. Move it by 30\sµm away from the lens, to the middle of the depth: then the whole field keeps it, and one of up to 11\.7\smm would\.$/,
    truth: (value) => fields(value).set! < width && fields(value).moved! >= width,
  },
  {
    says: 'usableFieldSaid',
    design: { 'lens.thermalShift': 60 * um },
    text: /^Where the workpiece stands, 0\s% of the field keeps the tolerance for sure\. Move it by 30\sµm away from the lens, to the middle of the depth: then the depth sets no limit to the field\.$/,
    truth: (value) => fields(value).set === 0 && fields(value).moved === null,
  },
  {
    says: 'usableFieldSaid',
    design: { ...tilt(10), 'lens.thermalShift': 60 * um },
    text: /% of the field keeps the tolerance for sure, and its middle does not: no field about the middle does\. Moving it helps, but not enough/,
    truth: (value) => fields(value).set === 0 && value('scan.fieldInTolerance') > 0,
  },
  {
    says: 'depthCauseSaid',
    text: /^Nothing takes any of the depth of 81\.8\sµm: it would allow a tilt of 8\.18\smrad, or a height error of ±40\.9\sµm\.$/,
    truth: (value) => value('workpiece.zMetSpread') === 0,
  },
  {
    says: 'depthCauseSaid',
    design: tilt(4),
    text: /^Of the depth of 81\.8\sµm the surface takes 40\sµm over the field, most of it through the tilt, which alone takes 40\sµm\.$/,
    truth: (value) => taken(value).tilt > taken(value).height,
  },
  {
    says: 'depthCauseSaid',
    design: tilt(10),
    text: /the tilt, which alone takes 100\sµm\. Level the part to 8\.18\smrad or better, take a smaller field, or a longer lens\.$/,
    truth: (value) => value('workpiece.allowedFieldTilt') < value('workpiece.tilt'),
  },
  {
    says: 'depthCauseSaid',
    design: { ...tilt(15), 'workpiece.heightError': 45 * um },
    text: /Levelling the part is not enough by itself: take a smaller field as well, or a longer lens\.$/,
    truth: (value) => value('workpiece.allowedFieldTilt') === 0,
  },
  {
    says: 'depthCauseSaid',
    design: { 'scan.fieldCurvature': 20 * um },
    text: /takes 40\sµm over the field, most of it through the curvature of the field, which alone takes 40\sµm\.$/,
    truth: (value) => taken(value).curvature > taken(value).tilt,
  },
  {
    says: 'depthCauseSaid',
    design: { 'scan.fieldCurvature': -100 * um },
    text: /which alone takes 200\sµm\. Take a smaller field, a scan lens with a flatter field, or a longer lens\.$/,
    truth: (value) => fields(value).moved! < width,
  },
  {
    says: 'depthCauseSaid',
    design: { 'workpiece.heightError': 20 * um },
    text: /most of it through the height error, which alone takes 40\sµm\.$/,
    truth: (value) => fields(value).moved === null,
  },
  {
    says: 'depthCauseSaid',
    design: { ...tilt(2), 'workpiece.heightError': 35 * um },
    text: /the height error, which alone takes 70\sµm\. Hold the height to ±30\.9\sµm, follow it with the z axis, or take a longer lens\.$/,
    truth: (value) => value('workpiece.allowedHeightError') < 35 * um && fields(value).moved! < width,
  },
  {
    says: 'depthCauseSaid',
    design: { ...tilt(9), 'workpiece.heightError': 60 * um },
    text: /Holding the height is not enough by itself: follow it with the z axis and take a smaller field, or a longer lens\.$/,
    truth: (value) => value('workpiece.allowedHeightError') === 0,
  },
  {
    says: 'depthCauseSaid',
    design: { 'lens.thermalShift': 30 * um },
    text: /most of it through the thermal shift of the focus, which alone takes 30\sµm\.$/,
    truth: (value) => fields(value).moved === null,
  },
  {
    says: 'depthCauseSaid',
    design: { 'lens.thermalShift': -100 * um },
    text: /which alone takes 100\sµm\. Let the optics warm up before the height is set, or take a longer lens\.$/,
    truth: (value) => taken(value).shift > value('spot.depthOfFocus'),
  },
  { says: 'cornersSaid', design: tilt(4), text: /^$/, truth: (value) => value('workpiece.zSpread') > 0 },
  {
    says: 'cornersSaid',
    design: { 'scan.fieldCurvature': 20 * um },
    text: /^With its corners the field takes 40\sµm along z, where along the width alone, through the middle, it would take 20\sµm\.$/,
    truth: (value) =>
      value('workpiece.zMetSpread') > value('workpiece.zSpread') &&
      Math.abs(value('workpiece.zWidthSpread') - value('workpiece.zSpread')) < 1e-12,
  },
  {
    says: 'cornersSaid',
    // Along the width 50 µm·u − 100 µm·u², u from −1 to 1: from −150 to 6.25 µm at u = ¼.
    design: { ...tilt(10), 'scan.fieldCurvature': 100 * um },
    text: /^With its corners the field takes 256\sµm along z, where along the width alone, through the middle, it would take 156\sµm: less than the 200\sµm of all causes at their worst together\.$/,
    truth: (value) => Math.abs(value('workpiece.zWidthSpread') - 156.25 * um) < 1e-8,
  },
  {
    says: 'onePlaneSaid',
    design: { 'workpiece.z': 30 * um },
    text: /^The surface stands at z = 0\.03\smm all over the field, height error and thermal shift not counted: in one plane there is nothing to map\. A tilt or a field curvature brings the map\.$/,
    truth: (value) => value('workpiece.tilt') === 0 && value('scan.fieldCurvature') === 0,
  },
  { says: 'onePlaneSaid', design: tilt(1), text: /^$/, truth: (value) => value('workpiece.tilt') > 0 },
  {
    says: 'cornersSaid',
    design: { ...tilt(4), 'scan.fieldCurvature': 20 * um, 'scan.fieldHeight': 1e-3 },
    text: /^The field takes 45\.2\sµm along z, less than the 60\sµm of all causes at their worst together:/,
    truth: (value) => value('workpiece.zMetSpread') < value('workpiece.zSpread'),
  },
  {
    says: 'profilesMetSaid',
    text: /^Over the field the peak fluence hardly departs from the 5\.119\sJ\/cm² of the plane set\.$/,
    truth: (value) => value('workpiece.lowestPeakMet') === 1 && value('workpiece.highestPeakMet') === 1,
  },
  {
    says: 'profilesMetSaid',
    design: { 'lens.thermalShift': -60 * um },
    text: /the peak fluence rises, to [\d.]+\s% of the [\d.]+\sJ\/cm² there at most: what was set below a limit may be above it elsewhere on the field\.$/,
    truth: (value) => value('workpiece.lowestPeakMet') > 0.995 && value('workpiece.highestPeakMet') > 1.005,
  },
  {
    says: 'profilesMetSaid',
    design: { ...tilt(8), 'plate.stop': 'open' },
    text: /the peak fluence falls, to [\d.]+\s% of the [\d.]+\sJ\/cm² there at the worst\.$/,
    truth: (value) => value('workpiece.lowestPeakMet') < 0.995 && value('workpiece.highestPeakMet') < 1.005,
  },
  {
    says: 'profilesMetSaid',
    design: { ...tilt(10), 'workpiece.z': 30 * um },
    text: /the peak fluence goes from [\d.]+\s% to [\d.]+\s% of the [\d.]+\sJ\/cm² there\./,
    truth: (value) => value('workpiece.lowestPeakMet') < 0.995 && value('workpiece.highestPeakMet') > 1.005,
  },
  {
    says: 'profilesMetSaid',
    design: { ...tilt(30), 'workpiece.z': 55 * um },
    text: /The axis lies up to [\d.]+\s% below the peak, where it lies [\d.]+\s% below it in the plane set\.$/,
    truth: (value) => value('workpiece.deepestDipMet') > value('spot.dip') + 0.005,
  },
];
