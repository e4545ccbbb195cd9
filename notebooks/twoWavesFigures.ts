import { plateBeamDiameter } from '../lib/design/expander.ts';
import { stepRatio } from '../lib/design/match.ts';
import { apertureDiameter, stepDiameter, stepPhase, stop } from '../lib/design/plate.ts';
import { amplitudeOverRadius, centreEnergy } from '../lib/design/twoWaves.ts';
import type { Quantity } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest, symmetric } from './columns.ts';
import { type FigureSpec, figure, type MarkSpec } from './document.ts';

const milli = 1e3;
const show = (quantity: Quantity, value: number) => shownValue(quantity, { value });
const amplitudeUnit = 'of the whole unclipped beam';
const radiusAxis = {
  label: 'distance from the axis',
  unit: '1/e² radii of the unshaped focus',
  domain: [-4, 4],
} as const;

/** The beam where it meets the plate, and what of it goes through the step. */
export const plateFigure = figure({
  id: 'beam-on-plate',
  from: {
    beam: plateBeamDiameter,
    step: stepDiameter,
    stop,
    aperture: apertureDiameter,
    energy: centreEnergy,
  },
  view: ({ beam, step, stop, aperture, energy }): FigureSpec => {
    const half = (diameter: number) => (diameter * milli) / 2;
    const reach = niceEnd(
      Math.max(1.6 * half(beam), 1.2 * half(step), stop === 'round' ? half(aperture) : 0),
    );
    const x = symmetric(reach, 401);
    const height = x.map((r) => Math.exp(-2 * (r / half(beam)) ** 2));
    const inside = height.map((value, i) => (Math.abs(x[i]!) <= half(step) ? value : Number.NaN));
    const stopMarks: MarkSpec[] =
      stop === 'round' ? edgeMarks(half(aperture), 'stop').filter(({ x = 0 }) => Math.abs(x) < reach) : [];
    return {
      title: 'The beam on the plate',
      x: { label: 'distance from the middle of the plate', unit: 'mm', domain: [-reach, reach] },
      y: { label: 'fluence', unit: 'of its peak on the plate', domain: [0, 1.1] },
      series: [
        { label: 'light through the step', role: 'band', x, y: x.map(() => 0), y2: inside },
        { label: 'the beam', role: 'main', x, y: height },
      ],
      marks: [...edgeMarks(half(step), 'edge of the step'), ...stopMarks],
      summary: `The beam is ${show(plateBeamDiameter, beam)} wide (1/e² diameter) and the step ${show(stepDiameter, step)}. Through the step goes ${show(centreEnergy, energy)} of the energy that arrives${stop === 'round' ? `; the stop is ${show(apertureDiameter, aperture)} wide` : ''}.`,
    };
  },
});

/** An edge on either side, named once. */
function edgeMarks(radius: number, label: string): MarkSpec[] {
  return [
    { kind: 'vertical', x: -radius, label: '', role: 'reference' },
    { kind: 'vertical', x: radius, label, role: 'reference' },
  ];
}

/** A column over the radius, on both sides of the axis. */
const bothSides = (values: Float64Array) => Float64Array.of(...values.toReversed(), ...values.subarray(1));
const radiiOf = (radius: Float64Array) =>
  Float64Array.of(...radius.toReversed().map((r) => 0 - r), ...radius.subarray(1));
const amount = (value: number) => formatQuantity(value, '1', '1', 3);

export const wavesFigure = figure({
  id: 'two-waves',
  from: { waves: amplitudeOverRadius, ratio: stepRatio },
  view: ({ waves, ratio }): FigureSpec => {
    const x = radiiOf(waves.radius);
    const [whole, centre] = [waves.whole[0]!, waves.centre[0]!];
    return {
      title: 'Two waves in the focus',
      x: radiusAxis,
      y: { label: 'amplitude', unit: amplitudeUnit, domain: [-0.2, 1.1] },
      series: [
        { label: 'the whole beam', role: 'main', x, y: bothSides(waves.whole) },
        { label: 'its middle alone', role: 'second', x, y: bothSides(waves.centre) },
      ],
      marks: [{ kind: 'horizontal', y: 0, label: '', role: 'reference' }],
      summary: `As if there were no step: on the axis the whole beam has an amplitude of ${amount(whole)}; the light through the middle alone, at a step ratio of ${amount(ratio)}, has one of ${amount(centre)} and a wider focus.`,
    };
  },
});

export const differenceFigure = figure({
  id: 'two-waves-left',
  from: { waves: amplitudeOverRadius, phase: stepPhase },
  view: ({ waves, phase }): FigureSpec => {
    const x = radiiOf(waves.radius);
    const [taken, left, irradiance] = [waves.taken[0]!, waves.left[0]!, waves.irradiance[0]!];
    const columns = [waves.whole, waves.taken, waves.left, waves.irradiance];
    const lowest = largest(...columns.map((column) => column.map((value) => 0 - value)));
    return {
      title: 'What the step takes away, and what is left',
      x: radiusAxis,
      y: {
        label: 'amplitude, and irradiance',
        unit: amplitudeUnit,
        domain: [0 - niceEnd(lowest), niceEnd(largest(...columns))],
      },
      series: [
        { label: 'the whole beam', role: 'second', x, y: bothSides(waves.whole) },
        { label: 'taken away by the step', role: 'third', x, y: bothSides(waves.taken) },
        { label: 'what is left', role: 'main', x, y: bothSides(waves.left) },
        { label: 'irradiance of what is left', role: 'reference', x, y: bothSides(waves.irradiance) },
      ],
      marks: [{ kind: 'horizontal', y: 0, label: '', role: 'reference' }],
      summary: `A step of ${show(stepPhase, phase)} takes ${amount(taken)} away on the axis in the focus and leaves an amplitude of ${amount(left)} in step with the whole beam; the irradiance there is ${amount(irradiance)}.`,
    };
  },
});
