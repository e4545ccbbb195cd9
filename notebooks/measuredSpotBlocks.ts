import {
  focusCaustic,
  focusCausticMeaning,
  focusCausticOffset,
  focusCausticPoints,
  focusCausticPrediction,
} from '../lib/design/measuredFocus.ts';
import { measuredDeviation, measuredOverlay, measuredScaling } from '../lib/design/measuredOverlay.ts';
import {
  measuredPixelPitch,
  measuredPlane,
  measuredPlaneSource,
  measuredProfile,
  measuredProfileZ,
  measuredShape,
  measuredWidth,
} from '../lib/design/measuredSpot.ts';
import { otherProfiles } from '../lib/design/profileList.ts';
import type { ValueOf } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest, micro, perSquareCentimetre } from './columns.ts';
import { type Block, type FigureSpec, figure, type SeriesSpec } from './document.ts';
import {
  focusCausticPlacesSaid,
  focusCausticSaid,
  spotAgreementSaid,
  spotFoldedSaid,
  spotNumbersSaid,
  spotScaleSaid,
  spotWarning,
} from './measuredSpotSentences.ts';
import { profilesFigures, profilesTable } from './profileListBlocks.ts';
import { prose } from './prose.ts';

const inMicrometres = (column: Float64Array) => column.map((x) => x * micro);
const inSquareCentimetres = (column: Float64Array) => column.map((F) => F * perSquareCentimetre);

/** Names of the lines as measured; a table's own line is drawn as its points. */
const sectionLooks = {
  table: { label: 'as measured', role: 'third' },
  x: { label: 'along x of the picture', role: 'third' },
  y: { label: 'along y of the picture', role: 'reference' },
} as const;

/** Most points that are drawn one by one; more lie closer than their rings. */
const mostRings = 120;

/** The values with a gap after each, so that they are drawn as points. */
function apart(values: Float64Array): Float64Array {
  return Float64Array.from({ length: 2 * values.length }, (_, i) => (i % 2 ? Number.NaN : values[i >> 1]!));
}

function sectionSeries({
  along,
  x,
  fluence,
}: ValueOf<typeof measuredOverlay>['sections'][number]): SeriesSpec {
  const rings = along === 'table' && x.length <= mostRings;
  const show = rings ? apart : (column: Float64Array) => column;
  return { ...sectionLooks[along], x: show(inMicrometres(x)), y: show(inSquareCentimetres(fluence)) };
}

const spotFigure = figure({
  id: 'measured-spot-figure',
  needs: [measuredOverlay, measuredWidth],
  from: { overlay: measuredOverlay, width: measuredWidth, deviation: measuredDeviation, z: measuredPlane },
  view: ({ overlay, width, deviation, z }): FigureSpec => {
    const x = inMicrometres(overlay.x);
    const [measured, low, high, predicted] = [
      overlay.measured,
      overlay.low,
      overlay.high,
      overlay.predicted,
    ].map(inSquareCentimetres);
    const reach = Math.min(niceEnd(width * micro * 1.4), niceEnd(x.at(-1)!));
    const sections = overlay.sections.map(sectionSeries);
    const top = niceEnd(1.05 * largest(measured!, predicted!, ...sections.map(({ y }) => y)));
    return {
      title: 'Measured and predicted fluence across the spot',
      x: { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] },
      y: { label: 'fluence per pulse', unit: 'J/cm²', domain: [0, top] },
      series: [
        { label: 'predicted', role: 'second', x, y: predicted! },
        { label: 'measured, mean around the axis', role: 'main', x, y: measured! },
        { label: 'its spread', role: 'band', x, y: low!, y2: high! },
        ...sections,
      ],
      summary: `In the plane z = ${formatQuantity(z, 'm', 'mm')} the measured spot is ${shownValue(measuredWidth, { value: width })} wide, and its fluence differs from the predicted one by ${shownValue(measuredDeviation, { value: deviation })} of the predicted peak (root mean square over the area above half the peak).`,
    };
  },
});

type CausticPoints = ValueOf<typeof focusCausticPoints>;

/**
 * Points of a measured caustic for a chart of radius in µm (upwards) over z in mm (across), of each axis where there are
 * two; `mirrored` draws them below the axis too.
 */
export function causticSeries(points: CausticPoints, mirrored = false): SeriesSpec[] {
  const sides = mirrored ? [1, -1] : [1];
  const measured = (label: string, role: 'second' | 'third', radius: Float64Array): SeriesSpec => ({
    label,
    role,
    x: apart(Float64Array.from(sides.flatMap(() => [...points.z.map((place) => place * 1e3)]))),
    y: apart(Float64Array.from(sides.flatMap((sign) => [...radius.map((r) => sign * r * micro)]))),
  });
  return points.radiusY.length > 0
    ? [
        measured('measured along x', 'second', points.radiusX),
        measured('measured along y', 'third', points.radiusY),
      ]
    : [measured('measured', 'second', points.radius)];
}

const focusFigure = figure({
  id: 'focus-caustic-figure',
  needs: [focusCausticPrediction],
  from: { points: focusCausticPoints, prediction: focusCausticPrediction, meaning: focusCausticMeaning },
  view: ({ points, prediction, meaning }): FigureSpec => {
    const predicted: SeriesSpec = {
      label: 'predicted',
      role: 'main',
      x: prediction.z.map((place) => place * 1e3),
      y: prediction.radius.map((radius) => radius * micro),
    };
    const series = [predicted, ...causticSeries(points)];
    const [from, to] = [points.z[0]! * 1e3, points.z.at(-1)! * 1e3];
    const margin = 0.04 * (to - from) || 0.1;
    const narrowest = prediction.radius.reduce((least, r) => Math.min(least, r), Number.POSITIVE_INFINITY);
    return {
      title: 'The measured caustic of the focus',
      x: {
        label: 'distance from the focal plane of the lens z',
        unit: 'mm',
        domain: [from - margin, to + margin],
      },
      y: {
        label: `radius: ${radiusNames[meaning]}`,
        unit: 'µm',
        domain: [0, niceEnd(1.05 * largest(...series.map(({ y }) => y)))],
      },
      series,
      summary: `Radii at ${points.z.length} places; the predicted ones are ${formatQuantity(narrowest, 'm', 'um', 3)} and more.`,
    };
  },
});

export const radiusNames = {
  moment: 'half the second-moment diameter',
  gaussian: 'outermost at 1/e² of the peak',
  half: 'outermost at half the peak',
} as const;

/** A measured profile of the spot: where it is given, what it says, and its figure. */
export const measuredSpotBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'measured-spot',
    prose: prose`
      ## A measured spot laid over

      Give a profile measured on the workpiece: a table with a header such as *x (µm); fluence (J/cm²)* or *r (µm); counts*, or a camera picture of the spot (PNG, TIFF or a table of grey values). Nothing in the design changes by it.

      Profiles from several planes are compared each in its own: add them as further ones, several files at once, and say for each at which z it was measured. A file name that holds its place, as in *spot z=0.05 mm.csv*, says it.
    `,
  },
  {
    kind: 'controls',
    id: 'measured-spot-controls',
    heading: 'Measured profile',
    inputs: [
      measuredProfile,
      measuredPixelPitch,
      measuredPlaneSource,
      measuredProfileZ,
      measuredScaling,
      otherProfiles,
    ],
  },
  profilesTable,
  // Empty, and then not shown, where there is nothing to warn of.
  {
    kind: 'caution',
    id: 'measured-spot-warning',
    needs: [measuredShape],
    prose: prose`${spotWarning}`,
  },
  {
    kind: 'prose',
    id: 'measured-spot-said',
    prose: prose`
      ${spotNumbersSaid} ${spotAgreementSaid}

      ${spotFoldedSaid} ${spotScaleSaid}
    `,
  },
  spotFigure,
  profilesFigures,
];

/** A measured caustic of the focus: where it is given, what it says, and its figure. */
export const focusCausticBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'focus-caustic',
    prose: prose`
      ## A measured caustic of the focus

      Give spot diameters measured at several places behind the lens, a table with a header such as *z (mm); d (µm)* or, for both axes, *z (mm); dx (µm); dy (µm)*. Nothing in the design changes by it.
    `,
  },
  {
    kind: 'controls',
    id: 'focus-caustic-controls',
    heading: 'Measured caustic of the focus',
    inputs: [focusCaustic, focusCausticMeaning, focusCausticOffset],
  },
  {
    kind: 'prose',
    id: 'focus-caustic-said',
    prose: prose`${focusCausticSaid} ${focusCausticPlacesSaid}`,
  },
  focusFigure,
];
