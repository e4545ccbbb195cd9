import { unshapedPeak, workpieceZ } from '../lib/design/focus.ts';
import { type FamilyStrip, strip } from '../lib/design/strip.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest, micro, perSquareCentimetre } from './columns.ts';
import { type FigureSpec, figure } from './document.ts';
import { highestIndices } from './highestPlaces.ts';

const milli = 1e3;
/** Share of the distance between two planes that a profile takes. */
const filled = 0.9;

/** Profiles in nine planes, each drawn about the z where it lies. */
export const stripFigure = figure({
  id: 'strip',
  from: { strip, unshapedPeak, z: workpieceZ },
  view: ({ strip, unshapedPeak, z }): FigureSpec => {
    const { planes, radii } = strip;
    const unit = unshapedPeak * perSquareCentimetre;
    const step = closest(planes) * milli;
    const [reach, first, last] = [radii.at(-1)!, planes[0]! * milli, planes.at(-1)! * milli];
    const data = profilesOf(strip, unit);
    const perRadius = (filled * step) / 2 / reach;
    const x = data.x.map((r, i) => data.z[i]! * milli + r * perRadius);
    const end = niceEnd(largest(data.fluence) * 1.05);
    const peaks = Float64Array.from(planes, (_, row) =>
      largest(strip.values.subarray(row * radii.length, (row + 1) * radii.length)),
    );
    const top = largest(peaks);
    const brightest = highestIndices(peaks).map((i) => planes[i]!);
    const show = (at: number) => formatReadable(at, 'm', 'mm', 3);
    return {
      title: 'Profiles side by side through the focus',
      x: {
        label: 'z, behind the focal plane of the lens',
        unit: 'mm',
        domain: [first - step / 2, last + step / 2],
      },
      y: { label: 'fluence per pulse', unit: 'J/cm²', domain: [0, end] },
      series: [{ label: 'fluence per pulse', role: 'main', x, y: data.fluence }],
      marks: [{ kind: 'vertical', x: z * milli, label: 'workpiece', role: 'today' }],
      moves: { input: workpieceZ, at: z * milli, perUnit: 1 / milli },
      data: [
        { name: 'z', unit: 'mm', values: data.z.map((value) => value * milli) },
        { name: 'distance from the axis', unit: 'µm', values: data.x.map((value) => value * micro) },
        { name: 'fluence per pulse', unit: 'J/cm²', values: data.fluence },
      ].map((column) => ({ ...column, values: withoutGaps(column.values) })),
      summary: `Nine planes ${formatReadable(step / milli, 'm', 'mm', 3)} apart about the focus of the unshaped beam; each profile is drawn about its z and spans ${formatReadable(reach, 'm', 'um', 3)} to either side of the axis. The highest fluence of them, ${formatReadable(top * unshapedPeak, 'J/m^2', 'J/cm^2', 3)} per pulse, lies at z = ${brightest.map(show).join(' and ')}.`,
    };
  },
});

/** The least distance between two neighbours: where B changes along z they are not quite evenly spaced. */
function closest(planes: Float64Array): number {
  return planes
    .subarray(1)
    .reduce((least, z, i) => Math.min(least, z - planes[i]!), Number.POSITIVE_INFINITY);
}

/** All profiles one after another, from −reach to reach, a gap (NaN) between two. */
function profilesOf({ planes, radii, values }: FamilyStrip, unit: number) {
  const across = 2 * radii.length;
  const [z, x, fluence] = [0, 1, 2].map(() => new Float64Array(planes.length * across).fill(Number.NaN));
  planes.forEach((plane, row) => {
    for (let i = 1 - radii.length; i < radii.length; i++) {
      const at = row * across + i + radii.length - 1;
      z![at] = plane;
      x![at] = Math.sign(i) * radii[Math.abs(i)]!;
      fluence![at] = values[row * radii.length + Math.abs(i)]! * unit;
    }
  });
  return { z: z!, x: x!, fluence: fluence! };
}

function withoutGaps(values: Float64Array): Float64Array {
  return values.filter((value) => !Number.isNaN(value));
}
