import { designGraph } from '../../lib/design/design.ts';
import { light, unshapedPeak } from '../../lib/design/focus.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { readRadii } from '../../lib/graph/radiiText.ts';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import type { Light } from '../../lib/optics/light.ts';
import { roundProfileAt } from '../../lib/optics/roundSpot.ts';
import type { CommandIo } from './commandIo.ts';
import { readLengths } from './lengths.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { oneOf, readOptions, required } from './options.ts';

/**
 * `profile`: CSV of irradiance and fluence against radius in one or several planes, a row for each plane and radius, or
 * with `--layout columns` a row for each radius and a column of fluence for each plane.
 */
export function profile(args: readonly string[], io: CommandIo): string {
  const options = readOptions(args, [...designOptions, 'z', 'radii', 'layout']);
  const radii = readRadii(required(options, 'radii', '"0:20:101 um"'));
  const planes = options.all('z').flatMap(readLengths);
  const layout = oneOf(options, 'layout', ['rows', 'columns']);
  const state = openDesign(options, io);
  if (planes.length === 0) planes.push(state.inputs['workpiece.z'] as number);
  const outcomes = createEngine(designGraph, state.inputs).evaluate([light.id, unshapedPeak.id]);
  const usedLight = valueOrThrow(outcomes[light.id]!) as Light;
  const peakFluence = valueOrThrow(outcomes[unshapedPeak.id]!) as number;
  const reach = radii.reduce((largest, radius) => Math.max(largest, radius), 0);
  const curves = planes.map((z): Curve => {
    const shape = roundProfileAt(usedLight, z, reach);
    return { z, irradiance: radii.map((radius) => Math.max(0, valueAt(shape, radius))) };
  });
  const write = layout === 'rows' ? rowsOf : columnsOf;
  return `${write(radii, curves, peakFluence).join('\n')}\n`;
}

/** Relative irradiance at the radii asked for, in one plane. */
interface Curve {
  readonly z: number;
  readonly irradiance: Float64Array;
}

function rowsOf(radii: Float64Array, curves: readonly Curve[], peakFluence: number): string[] {
  const lines = curves.flatMap(({ z, irradiance }) =>
    Array.from(radii, (radius, i) => [z, radius, irradiance[i]!, irradiance[i]! * peakFluence].join(',')),
  );
  return ['z_m,radius_m,relative_irradiance,fluence_J_m2', ...lines];
}

function columnsOf(radii: Float64Array, curves: readonly Curve[], peakFluence: number): string[] {
  const head = ['radius_m', ...curves.map(({ z }) => `fluence_J_m2 at z_m=${z}`)];
  const lines = Array.from(radii, (radius, i) =>
    [radius, ...curves.map(({ irradiance }) => irradiance[i]! * peakFluence)].join(','),
  );
  return [head.join(','), ...lines];
}
