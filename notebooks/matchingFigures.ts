import { contours, quickselect } from 'd3';
import {
  amplitudeOverPhase,
  axisIrradianceInFocus,
  centreAmplitude,
  outerAmplitude,
} from '../lib/design/explain.ts';
import { focusRadius, light, unshapedPeak, workpieceZ } from '../lib/design/focus.ts';
import { specialRatios, stepRatio } from '../lib/design/match.ts';
import { stepDiameter, stepPhase } from '../lib/design/plate.ts';
import {
  axisOverRatio,
  distances,
  focusOverRatio,
  focusSpread,
  shownRadius,
  shownRatios,
} from '../lib/design/ratioMaps.ts';
import {
  dipLessPhase,
  dipMorePhase,
  dipNarrowerBeam,
  dipWiderBeam,
  lessPhase,
  morePhase,
  narrowerBeam,
  widerBeam,
} from '../lib/design/sensitivity.ts';
import { dip, kind, peakFluence, profile, width } from '../lib/design/spot.ts';
import { fluenceWithoutPlate, unshapedPeakFluence, unshapedProfile } from '../lib/design/unshaped.ts';
import type { Quantity, ValueOf } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import type { RadialProfile } from '../lib/optics/radialProfile.ts';
import { fluenceColumn, largest, micro, perSquareCentimetre, symmetric } from './columns.ts';
import { type FigureSpec, figure, type MarkSpec, type SeriesSpec } from './document.ts';

/** A number as the text beside the figure shows it. */
const show = (quantity: Quantity, value: number) => shownValue(quantity, { value });

/** Profile on the workpiece, and the same beam with the plate taken out. */
export const profileFigure = figure({
  id: 'profile',
  from: {
    profile,
    unshapedProfile,
    unshapedPeak,
    fluenceWithoutPlate,
    focusRadius,
    dip,
    kind,
    width,
    peakFluence,
    unshapedPeakFluence,
  },
  view: (values): FigureSpec => {
    const reach = niceEnd(values.width * micro * 1.4);
    const x = symmetric(reach, 401);
    const shaped = fluenceColumn(values.profile, values.unshapedPeak, x);
    const plain = fluenceColumn(values.unshapedProfile, values.fluenceWithoutPlate, x);
    return {
      title: 'Fluence across the spot',
      x: { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] },
      y: { label: 'fluence per pulse', unit: 'J/cm²', domain: [0, niceEnd(largest(shaped, plain))] },
      series: [
        { label: 'with the plate', role: 'main', x, y: shaped },
        { label: 'plate taken out, same energy', role: 'reference', x, y: plain },
      ],
      summary: `With the plate the spot is ${values.kind === 'peaked' ? 'peaked' : `a ${values.kind}`}, ${show(width, values.width)} wide, ${values.dip < dip.zeroBelow! ? 'without a dip' : `with a dip of ${show(dip, values.dip)}`} and with a peak of ${show(peakFluence, values.peakFluence)}. Without the plate the same pulse reaches ${show(unshapedPeakFluence, values.unshapedPeakFluence)}.`,
    };
  },
});

/** A profile that has changed, and the factor of its beam: its own F0 grows with the square of the beam radius. */
interface Changed {
  readonly label: string;
  readonly profile: RadialProfile;
  readonly beam?: number;
}

function changedFigure(
  title: string,
  today: { readonly profile: RadialProfile; readonly unshapedPeak: number; readonly width: number },
  [more, less]: readonly [Changed, Changed],
  summary: string,
): FigureSpec {
  const end = niceEnd(today.width * micro * 1.4);
  const x = symmetric(end, 301);
  const draw = ({ profile, beam = 1 }: Omit<Changed, 'label'>) =>
    fluenceColumn(profile, today.unshapedPeak * beam * beam, x);
  const series: SeriesSpec[] = [
    { label: 'today', role: 'main', x, y: draw(today) },
    { label: more.label, role: 'second', x, y: draw(more) },
    { label: less.label, role: 'third', x, y: draw(less) },
  ];
  const highest = largest(...series.map(({ y }) => y));
  return {
    title,
    x: { label: 'distance from the axis', unit: 'µm', domain: [-end, end] },
    y: { label: 'fluence per pulse', unit: 'J/cm²', domain: [0, niceEnd(highest * 1.05)] },
    series,
    summary,
  };
}

export const beamChangeFigure = figure({
  id: 'beam-change',
  from: { profile, widerBeam, narrowerBeam, unshapedPeak, width, dip, dipWiderBeam, dipNarrowerBeam },
  view: (values) =>
    changedFigure(
      'If the beam is 5\u202f% wider or narrower than you think',
      values,
      [
        { label: 'beam 5\u202f% wider', profile: values.widerBeam, beam: 1.05 },
        { label: 'beam 5\u202f% narrower', profile: values.narrowerBeam, beam: 0.95 },
      ],
      `At the same z and pulse energy the dip is ${show(dip, values.dip)} today, ${show(dip, values.dipWiderBeam)} with the beam 5\u202f% wider and ${show(dip, values.dipNarrowerBeam)} with it 5\u202f% narrower.`,
    ),
});

export const phaseChangeFigure = figure({
  id: 'phase-change',
  from: { profile, morePhase, lessPhase, unshapedPeak, width, dip, dipMorePhase, dipLessPhase },
  view: (values) =>
    changedFigure(
      'If the step is 5\u202f% too high or too low',
      values,
      [
        { label: 'phase 5\u202f% more', profile: values.morePhase },
        { label: 'phase 5\u202f% less', profile: values.lessPhase },
      ],
      `At the same z the dip is ${show(dip, values.dip)} today, ${show(dip, values.dipMorePhase)} with 5\u202f% more phase and ${show(dip, values.dipLessPhase)} with 5\u202f% less.`,
    ),
});

export const amplitudeFigure = figure({
  id: 'amplitudes',
  from: {
    amplitudes: amplitudeOverPhase,
    phase: stepPhase,
    centre: centreAmplitude,
    outer: outerAmplitude,
    irradiance: axisIrradianceInFocus,
  },
  view: ({ amplitudes, phase, centre, outer, irradiance }): FigureSpec => {
    const x = amplitudes.phase.map((phi) => phi / (2 * Math.PI));
    const waves = phase / (2 * Math.PI);
    const left = waves >= 1 ? waves % 1 : waves;
    const today = show(stepPhase, phase);
    const drawn =
      waves >= 1 ? `${today}, ${show(stepPhase, left * 2 * Math.PI)} without its whole waves,` : today;
    return {
      title: 'Why it works: two amplitudes on the axis',
      x: { label: 'phase of the step, whole waves dropped', unit: 'waves', domain: [0, 1] },
      y: {
        label: 'amplitude on the axis in the focus',
        unit: 'of the whole unclipped beam',
        domain: [-1, 1],
      },
      series: [
        { label: 'light through the centre', role: 'second', x, y: amplitudes.centre },
        { label: 'light around the step', role: 'third', x, y: amplitudes.outer },
        { label: 'sum', role: 'main', x, y: amplitudes.sum },
        { label: 'irradiance of the sum', role: 'reference', x, y: amplitudes.irradiance },
      ],
      marks: [{ kind: 'vertical', x: left, label: 'today', role: 'today' }],
      summary: `Amplitudes are the parts in step with the light around the step. At today’s ${drawn} the centre gives ${show(centreAmplitude, centre * Math.cos(phase))}, the outer part ${show(outerAmplitude, outer)}, and the irradiance on the axis is ${show(axisIrradianceInFocus, irradiance)} of the unshaped, unclipped beam’s.`,
    };
  },
});

interface Special {
  readonly dark: number | null;
  readonly flattest: number | null;
}

/** Marks of today's ratio and of the special ones that exist, along one axis. */
function ratioMarks(kindOfMark: 'vertical' | 'horizontal', today: number, special: Special): MarkSpec[] {
  const along = kindOfMark === 'vertical' ? 'x' : 'y';
  const places: [number | null, string, MarkSpec['role']][] = [
    [special.dark, 'darkest centre', 'reference'],
    [special.flattest, 'flattest', 'reference'],
    [today, 'today', 'today'],
  ];
  return places.flatMap(([value, label, role]) =>
    value === null || value < shownRatios[0] || value > shownRatios[1]
      ? []
      : [{ kind: kindOfMark, [along]: value, label, role }],
  );
}

/** The two special ratios in words. */
function specialSaid({ dark, flattest }: Special): string {
  const ratioText = (ratio: number) => formatQuantity(ratio, '1', '1', 4);
  const darkPart =
    dark === null
      ? 'No step ratio makes the centre exactly dark here'
      : `The centre is darkest at a step ratio of ${ratioText(dark)}`;
  const flatPart =
    flattest === null
      ? 'none makes the focus level on the axis'
      : `the focus is flattest at ${ratioText(flattest)}`;
  return `${darkPart}, ${flatPart}`;
}

function outsideNote(ratio: number): string {
  return ratio < shownRatios[0] || ratio > shownRatios[1]
    ? ' Today’s step ratio lies outside the picture.'
    : '';
}

/**
 * Top of the colours of a map over the step ratio: its highest value where that is near what most of it reaches, else
 * the 99th percentile, but half as much again as today's profile at least. One bright corner would set the scale.
 */
function topOfColours(
  { values, columns, rows }: { values: Float64Array; columns: number; rows: number },
  ratio: number,
) {
  const highest = largest(values);
  const row = Math.round(((ratio - shownRatios[0]) / (shownRatios[1] - shownRatios[0])) * (rows - 1));
  const today = largest(values.subarray(Math.max(0, row * columns), Math.max(0, (row + 1) * columns)));
  const most = Math.max(ninetyNinth(values), 1.5 * today);
  return most < 0.9 * highest
    ? { top: most, highest, openEnd: true }
    : { top: highest, highest, openEnd: false };
}

/** The value that 99 % of a map do not exceed. */
function ninetyNinth(values: Float64Array): number {
  const place = Math.round(0.99 * (values.length - 1));
  return quickselect(values.slice(), place)[place]!;
}

/** Where the colours end before the values do. */
function coloursSaid({ top, highest, openEnd }: ReturnType<typeof topOfColours>): string {
  const show = (fluence: number) => formatQuantity(fluence / perSquareCentimetre, 'J/m^2', 'J/cm^2', 3);
  return openEnd ? ` Colours end at ${show(top)}; the map reaches ${show(highest)}.` : '';
}

export const ratioFigure = figure({
  id: 'focus-over-ratio',
  shape: 'tall',
  from: {
    map: focusOverRatio,
    ratio: stepRatio,
    special: specialRatios,
    light,
    spread: focusSpread,
    step: stepDiameter,
    F0: unshapedPeak,
  },
  view: ({ map, ratio, special, light, spread, step, F0 }): FigureSpec => {
    const radius = ((shownRadius * light.wavelength * light.focalLength * spread) / (Math.PI * step)) * micro;
    // F0 belongs to today's beam and grows as 1/κ²; the map holds |U|²/κ².
    const unit = ((F0 * ratio * ratio) / (spread * spread)) * perSquareCentimetre;
    const values = map.values.map((value) => value * unit);
    const colours = topOfColours({ ...map, values }, ratio);
    return {
      title: 'Profile in the focus against step ratio',
      x: { label: 'radius', unit: 'µm', domain: [0, radius] },
      y: { label: 'step ratio', unit: 'step diameter / beam diameter', domain: shownRatios },
      series: [],
      marks: ratioMarks('horizontal', ratio, special),
      map: {
        ...map,
        values,
        range: [0, colours.top],
        openEnd: colours.openEnd,
        label: 'fluence per pulse',
        unit: 'J/cm²',
      },
      summary: `The beam is varied, plate, stop and pulse energy stay; M²\u00a0=\u00a01. ${specialSaid(special)}; today it is ${formatQuantity(ratio, '1', '1', 4)}.${outsideNote(ratio)}${coloursSaid(colours)}`,
    };
  },
});

export const axisFigure = figure({
  id: 'axis-over-ratio',
  shape: 'tall',
  from: {
    map: axisOverRatio,
    distances,
    ratio: stepRatio,
    light,
    z: workpieceZ,
    special: specialRatios,
  },
  view: ({ map, distances, ratio, light, z, special }): FigureSpec => {
    const millimetres = distances.unit * 1e3;
    const [low, high] = map.ends;
    const loop = zeroLines(map, millimetres);
    const { bend, shift } = distances;
    const square = ratio * ratio;
    return {
      title: 'On the axis: step ratio against distance from the focus',
      x: { label: 'step ratio', unit: 'step diameter / beam diameter', domain: shownRatios },
      y: {
        label: 'distance from the focal plane of the lens z',
        unit: 'mm',
        domain: [low * millimetres, high * millimetres],
      },
      secondY: {
        label: shift === 0 && bend === 0 ? 'ζ = z over today’s Rayleigh length' : 'ζ of today’s beam',
        factor: 1 / (millimetres * square),
        bend: bend / millimetres,
        offset: -shift / square,
      },
      series: [{ label: 'no curvature on the axis', role: 'second', ...loop }],
      marks: [
        ...ratioMarks('vertical', ratio, special).filter((mark) => mark.role === 'reference'),
        { kind: 'point', x: ratio, y: z * 1e3, label: 'today', role: 'today' },
      ],
      map: {
        columns: map.columns,
        rows: map.rows,
        values: map.irradiance,
        range: [0, largest(map.irradiance)],
        label: 'irradiance on the axis',
        unit: 'of the unshaped focus',
      },
      summary: `On the line the profile has no curvature on the axis, which alone does not make it a flat-top. ${specialSaid(special)}. The beam is varied, plate, stop and lens stay; M² = 1, ${wavefrontSaid(light.wavefrontCurvature)}, plate ${formatQuantity(light.plateDistance, 'm', 'mm')} before the lens.${outsideNote(ratio)}${z < low * distances.unit || z > high * distances.unit ? ' The workpiece lies outside the picture.' : ''}`,
    };
  },
});

function wavefrontSaid(curvature: number): string {
  if (curvature === 0) return 'flat wavefront';
  const radius = formatQuantity(1 / Math.abs(curvature), 'm', 'm', 3);
  return `wavefront ${curvature > 0 ? 'diverging' : 'converging'} with a radius of ${radius} at the plate`;
}

type CurvatureMap = ValueOf<typeof axisOverRatio>;

/** Lines of a map already drawn, in units of the scale of the distances: most inputs move the marks on it and leave the map as it is. */
const keptLines = new WeakMap<Float64Array, { x: Float64Array; y: Float64Array }>();

/** Lines along which the curvature on the axis vanishes, as one column pair with gaps (NaN) between lines. */
function zeroLines(map: CurvatureMap, millimetres: number) {
  const { x, y } = keptLines.get(map.curvature) ?? traceZeroLines(map);
  return { x, y: y.map((value) => value * millimetres) };
}

function traceZeroLines(map: CurvatureMap): { x: Float64Array; y: Float64Array } {
  const xs: number[] = [];
  const ys: number[] = [];
  const [x0, x1] = shownRatios;
  const [y0, y1] = map.ends;
  const make = contours().size([map.columns, map.rows]);
  for (const ring of make.contour(Array.from(map.curvature), 0).coordinates.flat()) {
    for (const point of ring) {
      const [column, row] = point as [number, number];
      const onBorder = column <= 0.5 || row <= 0.5 || column >= map.columns - 0.5 || row >= map.rows - 0.5;
      xs.push(onBorder ? Number.NaN : x0 + ((x1 - x0) * (column - 0.5)) / (map.columns - 1));
      ys.push(onBorder ? Number.NaN : y0 + ((y1 - y0) * (row - 0.5)) / (map.rows - 1));
    }
    xs.push(Number.NaN);
    ys.push(Number.NaN);
  }
  const lines = { x: Float64Array.from(xs), y: Float64Array.from(ys) };
  keptLines.set(map.curvature, lines);
  return lines;
}
