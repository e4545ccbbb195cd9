import { designGraph } from '../../lib/design/design.ts';
import { isInput } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { listed } from '../shortTexts.ts';
import { hasFile } from './measuredFiles.ts';
import { type OwnTextName, ownTexts, useNames } from './section.ts';
import { usesOf } from './uses.ts';

type Design = Omit<DesignState, 'revision'>;

/** A line of what will stand in the rationale. */
export interface OutlineLine {
  readonly heading: string;
  readonly says: string;
  /** The person could still do something for it. */
  readonly open: boolean;
}

/** What the rationale of this design will hold, and what is still missing from it. */
export function outlineOf(design: Design): OutlineLine[] {
  const { texts, requirements, alternatives } = design.studies ?? noStudies;
  const written = (name: OwnTextName) => (texts[name] ?? '').trim() !== '';
  const reasons = (['step', 'plane', 'fluence', 'spacing'] as const).filter((name) => !written(name));
  const files = designGraph.order.filter(isInput).filter((input) => hasFile(input, design.inputs)).length;
  const uses = usesOf(design);
  return [
    line(ownTexts.purpose.heading, written('purpose'), 'in your words', 'not written yet'),
    line(
      'Requirements',
      requirements.length > 0,
      counted(requirements.length, 'requirement'),
      'none put yet',
    ),
    line(
      'Beam and plate',
      files > 0,
      `${counted(files, 'measured file')} in the design`,
      'all typed, nothing measured',
    ),
    line(
      'Why this design',
      reasons.length === 0,
      'the facts, and your reasons for all four',
      `the facts; no reason of yours for ${listed(reasons.map((name) => ownTexts[name].heading.toLowerCase()))}`,
    ),
    line(
      'Alternatives',
      alternatives.length > 0,
      `${counted(alternatives.length, 'kept design')} beside this one`,
      'none kept',
    ),
    { heading: 'Planes, process and heat', says: 'from the pages', open: false },
    line('Uses', uses.length > 0, listed(uses.map((use) => useNames[use])), 'none chosen'),
    line(
      ownTexts.risks.heading,
      written('risks'),
      'in your words, and all cautions',
      'all cautions; nothing of yours',
    ),
    line(
      ownTexts.unchecked.heading,
      written('unchecked'),
      'in your words, and what the design tells',
      'what the design tells; nothing of yours',
    ),
    { heading: 'Appendix', says: 'all inputs, formulas and sources', open: false },
  ];
}

function line(heading: string, done: boolean, says: string, otherwise: string): OutlineLine {
  return { heading, says: done ? says : otherwise, open: !done };
}

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}

/** In a sentence, what could still be written. */
export function outlineSaid(lines: readonly OutlineLine[]): string {
  const open = lines.filter((one) => one.open);
  if (open.length === 0) return 'Nothing is missing from the write-up.';
  return `${open.length === 1 ? 'One part' : `${open.length} parts`} could still be filled: ${listed(open.map(({ heading }) => heading.charAt(0).toLowerCase() + heading.slice(1)))}.`;
}
