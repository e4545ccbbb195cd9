import { describe, expect, it } from 'vitest';
import * as comparison from '../../notebooks/comparisonSentences.ts';
import * as coupon from '../../notebooks/couponSentences.ts';
import * as depth from '../../notebooks/depthSentences.ts';
import * as engraving from '../../notebooks/engravingSentences.ts';
import * as rule from '../../notebooks/familyRuleSentences.ts';
import * as family from '../../notebooks/familySentences.ts';
import * as fits from '../../notebooks/fitSentences.ts';
import * as groove from '../../notebooks/grooveSentences.ts';
import * as hatch from '../../notebooks/hatchSentences.ts';
import * as heat from '../../notebooks/heatSentences.ts';
import { incubationFitSaid } from '../../notebooks/incubationFit.ts';
import * as ladderFit from '../../notebooks/ladderFitSentences.ts';
import * as ladder from '../../notebooks/ladderSentences.ts';
import { irradiancesSaid, paraxialSaid, xRaysSaid } from '../../notebooks/limitSentences.ts';
import * as picture from '../../notebooks/markPictureSentences.ts';
import * as marks from '../../notebooks/markSentences.ts';
import * as reasons from '../../notebooks/matchingReasons.ts';
import * as sentences from '../../notebooks/matchingSentences.ts';
import * as measured from '../../notebooks/measuredSentences.ts';
import * as spots from '../../notebooks/measuredSpotSentences.ts';
import * as micrographs from '../../notebooks/micrographSentences.ts';
import * as micrographVerdicts from '../../notebooks/micrographVerdicts.ts';
import * as path from '../../notebooks/pathSentences.ts';
import * as planeMet from '../../notebooks/planeMetSentences.ts';
import * as planeVerdict from '../../notebooks/planeVerdictSentences.ts';
import type { Sentence } from '../../notebooks/prose.ts';
import * as removal from '../../notebooks/removalSentences.ts';
import * as ripples from '../../notebooks/rippleSentences.ts';
import * as rippleSeries from '../../notebooks/rippleSeriesSentences.ts';
import * as rippleUses from '../../notebooks/rippleUsesSentences.ts';
import * as rippleWindow from '../../notebooks/rippleWindowSentences.ts';
import * as scaleUpBest from '../../notebooks/scaleUpBestSentences.ts';
import * as scaleUpHeat from '../../notebooks/scaleUpHeatSentences.ts';
import * as scaleUpPlate from '../../notebooks/scaleUpPlateSentences.ts';
import * as scaleUpRow from '../../notebooks/scaleUpRowSentences.ts';
import * as scaleUp from '../../notebooks/scaleUpSentences.ts';
import * as section from '../../notebooks/sectionSentences.ts';
import * as sheet from '../../notebooks/sheetSentences.ts';
import { slotPieces } from '../../notebooks/slotPieces.ts';
import * as spotTable from '../../notebooks/spotTableSentences.ts';
import { takenAsGaussianSaid } from '../../notebooks/takenAsGaussian.ts';
import * as threshold from '../../notebooks/thresholdSentences.ts';
import * as uniformity from '../../notebooks/uniformitySentences.ts';
import { branchCounts } from './branchCounts.ts';
import { causticCases } from './causticCases.ts';
import { comparisonCases } from './comparisonCases.ts';
import { couponCases } from './couponCases.ts';
import { depthCases } from './depthCases.ts';
import { outcomesOf, read } from './designOutcomes.ts';
import { engravingCases } from './engravingCases.ts';
import { engravingPlanCases } from './engravingPlanCases.ts';
import { familyRuleCases } from './familyRuleCases.ts';
import { fitCases } from './fitCases.ts';
import { grooveCases } from './grooveCases.ts';
import { grooveEqualCases } from './grooveEqualCases.ts';
import { hatchCases } from './hatchCases.ts';
import { heatCases } from './heatCases.ts';
import { imageCases } from './imageCases.ts';
import { incubationCases } from './incubationCases.ts';
import { ladderCases } from './ladderCases.ts';
import { ladderFitCases } from './ladderFitCases.ts';
import { limitCases } from './limitCases.ts';
import { markCases } from './markCases.ts';
import { markPictureCases } from './markPictureCases.ts';
import { micrographCases } from './micrographCases.ts';
import { micrographComparedCases } from './micrographComparedCases.ts';
import { pathCases } from './pathCases.ts';
import { planeMetCases } from './planeMetCases.ts';
import { planeVerdictCases } from './planeVerdictCases.ts';
import { profileCases } from './profileCases.ts';
import { removalCases } from './removalCases.ts';
import { rippleCases } from './rippleCases.ts';
import { rippleSeriesCases } from './rippleSeriesCases.ts';
import { rippleWindowCases } from './rippleWindowCases.ts';
import { scaleUpBestCases } from './scaleUpBestCases.ts';
import { scaleUpCases } from './scaleUpCases.ts';
import { scaleUpLoadCases } from './scaleUpLoadCases.ts';
import { sectionCases } from './sectionCases.ts';
import { type Name, sentenceCases } from './sentenceCases.ts';
import { sheetCases } from './sheetCases.ts';
import { spotCases } from './spotCases.ts';
import { spotTableCases } from './spotTableCases.ts';
import { thresholdCases } from './thresholdCases.ts';
import { uniformityCases } from './uniformityCases.ts';
import { usablePlaneCases } from './usablePlaneCases.ts';

const isSentence = (entry: [string, unknown]): entry is [Name, Sentence] => typeof entry[1] === 'object';
const { rowParts: _parts, markForTable: _mark, ...pictureSentences } = picture;
const all = new Map(
  Object.entries({
    ...pictureSentences,
    ...sentences,
    ...reasons,
    ...measured,
    ...family,
    ...rule,
    ...depth,
    ...spots,
    ...spotTable,
    ...coupon,
    ...ladder,
    ...ladderFit,
    ...section,
    ...planeVerdict,
    ...planeMet,
    ...path,
    ...threshold,
    ...marks,
    ...fits,
    ...removal,
    ...ripples,
    ...rippleWindow,
    ...rippleSeries,
    ...rippleUses,
    ...groove,
    ...sheet,
    ...heat,
    ...micrographs,
    ...micrographVerdicts,
    ...hatch,
    ...comparison,
    ...scaleUp,
    ...scaleUpBest,
    ...scaleUpRow,
    ...scaleUpHeat,
    ...scaleUpPlate,
    ...uniformity,
    ...engraving,
    paraxialSaid,
    irradiancesSaid,
    xRaysSaid,
    takenAsGaussianSaid,
    incubationFitSaid,
  }).filter(isSentence),
);
const allCases = [
  ...sentenceCases,
  ...imageCases,
  ...causticCases,
  ...limitCases,
  ...profileCases,
  ...familyRuleCases,
  ...usablePlaneCases,
  ...depthCases,
  ...spotCases,
  ...spotTableCases,
  ...couponCases,
  ...ladderCases,
  ...ladderFitCases,
  ...sectionCases,
  ...planeVerdictCases,
  ...planeMetCases,
  ...pathCases,
  ...thresholdCases,
  ...markCases,
  ...markPictureCases,
  ...fitCases,
  ...incubationCases,
  ...removalCases,
  ...rippleCases,
  ...rippleWindowCases,
  ...rippleSeriesCases,
  ...grooveCases,
  ...grooveEqualCases,
  ...sheetCases,
  ...heatCases,
  ...micrographCases,
  ...micrographComparedCases,
  ...hatchCases,
  ...comparisonCases,
  ...scaleUpBestCases,
  ...scaleUpCases,
  ...scaleUpLoadCases,
  ...uniformityCases,
  ...engravingCases,
  ...engravingPlanCases,
];
const reached = new Map<Name, Set<string>>();

describe('every branch says what is so', () => {
  for (const { says, design, pins, text, truth } of allCases) {
    it(`${says}: ${text.source}`, () => {
      const outcomeOf = outcomesOf(design, pins);
      const sentence = all.get(says)!;
      const pieces = slotPieces(sentence, (quantity) => outcomeOf(quantity.id));
      const said = pieces.map((piece) => piece.text).join('');
      expect(said).toMatch(text);
      expect(said).not.toMatch(/undefined|NaN|—/);
      expect(truth(read(design, pins)), said).toBe(true);
      const allowed = [...Object.values(sentence.from), ...sentence.also];
      for (const piece of pieces) if ('quantity' in piece) expect(allowed).toContain(piece.quantity);
      reached.set(says, (reached.get(says) ?? new Set()).add(text.source));
    });
  }

  it('every sentence and every one of its branches was reached', () => {
    const branches = Object.fromEntries([...all.keys()].map((name) => [name, reached.get(name)?.size ?? 0]));
    console.log(`sentences: ${Object.keys(branches).length}, cases: ${allCases.length}`);
    expect(branches).toEqual(branchCounts);
  });
});
