import { light, unshapedPeak, workpieceZ } from '../../lib/design/focus.ts';
import { niceEnd } from '../../lib/numerics/niceEnd.ts';
import { type Cut, decentredCut, rimsOf } from '../../lib/optics/decentredCut.ts';
import type { Light } from '../../lib/optics/light.ts';
import { largest, micro, perSquareCentimetre } from '../columns.ts';
import { type FigureSpec, figure, type MarkSpec } from '../document.ts';
import { fluenceText, lengthText } from '../shortTexts.ts';
import { missed, missedCut } from './missedMiddle.ts';

interface Drawn {
  readonly title: string;
  readonly light: Light;
  readonly unit: number;
  readonly z: number;
  /** Rims told in numbers. */
  readonly told?: boolean;
  readonly said: string;
}

function rimMarks(cut: Cut, unit: number): MarkSpec[] {
  const { left, right } = rimsOf(cut);
  return [left, right].map(({ x, irradiance }) => ({
    kind: 'point',
    x: micro * x,
    y: irradiance * unit * perSquareCentimetre,
    label: fluenceText(irradiance * unit),
    role: 'reference',
    above: true,
  }));
}

function drawCut({ title, light, unit, z, told = false, said }: Drawn): FigureSpec {
  const off = missedCut(light, z);
  const centred = decentredCut(light, z, 0);
  const fluence = ({ irradiance }: Cut) => irradiance.map((value) => value * unit * perSquareCentimetre);
  const [y, even] = [fluence(off), fluence(centred)];
  const end = micro * off.x.at(-1)!;
  return {
    title,
    x: { label: 'distance from the axis, to the right', unit: 'µm', domain: [-end, end] },
    y: { label: 'fluence per pulse', unit: 'J/cm²', domain: [0, niceEnd(1.2 * largest(y, even))] },
    series: [
      {
        label: `beam ${lengthText(missed)} too far right on the plate`,
        role: 'main',
        x: off.x.map((at) => micro * at),
        y,
      },
      {
        label: 'beam in the middle of the plate',
        role: 'reference',
        x: centred.x.map((at) => micro * at),
        y: even,
      },
    ],
    ...(told ? { marks: rimMarks(off, unit) } : {}),
    summary: said,
  };
}

const from = { light, unit: unshapedPeak, z: workpieceZ };

/** The cut in the focal plane, wherever the workpiece stands. */
export const inFocusFigure = figure({
  id: 'cut-in-focus',
  from,
  view: ({ light, unit }): FigureSpec =>
    drawCut({
      title: 'Across the spot, in the focus',
      light,
      unit,
      z: 0,
      said: 'Both curves are alike to the left and to the right, also the one of the beam that misses the middle.',
    }),
});

/** The cut where the workpiece stands: which side is higher is to be read. */
export const defocusedFigure = figure({
  id: 'cut-defocused',
  from,
  view: ({ light, unit, z }): FigureSpec =>
    drawCut({
      title: `Across the spot, ${lengthText(Math.abs(z))} ${z < 0 ? 'before' : 'behind'} the focus`,
      light,
      unit,
      z,
      said: 'The beam in the middle of the plate gives two rims of one height. The one that misses the middle does not.',
    }),
});

/** The same with both rims in numbers. */
export const rimsFigure = figure({
  id: 'rims',
  from,
  view: ({ light, unit, z }): FigureSpec => {
    const { left, right } = rimsOf(missedCut(light, z));
    return drawCut({
      title: 'The two rims in numbers',
      light,
      unit,
      z,
      told: true,
      said: `The left rim reaches ${fluenceText(left.irradiance * unit)}, the right one ${fluenceText(right.irradiance * unit)}.`,
    });
  },
});

/** The other side of the focus, as far from it. */
export const otherSideFigure = figure({
  id: 'cut-other-side',
  from,
  view: ({ light, unit, z }): FigureSpec =>
    drawCut({
      title: `Across the spot, ${lengthText(Math.abs(z))} ${z < 0 ? 'behind' : 'before'} the focus`,
      light,
      unit,
      z: -z,
      told: true,
      said: 'On the other side of the focus the other rim is the brighter one.',
    }),
});
