import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import type { Requirement } from '../../lib/graph/studies.ts';
import {
  boundsText,
  failedFirst,
  howFarText,
  longWorkSaid,
  markText,
  requirementSaid,
  requirementsSaid,
  standingOf,
  worstOf,
} from '../../notebooks/requirementWords.ts';

const width = designGraph.quantities.get('spot.width')!;
const asked = (bounds: Partial<Requirement>): Requirement => ({
  id: 'spot.width',
  unit: 'm',
  reason: '',
  ...bounds,
});
const plain = (text: string) => text.replaceAll('\u202f', ' ');
const both = asked({ atLeast: 1e-5, atMost: 2e-5 });
const missing = (kind: 'waiting' | 'stopped' | 'outside'): Outcome => ({
  problem: { kind, message: 'The step is outside the stop.', parts: {}, at: 'spot.width' },
});
const far = (requirement: Requirement, outcome: Outcome | undefined) =>
  plain(howFarText(standingOf(requirement, width, outcome)));

describe('a requirement in words', () => {
  it('names its bounds', () => {
    const texts = [
      asked({ atLeast: 1e-5 }),
      asked({ atMost: 2.5e-5 }),
      both,
      asked({ atLeast: 1e-5, atMost: 1e-5 }),
    ];
    expect(texts.map((one) => plain(boundsText(one, width)))).toEqual([
      'at least 10 µm',
      'at most 25 µm',
      'from 10 µm to 20 µm',
      '10 µm exactly',
    ]);
    expect(plain(boundsText(asked({ atMost: 2e-5 })))).toBe('at most 20 µm');
  });

  it('tells how far a value is off, and what is to spare', () => {
    expect(far(both, { value: 8e-6 })).toBe('2 µm too little');
    expect(far(both, { value: 2.05e-5 })).toBe('0.5 µm too much');
    expect(far(both, { value: 1.9e-5 })).toBe('1 µm to spare');
    expect(far(both, { value: 1e-5 })).toBe('on the bound');
    expect(far(asked({ atMost: 2e-5 }), { value: 2.05e-5 })).toBe('0.5 µm too much');
  });

  it('says why it is not known', () => {
    expect(far(both, undefined)).toBe('still being worked out');
    expect(far(both, missing('waiting'))).toBe('still being worked out');
    expect(far(both, missing('stopped'))).toBe('its computation was stopped');
    expect(far(both, missing('outside'))).toBe('The step is outside the stop');
    expect(far(both, { value: [1] })).toBe('it is no single number');
    expect(howFarText(standingOf(both, undefined, { value: 1 }))).toBe('no such number in this design');
    expect(standingOf(both, undefined, { value: 1.5e-5 }).verdict).toBe('not known');
    expect(standingOf(both, width, { value: 1.5e-5 }, true)).toMatchObject({
      verdict: 'not known',
      outcome: undefined,
    });
    expect(standingOf({ ...both, unit: 'J' }, width, { value: 1.5e-5 }).verdict).toBe('not known');
  });

  it('is told in full, with its reason and what the model says', () => {
    const said = (reason: string, outcome: Outcome) =>
      plain(requirementSaid(standingOf({ ...both, reason }, width, outcome)));
    expect(said('', { value: 1.9e-5 })).toBe('Required: from 10 µm to 20 µm. Met: 1 µm to spare.');
    expect(said('the tool path.', { value: 2.1e-5 })).toBe(
      'Required: from 10 µm to 20 µm, because: the tool path. Not met: 1 µm too much.',
    );
    expect(said('Because it must fit', { value: 2.1e-5 })).toContain('20 µm, Because it must fit. Not met');
    expect(said('', { value: 1.9e-5, note: 'The angles are wide.' })).toBe(
      'Required: from 10 µm to 20 µm. Met: 1 µm to spare. But: The angles are wide.',
    );
    expect(plain(markText(standingOf(both, width, { value: 2.1e-5 })))).toBe(
      'required: from 10 µm to 20 µm, not met, 1 µm too much',
    );
  });

  it('counts what is met', () => {
    expect(requirementsSaid([])).toBe('Nothing is asked of the design yet.');
    expect(requirementsSaid(['met'])).toBe('The one requirement is met.');
    expect(requirementsSaid(['not known'])).toBe('The one requirement is not known.');
    expect(requirementsSaid(['met', 'met'])).toBe('All 2 requirements are met.');
    expect(requirementsSaid(['met', 'not met', 'not met', 'not known'])).toBe(
      'Of 4 requirements 2 are not met, 1 is not known and 1 is met.',
    );
    expect(requirementsSaid(['not met', 'met'])).toBe('Of 2 requirements 1 is not met and 1 is met.');
    expect(requirementsSaid(['not known', 'not known'])).toBe('Of 2 requirements 2 are not known.');
  });

  it('stands first where it fails, and among equals where it was asked', () => {
    const order = (['met', 'not known', 'not met', 'met', 'not met'] as const).map((verdict, i) => ({
      verdict,
      i,
    }));
    expect(failedFirst(order).map(({ i }) => i)).toEqual([2, 4, 1, 0, 3]);
  });

  it('of many has the worst for all, and names the designs for which work is left', () => {
    expect(worstOf([])).toBe('met');
    expect(worstOf(['met', 'not known', 'met'])).toBe('not known');
    expect(worstOf(['not known', 'not met', 'met'])).toBe('not met');
    expect(longWorkSaid(['today', 'Wide'])).toBe(
      'Something that is asked takes a longer computation for ‘today’ and ‘Wide’.',
    );
  });
});
