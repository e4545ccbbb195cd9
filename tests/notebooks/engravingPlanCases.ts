import { fine, none } from './engravingCases.ts';
import type { Case } from './sentenceCases.ts';

const plan = (value: (id: string) => number) =>
  value('engraving.plan') as unknown as { needed: number; layers: number; depth: number };

/** Cases of the sentences about a plan for a depth, the plain beam's best, and fume. */
export const engravingPlanCases: readonly Case[] = [
  {
    says: 'fumeKindSaid',
    text: /^That of stainless steel holds chromium and nickel, .* work with extraction/,
    truth: () => true,
  },
  {
    says: 'fumeKindSaid',
    design: { 'workpiece.material': 'copper' },
    text: /^That of copper brings on metal fume fever/,
    truth: () => true,
  },
  {
    says: 'fumeKindSaid',
    design: { 'workpiece.material': 'titanium' },
    text: /^What it holds is what the material holds, /,
    truth: () => true,
  },
  {
    says: 'engravingPlanSaid',
    text: /^A mean depth of 20\sµm is reached after 0\.863 layers\. One whole layer comes to 23\.2\sµm and takes .* for the field\. The layers that are set, 10, are more\.$/,
    truth: (value) => plan(value).layers === 1 && plan(value).depth >= 20e-6,
  },
  {
    says: 'engravingPlanSaid',
    design: fine,
    text: /whole ones come to .* and take .* The layers that are set, 10, are fewer\.$/,
    truth: (value) => plan(value).layers > 10,
  },
  {
    says: 'engravingPlanSaid',
    design: { 'engraving.layers': 1 },
    text: /The plan is what is set: one whole layer\.$/,
    truth: (value) => plan(value).layers === 1,
  },
  {
    says: 'engravingBestSaid',
    text: /^At its own best the beam without the plate would run at 0\.906\sµJ, a peak of 0\.991\sJ\/cm², with lines 4\.28\sµm apart; its first layer then removes 3\.8\d?\sµm³\/µJ against 1\.74\sµm³\/µJ with the plate as it is set: per energy the plate removes less\.$/,
    truth: (value) =>
      value('engraving.volumePerEnergy') < value('unshaped.engraving.bestVolumePerEnergy') &&
      Math.abs(value('engraving.volumePerEnergy') / value('removal.volumePerEnergy') - 1) < 1e-3,
  },
  {
    says: 'engravingBestSaid',
    pins: { 'engraving.volumePerEnergy': 4e-12, 'unshaped.engraving.bestVolumePerEnergy': 3e-12 },
    text: /removes 3\sµm³\/µJ against 4\sµm³\/µJ with the plate as it is set: per energy the plate removes more\.$/,
    truth: (value) => value('engraving.volumePerEnergy') > value('unshaped.engraving.bestVolumePerEnergy'),
  },
  {
    says: 'engravingBestSaid',
    pins: { 'engraving.volumePerEnergy': 3e-12, 'unshaped.engraving.bestVolumePerEnergy': 3e-12 },
    text: /: per energy as much\.$/,
    truth: (value) => value('engraving.volumePerEnergy') === value('unshaped.engraving.bestVolumePerEnergy'),
  },
  {
    says: 'engravingBestSaid',
    design: none,
    text: /against 0\sµm³\/µJ with the plate as it is set, which is nothing\.$/,
    truth: (value) => value('engraving.volumePerEnergy') === 0,
  },
  {
    says: 'fumeSaid',
    text: /^All that is removed, [\d.]+\sg\/h by the plan for the depth wanted, goes into the air/,
    truth: (value) =>
      Math.abs(
        value('engraving.planMassRate') / value('engraving.planVolumeRate') / value('heat.density') - 1,
      ) < 1e-12,
  },
  {
    says: 'fumeSaid',
    design: none,
    text: /^All that is removed goes into the air and onto surfaces/,
    truth: (value) => Number.isNaN(value('engraving.planMassRate')),
  },
];
