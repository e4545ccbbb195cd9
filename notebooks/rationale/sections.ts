import type { DesignState } from '../../lib/graph/state.ts';
import type { Block } from '../document.ts';
import { limitSaid } from '../hatchSentences.ts';
import { profileSaid } from '../matchingSentences.ts';
import { prose } from '../prose.ts';
import { aboveThresholdSaid } from '../thresholdSentences.ts';
import { cautionBlocksFor } from './cautionsPart.ts';
import { measuredBeamBlocks, planesSection, plateSection, processSection } from './otherSections.ts';
import { reasonSections, reasonsWithoutRipples } from './reasonSections.ts';
import type { Section } from './section.ts';
import { useSections } from './useSections.ts';
import { usesOf } from './uses.ts';

type Design = Omit<DesignState, 'revision'>;

/** The design in a few lines, behind what it is for. */
export const inShort: readonly Block[] = [
  {
    kind: 'prose',
    id: 'in-short',
    prose: prose`${profileSaid} ${aboveThresholdSaid} ${limitSaid}`,
  },
];

/** The parts made of blocks, in order: the reasons, planes, process, and the uses that count. */
export function sectionsFor(design: Design): {
  readonly reasons: readonly Section[];
  readonly rest: readonly Section[];
} {
  const uses = usesOf(design);
  const used = useSections.filter(({ use }) => use !== undefined && uses.includes(use));
  const reasons = uses.includes('ripples') ? [...reasonSections, plateSection] : reasonsWithoutRipples();
  return { reasons, rest: [planesSection, processSection, ...used] };
}

/** All blocks of documents that the rationale of this design is made of. */
export function blocksFor(design: Design): readonly Block[] {
  const { reasons, rest } = sectionsFor(design);
  return [
    ...inShort,
    ...measuredBeamBlocks,
    ...[...reasons, ...rest].flatMap(({ blocks }) => blocks),
    ...cautionBlocksFor(usesOf(design)),
  ];
}
