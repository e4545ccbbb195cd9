import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { keepAlternative } from '../../lib/studies/alternatives.ts';
import { withRequirement } from '../../lib/studies/requirements.ts';
import { stepSaid } from '../../notebooks/stepWords.ts';
import { line } from '../studies/ownOnes.ts';

const start = initialState(designGraph);
const said = (now: Parameters<typeof stepSaid>[2]) => stepSaid(designGraph, start, now);
const set = (patch: Record<string, unknown>) => applyPatch(designGraph, start, patch);

describe('what a step back changes', () => {
  it('names inputs, and of many how many more', () => {
    expect(said(set({ 'lens.focalLength': 0.15 }))).toBe('focal length');
    const four = {
      'lens.focalLength': 0.15,
      'workpiece.z': 1e-4,
      'expander.magnification': 2.1,
      'laser.beamDiameter': 4e-3,
    };
    expect(said(set(four))).toMatch(/^[^,]+, [^,]+ and 2 more$/);
  });

  it('names what is kept with the design', () => {
    const asked = withRequirement(start, designGraph.quantities.get('spot.width')!, {
      atMost: 1,
      reason: '',
    });
    expect(said(asked)).toBe('what is asked of the design');
    expect(said(keepAlternative(start, 'Wide'))).toBe('kept designs');
    expect(said({ ...start, name: 'Rain' })).toBe('name');
    expect(said({ ...start, about: 'It rains.' })).toBe('notes');
    const studies = {
      ...noStudies,
      ownLines: [line('twice', '2 * lens.focalLength')],
      texts: { purpose: 'Rain.' },
    };
    expect(said({ ...start, studies })).toBe('own numbers and own words');
    const page = { id: 'a', title: 'A', blocks: [] };
    expect(said({ ...start, studies: { ...noStudies, ownDocuments: [page] } })).toBe('own pages');
    const lecture = { id: 'lecture1', title: 'A', steps: [] };
    expect(said({ ...start, studies: { ...noStudies, lectures: [lecture] } })).toBe('lectures');
    expect(said({ ...set({ 'lens.focalLength': 0.15 }), name: 'Rain' })).toBe('focal length and name');
  });

  it('says so where nothing that is shown differs', () => {
    expect(said({ ...start, studies: noStudies })).toBe('nothing that is shown');
  });
});
