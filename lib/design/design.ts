import { createGraph, type Graph } from '../graph/graph.ts';
import type { Quantity } from '../graph/quantity.ts';
import * as acceptedPlanes from './acceptedPlanes.ts';
import * as accumulated from './accumulated.ts';
import * as burst from './burst.ts';
import * as centring from './centring.ts';
import * as chosenFit from './chosenFit.ts';
import * as comparison from './comparison.ts';
import * as comparisonInputs from './comparisonInputs.ts';
import * as comparisonParts from './comparisonParts.ts';
import * as coupon from './coupon.ts';
import * as couponInputs from './couponInputs.ts';
import * as couponVerdict from './couponVerdict.ts';
import { cuttingRooms } from './cuttingRooms.ts';
import * as depthInUse from './depthInUse.ts';
import * as depthLaw from './depthLaw.ts';
import * as depthOfFocus from './depthOfFocus.ts';
import * as edges from './edges.ts';
import * as expander from './expander.ts';
import * as explain from './explain.ts';
import * as family from './family.ts';
import * as familyMap from './familyMap.ts';
import * as familyRule from './familyRule.ts';
import * as fieldPlanes from './fieldPlanes.ts';
import * as fits from './fits.ts';
import * as fluenceWindow from './fluenceWindow.ts';
import * as focus from './focus.ts';
import * as hatch from './hatch.ts';
import * as heat from './heat.ts';
import * as heatCharts from './heatCharts.ts';
import * as heatEstimates from './heatEstimates.ts';
import * as heatInputs from './heatInputs.ts';
import * as heatMaterial from './heatMaterial.ts';
import * as heatPulses from './heatPulses.ts';
import * as heatScan from './heatScan.ts';
import * as insideExpander from './insideExpander.ts';
import * as ladder from './ladder.ts';
import * as ladderFit from './ladderFit.ts';
import * as ladderInputs from './ladderInputs.ts';
import * as ladderMarks from './ladderMarks.ts';
import * as ladderResults from './ladderResults.ts';
import * as laser from './laser.ts';
import * as laserLimits from './laserLimits.ts';
import * as lens from './lens.ts';
import * as limits from './limits.ts';
import * as losses from './losses.ts';
import * as markCharts from './markCharts.ts';
import * as markGrowths from './markGrowths.ts';
import * as markPicture from './markPicture.ts';
import * as marks from './marks.ts';
import * as match from './match.ts';
import * as material from './material.ts';
import * as measured from './measured.ts';
import * as measuredCaustic from './measuredCaustic.ts';
import * as measuredFocus from './measuredFocus.ts';
import * as measuredOverlay from './measuredOverlay.ts';
import * as measuredSpot from './measuredSpot.ts';
import * as micrographInputs from './micrographInputs.ts';
import * as micrographs from './micrographs.ts';
import * as nonlinearIndex from './nonlinearIndex.ts';
import * as offCentre from './offCentre.ts';
import * as pictureMark from './pictureMark.ts';
import * as planesMet from './planesMet.ts';
import * as plate from './plate.ts';
import * as profileComparisons from './profileComparisons.ts';
import * as profileDetail from './profileDetail.ts';
import * as profileList from './profileList.ts';
import * as pulsesOnPlace from './pulsesOnPlace.ts';
import * as ratioMaps from './ratioMaps.ts';
import * as rawBeam from './rawBeam.ts';
import * as removal from './removal.ts';
import * as rippleCharts from './rippleCharts.ts';
import * as rippleDirection from './rippleDirection.ts';
import * as rippleInputs from './rippleInputs.ts';
import * as rippleParts from './rippleParts.ts';
import * as rippleSeries from './rippleSeries.ts';
import * as ripples from './ripples.ts';
import * as rippleUses from './rippleUses.ts';
import * as rippleWindow from './rippleWindow.ts';
import * as rippleWindowCharts from './rippleWindowCharts.ts';
import * as rule from './rule.ts';
import * as safety from './safety.ts';
import * as scanChecks from './scanChecks.ts';
import * as scanInputs from './scanInputs.ts';
import * as scanLimits from './scanLimits.ts';
import * as scannerInputs from './scannerInputs.ts';
import * as sensitivity from './sensitivity.ts';
import * as spot from './spot.ts';
import * as spots from './spots.ts';
import * as strip from './strip.ts';
import * as takenAsGaussian from './takenAsGaussian.ts';
import * as threshold from './threshold.ts';
import * as thresholdChart from './thresholdChart.ts';
import * as thresholdDoubt from './thresholdDoubt.ts';
import * as twoWaves from './twoWaves.ts';
import * as uniformity from './uniformity.ts';
import * as uniformityCharts from './uniformityCharts.ts';
import * as unshaped from './unshaped.ts';
import * as unshapedEnergy from './unshapedEnergy.ts';
import * as usableField from './usableField.ts';
import * as usablePlanes from './usablePlanes.ts';
import * as waist from './waist.ts';
import * as wish from './wish.ts';

/** The rooms of the design along the beam path; every exported quantity belongs to the graph. */
const rooms = [
  laser,
  measured,
  measuredCaustic,
  rawBeam,
  waist,
  expander,
  insideExpander,
  plate,
  match,
  lens,
  focus,
  familyMap,
  family,
  spot,
  profileDetail,
  strip,
  depthOfFocus,
  depthInUse,
  fieldPlanes,
  usableField,
  planesMet,
  usablePlanes,
  unshaped,
  unshapedEnergy,
  measuredSpot,
  measuredOverlay,
  profileList,
  profileComparisons,
  measuredFocus,
  spots,
  markPicture.markPictureInputs,
  pictureMark,
  couponInputs,
  coupon,
  couponVerdict,
  ladderInputs,
  ladder,
  ladderResults,
  ladderMarks,
  ladderFit,
  limits,
  explain,
  twoWaves,
  offCentre,
  ratioMaps,
  sensitivity,
  rule,
  familyRule,
  wish,
  losses,
  material,
  fits,
  centring,
  chosenFit,
  takenAsGaussian,
  thresholdDoubt,
  threshold,
  rippleInputs,
  ripples,
  rippleDirection,
  rippleCharts,
  rippleSeries,
  micrographInputs,
  micrographs.firstMicrograph,
  micrographs.otherMicrograph,
  micrographs,
  rippleUses,
  rippleWindow,
  rippleParts,
  rippleWindowCharts,
  acceptedPlanes,
  accumulated,
  scanInputs,
  burst,
  laserLimits,
  scannerInputs,
  edges,
  scanChecks,
  hatch,
  pulsesOnPlace,
  uniformity,
  uniformityCharts,
  scanLimits,
  heatInputs,
  heatMaterial,
  heatPulses,
  heatScan,
  heatEstimates,
  heat,
  heatCharts,
  comparisonInputs,
  comparison,
  comparisonParts,
  thresholdChart,
  marks,
  markCharts,
  markGrowths,
  depthLaw,
  removal,
  ...cuttingRooms,
  fluenceWindow,
  nonlinearIndex,
  safety,
];

function isQuantity(value: unknown): value is Quantity {
  return typeof value === 'object' && value !== null && 'id' in value && 'kind' in value;
}

/** THE graph: every quantity of the design. */
export const designGraph: Graph = createGraph(
  rooms.flatMap((room) => Object.values(room as Record<string, unknown>).filter(isQuantity)),
);
