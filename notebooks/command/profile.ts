import { designGraph } from '../../lib/design/design.ts';
import { light, unshapedPeak } from '../../lib/design/focus.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { readRadii } from '../../lib/graph/radiiText.ts';
import { parseQuantity } from '../../lib/graph/units.ts';
import { valueAt } from '../../lib/numerics/panelledFunction.ts';
import type { Light } from '../../lib/optics/light.ts';
import { roundProfileAt } from '../../lib/optics/roundSpot.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { readOptions, required } from './options.ts';

/** `profile`: CSV of irradiance and fluence against radius in one or several planes. */
export function profile(args: readonly string[], io: CommandIo): string {
  const options = readOptions(args, [...designOptions, 'z', 'radii']);
  const radii = readRadii(required(options, 'radii', '"0:20:101 um"'));
  const planes = options.all('z').map((text) => parseQuantity(text, 'm'));
  const state = openDesign(options, io);
  if (planes.length === 0) planes.push(state.inputs['workpiece.z'] as number);
  const outcomes = createEngine(designGraph, state.inputs).evaluate([light.id, unshapedPeak.id]);
  const usedLight = valueOrThrow(outcomes[light.id]!) as Light;
  const peakFluence = valueOrThrow(outcomes[unshapedPeak.id]!) as number;
  const reach = radii.reduce((largest, radius) => Math.max(largest, radius), 0);
  const lines = planes.flatMap((z) => {
    const shape = roundProfileAt(usedLight, z, reach);
    return Array.from(radii, (radius) => {
      const irradiance = Math.max(0, valueAt(shape, radius));
      return [z, radius, irradiance, irradiance * peakFluence].join(',');
    });
  });
  return `${['z_m,radius_m,relative_irradiance,fluence_J_m2', ...lines].join('\n')}\n`;
}
