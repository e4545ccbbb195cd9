import * as engraving from './engraving.ts';
import * as engravingBest from './engravingBest.ts';
import * as engravingCharts from './engravingCharts.ts';
import * as engravingFloor from './engravingFloor.ts';
import * as engravingParts from './engravingParts.ts';
import * as engravingPlan from './engravingPlan.ts';
import * as groove from './groove.ts';
import * as grooveEqual from './grooveEqual.ts';
import * as grooveEqualParts from './grooveEqualParts.ts';
import * as grooveInputs from './grooveInputs.ts';
import * as grooveLaw from './grooveLaw.ts';
import * as groovePlanes from './groovePlanes.ts';
import * as measuredSection from './measuredSection.ts';
import * as scaleUp from './scaleUp.ts';
import * as scaleUpBest from './scaleUpBest.ts';
import * as scaleUpCharts from './scaleUpCharts.ts';
import * as scaleUpHeat from './scaleUpHeat.ts';
import * as scaleUpHeatLimit from './scaleUpHeatLimit.ts';
import * as scaleUpInputs from './scaleUpInputs.ts';
import * as scaleUpPlate from './scaleUpPlate.ts';
import * as scaleUpRecipe from './scaleUpRecipe.ts';
import * as scaleUpRise from './scaleUpRise.ts';
import * as scaleUpSplitter from './scaleUpSplitter.ts';
import * as scaleUpTarget from './scaleUpTarget.ts';
import * as scaleUpToday from './scaleUpToday.ts';
import * as scaleUpWork from './scaleUpWork.ts';
import * as sectionFile from './sectionFile.ts';
import * as sectionFit from './sectionFit.ts';
import * as sectionResults from './sectionResults.ts';
import * as sheet from './sheet.ts';
import * as sheetBest from './sheetBest.ts';

/** Rooms of what a line or a field becomes in depth, and of the larger machine that does it. */
export const cuttingRooms: readonly object[] = [
  grooveInputs,
  grooveLaw,
  groove,
  groove.groove,
  groove.firstGroove,
  groove.secondGroove,
  groove.plainGroove,
  grooveEqual,
  grooveEqualParts.equalFirst,
  grooveEqualParts.equalSecond,
  grooveEqualParts.equalPlain,
  grooveEqualParts.equalPlainSameLens,
  groovePlanes,
  sheet,
  sheetBest,
  sheet.sheet,
  sheet.plainSheet,
  engravingParts,
  engraving,
  engravingFloor,
  engravingPlan,
  engravingCharts,
  engravingBest,
  sectionFile,
  measuredSection,
  sectionFit,
  sectionResults,
  scaleUpInputs,
  scaleUpWork,
  scaleUp,
  scaleUpToday,
  scaleUpTarget,
  scaleUpCharts,
  scaleUpHeat,
  scaleUpHeatLimit,
  scaleUpRecipe,
  scaleUpRise,
  scaleUpPlate,
  scaleUpSplitter,
  scaleUpBest,
  sectionFile,
  measuredSection,
  sectionFit,
  sectionResults,
];
