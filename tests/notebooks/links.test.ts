import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { hasValue, valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { matching } from '../../notebooks/matching.ts';
import type { SetsLink } from '../../notebooks/prose.ts';
import { slotPieces } from '../../notebooks/slotPieces.ts';
import { expectClose } from '../close.ts';
import { tables } from '../design/files.ts';
import { outcomesOf, read, type Values } from './designOutcomes.ts';

describe('links in the text', () => {
  const proses = matching.blocks.flatMap((block) => ('prose' in block ? [block.prose] : []));
  const links = proses.flatMap((prose) =>
    prose.slots.filter((slot): slot is SetsLink => slot.slot === 'link'),
  );
  const open = { 'plate.stop': 'open' };
  const lenses = { 'expander.kind': 'lenses', 'expander.separation': 60e-3 };
  const designs: readonly Values[] = [
    {},
    open,
    { 'expander.magnification': 1.4 },
    lenses,
    { ...open, ...lenses },
    { 'lens.plateDistance': 0.3, 'workpiece.z': 50e-6, 'wish.spotWidth': 50e-6 },
  ];

  it('that would leave the range of an input say so beside them, and those that need what is not there', () => {
    const link = (text: string) => links.find((one) => one.text === text)!;
    const said = (text: string, design: Values) => {
      const outcomeOf = outcomesOf(design);
      return slotPieces(link(text), ({ id }) => outcomeOf(id)).map((piece) => piece.text);
    };
    const tooWide = { 'laser.beamDiameter': 0.15e-3 };
    expect(said('equal diameters', {})).toEqual(['equal diameters']);
    expect(said('equal diameters', tooWide)).toEqual([
      'equal diameters',
      ' (magnification 66.67 would be needed; allowed is from 0.05 to 50)',
    ]);
    expect(said('the flattest focus', tooWide)[1]).toMatch(
      /^ \(magnification 6[\d.]+ would be needed; allowed/,
    );
    expect(said('the darkest centre', { 'plate.apertureDiameter': 12.5e-3 })).toEqual([
      'the darkest centre',
      ' (not possible here)',
    ]);
    expect(said('half a wave', tooWide)).toEqual(['half a wave']);
  });

  /** The patch of a link, undefined where a value it needs is absent: the page then does not offer it. */
  function patchOf(link: SetsLink, design: Values): Patch | undefined {
    const outcomeOf = outcomesOf(design);
    const entries = Object.entries(link.from).map(([key, { id }]) => [key, outcomeOf(id)] as const);
    if (!entries.every(([, outcome]) => hasValue(outcome))) return undefined;
    return link.patch(Object.fromEntries(entries.map(([key, outcome]) => [key, valueOrThrow(outcome)])));
  }

  it('all change the design as it allows', () => {
    expect(links.length).toBeGreaterThan(8);
    for (const link of links) {
      let offered = 0;
      for (const design of designs) {
        const patch = patchOf(link, design);
        if (!patch) continue;
        offered += 1;
        applyPatch(designGraph, applyPatch(designGraph, initialState(designGraph), design), patch);
      }
      expect(offered, link.text).toBeGreaterThan(1);
    }
  });

  it.each([
    ['M² = 1', 1],
    ['M² = 1.2', 1.2],
  ])("'%s' counts, though M² was that of a caustic", (text, ratio) => {
    const link = links.find((one) => one.text === text)!;
    const measured = { 'laser.ratioSource': 'measured', 'laser.causticTable': tables[1] };
    expect(read(measured)('laser.usedBeamPropagationRatio')).toBeGreaterThan(1.3);
    expect(read({ ...measured, ...patchOf(link, measured) })('laser.usedBeamPropagationRatio')).toBe(ratio);
  });

  for (const [text, id] of [
    ['equal diameters', 'match.equalRatio'],
    ['the darkest centre', 'match.darkRatio'],
    ['the flattest focus', 'match.flattestRatio'],
  ] as const) {
    it(`'${text}' leads there, from a beam behind two lenses as well`, () => {
      const link = links.find((one) => one.text === text)!;
      for (const design of [open, { ...open, ...lenses }]) {
        const value = read({ ...design, ...patchOf(link, design) });
        const ratio = value('match.stepRatio') / value(id);
        expectClose(ratio, 1, { absolute: 1e-12, source: 'what the link says' });
      }
    });
  }
});
