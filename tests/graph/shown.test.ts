import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { structureText } from '../../lib/graph/structureText.ts';
import { images } from '../design/files.ts';
import { drawCaustic, isoPlaces, wideBeam } from '../measured/syntheticCaustic.ts';

const caustic = drawCaustic(wideBeam);
const inputs = {
  ...designGraph.initial,
  'laser.beamImage': images[0],
  'laser.causticTable': caustic,
};
const ids = [...designGraph.quantities.keys()];
const outcomes = createEngine(designGraph, inputs).evaluate(ids);
const shown = (id: string) =>
  shownValue(designGraph.quantities.get(id)!, outcomes[id]!).replaceAll('\u202f', ' ');

describe('what is shown of a value that is no single number', () => {
  it.each([
    ['plate.zones', 'radius 5 mm: 0.5 waves, radius 7 mm: 0 waves'],
    ['focus.light', '1030 nm, beam of 10 mm, lens of 100 mm'],
    ['match.specialRatios', 'dark none, flattest 1.105'],
    ['spot.blurredKernel', /^\d+ radii × \d+ places on the plate$/],
    ['spot.profile', /^profile: \d+ radii up to \d+(\.\d+)? µm$/],
    ['unshaped.spot.profile', /^profile: \d+ radii up to \d+(\.\d+)? µm$/],
    ['sensitivity.morePhaseProfile', /^profile: \d+ radii up to \d+(\.\d+)? µm$/],
    ['spot.peak', /^irradiance 0\.\d+, radius \d+(\.\d+)? [µn]m$/],
    ['laser.beamImage', 'round, 90 × 84 pixels'],
    ['laser.measuredBeam', /^0\.\d+ mm × 0\.\d+ mm$/],
    ['laser.causticTable', new RegExp(`, ${isoPlaces.length} places$`)],
    ['laser.measuredCaustic', /^waist position .*, waist diameter .*, beam propagation ratio 1\.\d+/],
    ['expander.lensBeam', /^\d+(\.\d+)? mm wide, curvature /],
    ['explain.edgesPerStep', '1, 1.4'],
    ['explain.zonesPerStep', '2 entries (outer, phase)'],
    ['rule.family', '33 entries (defocus, dip, kind)'],
    ['laser.imagePreview', /^\d+ × \d+ values$/],
  ])('%s', (id, text) => {
    if (typeof text === 'string') expect(shown(id)).toBe(text);
    else expect(shown(id)).toMatch(text);
  });

  it('a plate without a stop has no last edge', () => {
    const open = createEngine(designGraph, { ...inputs, 'plate.stop': 'open' });
    const zones = designGraph.quantities.get('plate.zones')!;
    const text = shownValue(zones, open.evaluate([zones.id])[zones.id]!);
    expect(text.replaceAll('\u202f', ' ')).toBe('radius 5 mm: 0.5 waves, beyond it: 0 waves');
  });

  it('counts what it says it counts', () => {
    const { value } = outcomes['spot.profile'] as { value: { nodes: Float64Array } };
    expect(shown('spot.profile')).toContain(`profile: ${value.nodes.length} radii`);
  });

  it.each(ids.filter((id) => hasValue(outcomes[id]!)))('%s is shown in words a line can hold', (id) => {
    expect(shown(id)).not.toMatch(/structured|\[object|undefined|null|NaN|[{}]/);
    expect(shown(id).length).toBeLessThan(170);
  });

  it('names parts in words where nothing else is known', () => {
    expect(structureText({ outerEdge: [1], plan: 'x' }, 'none')).toBe('parts: outer edge, plan');
    expect(structureText(new Float64Array(7), 'm')).toBe('7 numbers');
    expect(structureText([], 'none')).toBe('0 entries');
  });
});
