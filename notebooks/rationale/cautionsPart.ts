import type { Block } from '../document.ts';
import { generalCautions } from '../generalCautions.ts';
import { grooves } from '../grooves.ts';
import { matching } from '../matching.ts';
import type { PaperBlock } from '../paper/paper.ts';
import { writtenBlock } from '../paper/writtenBlock.ts';
import { ripples } from '../ripples.ts';
import { scaleUp } from '../scaleUp.ts';
import { threshold } from '../threshold.ts';
import { throughput } from '../throughput.ts';
import { blocksOf, type UseName } from './section.ts';
import type { ToldDesign } from './told.ts';

/** Cautions that hold for every design, with the numbers of this one. */
const always: readonly Block[] = [
  ...blocksOf(matching, 'plate-out', 'paraxial', 'x-rays'),
  ...blocksOf(threshold, 'safety-table', 'laser-safety'),
  ...blocksOf(throughput, 'heat-caution'),
];

/** Cautions that belong to a use. */
const ofUse: Readonly<Partial<Record<UseName, readonly Block[]>>> = {
  ripples: blocksOf(ripples, 'medical-and-food'),
  grooves: blocksOf(grooves, 'groove-left-out'),
  engraving: blocksOf(grooves, 'engraving-fume'),
  sheet: blocksOf(grooves, 'sheet-left-out'),
  scaleUp: blocksOf(scaleUp, 'scale-up-x-rays', 'scale-up-fume'),
};

/** The blocks of the documents that say what can go wrong, for these uses. */
export function cautionBlocksFor(uses: readonly UseName[]): readonly Block[] {
  return [...always, ...uses.flatMap((use) => ofUse[use] ?? [])];
}

/** What is said by the cautions of the documents, with numbers, is not said in general again. */
const saidWithNumbers = ['Class 4 laser.', 'Taking the plate out', 'X-rays.', 'Fume and nanoparticles'];

/** All cautions: those with the numbers of the design first, then those that hold anywhere. */
export function cautionBlocks(told: ToldDesign, uses: readonly UseName[]): PaperBlock[] {
  const rest = generalCautions.filter(([about]) => !saidWithNumbers.includes(about));
  return [
    ...cautionBlocksFor(uses).flatMap((block) => writtenBlock(block, told)),
    ...rest.map(
      ([about, text]): PaperBlock => ({
        kind: 'paragraph',
        role: 'caution',
        runs: [{ text: about, strong: true }, { text: ` ${text}` }],
      }),
    ),
  ];
}
