import { energyInside, isAcross, levelOf, type WidthName, widthsOf } from '../../lib/optics/widths.ts';
import type { FigureSpec, SeriesRole, SeriesSpec } from '../document.ts';
import type { LinkedRow } from './linkedRows.ts';

const length = { unit: 'm', display: 'auto:m', bare: 'mm', between: [0, 100] } as const;

/** The ways to give the width of a Gaussian beam, each with where it is met. */
export const widthRows: readonly LinkedRow<WidthName>[] = [
  {
    key: 'radius',
    label: '1/e² radius',
    symbol: 'w',
    about: 'Formulas of Gaussian beams; “beam radius” in these pages.',
    ...length,
  },
  {
    key: 'diameter',
    label: '1/e² diameter',
    symbol: '2w = D_{4\\sigma}',
    about: 'Beam cameras, as D4σ (ISO 11146); data sheets of lasers; all beam diameters in these pages.',
    ...length,
  },
  {
    key: 'radiusAtE',
    label: '1/e radius',
    symbol: 'w/\\sqrt2',
    about: 'Some papers: look twice which of the two is meant.',
    ...length,
  },
  {
    key: 'diameterAtE',
    label: '1/e diameter',
    symbol: '\\sqrt2\\,w',
    about: 'Laser safety (IEC 60825-1, memory).',
    ...length,
  },
  {
    key: 'fullWidth',
    label: 'Full width at half maximum',
    symbol: '1.177\\,w',
    about: 'Read off a profile with a ruler; microscopes; spots of scanners.',
    ...length,
  },
  {
    key: 'deviation',
    label: 'Standard deviation σ',
    symbol: 'w/2',
    about: 'Second moments before they are multiplied by four.',
    ...length,
  },
];

/** Points of the curve on each side of the axis. */
const points = 120;
/** The curve ends at this many radii. */
const reach = 2;

/** The unit in which a length reads well on an axis. */
function axisUnit(length: number): readonly [unit: string, metres: number] {
  const units = [
    ['m', 1],
    ['mm', 1e-3],
    ['µm', 1e-6],
    ['nm', 1e-9],
  ] as const;
  return units.find(([, metres]) => length >= metres) ?? units[3];
}

const percent = (part: number) => `${(100 * part).toPrecision(3)}\u202f%`;

/** The profile of a Gaussian of that 1/e² radius, m, with the places that its widths mark. */
export function widthFigure(radius: number): FigureSpec {
  const [unit, metres] = axisUnit(radius);
  const w = radius / metres;
  const x = Float64Array.from({ length: 2 * points + 1 }, (_, i) => ((i - points) / points) * reach * w);
  const widths = widthsOf(w);
  const chord = (name: WidthName, role: SeriesRole, label: string): SeriesSpec => {
    const end = widths[name] / (isAcross[name] ? 2 : 1);
    const level = levelOf(name);
    return {
      label,
      role,
      x: Float64Array.of(isAcross[name] ? -end : 0, end),
      y: Float64Array.of(level, level),
    };
  };
  return {
    title: 'Where each width is measured',
    x: { label: 'distance from the axis', unit, domain: [-reach * w, reach * w] },
    y: { label: 'irradiance over its peak', unit: '', domain: [0, 1.05] },
    series: [
      { label: 'Gaussian', role: 'main', x, y: x.map((at) => Math.exp(-2 * (at / w) ** 2)) },
      chord('deviation', 'reference', 'σ'),
      chord('fullWidth', 'third', 'FWHM'),
      chord('diameterAtE', 'reference', '1/e diameter'),
      chord('diameter', 'second', '1/e² diameter'),
    ],
    summary: `The 1/e² diameter is measured where the irradiance has fallen to ${percent(levelOf('diameter'))} of its peak, the 1/e diameter at ${percent(levelOf('diameterAtE'))}, the full width at half maximum at 50\u202f%, and σ, from the axis, at ${percent(levelOf('deviation'))}. Circles of these sizes hold ${percent(energyInside('diameter'))}, ${percent(energyInside('diameterAtE'))}, ${percent(energyInside('fullWidth'))} and ${percent(energyInside('deviation'))} of the power.`,
  };
}
