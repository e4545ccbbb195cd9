import { depthPerLayer, engravedDepth, unshapedEngravedDepth } from '../lib/design/engraving.ts';
import {
  engravingVolumePerEnergy,
  unshapedBestLayer,
  unshapedBestVolumePerEnergy,
} from '../lib/design/engravingBest.ts';
import { turns } from '../lib/design/engravingCharts.ts';
import {
  contrast,
  highestToLowest,
  roughness,
  slope,
  unshapedRoughness,
} from '../lib/design/engravingFloor.ts';
import { engravingPlan, planMassRate, planTime } from '../lib/design/engravingPlan.ts';
import { rayleighLength } from '../lib/design/focus.ts';
import { engravingLayers, wantedDepth } from '../lib/design/grooveInputs.ts';
import { material } from '../lib/design/material.ts';
import { unshapedRuns } from '../lib/design/rippleWindow.ts';
import { hatchAngle } from '../lib/design/scannerInputs.ts';
import { formatNumber, formatReadable } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';
import { angleText, energyText, fluenceText, lengthText, percentText } from './shortTexts.ts';

/** Roughness may be nanometres or micrometres. */
export const fineText = (value: number) => formatReadable(value, 'm', 'auto:m', 3);

/** Depths and volumes that differ by less than this part are called alike. */
const alike = 0.02;
/** Roughness over depth below which a floor is called even, and above which rough: our words. */
const [even, rough] = [0.01, 0.1];
/** Slopes from which light no longer falls as if straight: 4 % weaker. */
const steep = 0.3;
export const nothingEngraved = 'Nothing is engraved: no pulse reaches the threshold.';

/** How deep, and whether later layers remove as much as the first. */
export const engravedDepthSaid = says(
  { depth: engravedDepth, perLayer: depthPerLayer, layers: engravingLayers },
  ({ depth, perLayer: { first, mean }, layers }) => {
    const count = Math.round(layers);
    if (depth === 0) return nothingEngraved;
    if (count === 1) return phrase`One layer takes the floor down by ${engravedDepth} on the mean.`;
    const start = phrase`After ${formatNumber(count, 5)} layers the floor lies ${engravedDepth} deep on the mean.`;
    const each = `The first removes ${lengthText(first)}, the mean of all is ${lengthText(mean)}`;
    if (mean > first * (1 + alike)) return phrase`${start} ${each}: later layers remove more.`;
    if (mean < first * (1 - alike)) return phrase`${start} ${each}: later layers remove less.`;
    return phrase`${start} ${each}: all remove about as much.`;
  },
);

/** A layer that takes more than this part of a Rayleigh length is no thin step: the spot changes within it. */
const thickLayer = 0.1;

/** How far the floor leaves the plane that it began in. */
export const floorPlaneSaid = says(
  { depth: engravedDepth, perLayer: depthPerLayer, rayleigh: rayleighLength },
  ({ depth, perLayer: { first }, rayleigh }) => {
    const part = depth / rayleigh;
    if (depth === 0) return '';
    if (part < 0.05) return 'So little below the fresh surface the spot is still nearly what it was there.';
    const floor = phrase`A spot changes along the beam over about a Rayleigh length, the way over which a perfect unshaped beam (M² = 1) becomes 1.41 times as wide as in its focus. The last layer leaves the floor ${formatNumber(part, 2)} such lengths below the fresh surface; each layer is worked out with the spot of the plane it begins in`;
    if (first <= thickLayer * rayleigh) return phrase`${floor}.`;
    return phrase`${floor}. The first takes ${formatNumber(first / rayleigh, 2)} Rayleigh lengths at once, over which the spot changes and its pulses heat what lies around: thinner layers, by less energy or pulses further apart, are nearer to this picture.`;
  },
);

/** The same settings with the plate taken out. */
export const plainEngravingSaid = says(
  {
    depth: engravedDepth,
    plain: unshapedEngravedDepth,
    runs: unshapedRuns,
  },
  ({ depth, plain, runs }) => {
    const energy = runs === 'peak' ? 'at the same peak fluence' : 'at the same pulse energy';
    if (depth === 0 && plain === 0)
      return phrase`With the plate taken out, ${energy}, nothing is engraved either.`;
    const both = phrase`With the plate taken out, ${energy} and scanned alike, it comes to ${unshapedEngravedDepth}`;
    if (plain > depth * (1 + alike)) return phrase`${both}, deeper.`;
    if (plain < depth * (1 - alike)) return phrase`${both}, less deep.`;
    return phrase`${both}, as deep.`;
  },
);

/** The floor that the same settings leave with the plate taken out. */
export const plainFloorSaid = says(
  { roughness, plain: unshapedRoughness },
  () =>
    phrase`With the plate taken out and scanned alike the roughness is ${unshapedRoughness} against ${roughness} with the plate.`,
);

/** How rough the floor is. */
export const floorSaid = says(
  { depth: engravedDepth, roughness, highestToLowest, contrast, slope },
  ({ depth, roughness: rms, slope }) => {
    const numbers = phrase`Its roughness from overlap is ${roughness} (Sq, root mean square), ${percentText(rms / depth)} of the depth, and ${highestToLowest} lie between highest and lowest point, a contrast of ${contrast}`;
    if (rms < even * depth && slope <= steep)
      return phrase`${numbers}: an even floor, as far as overlap goes.`;
    if (rms > rough * depth)
      return phrase`${numbers}: a rough floor. Lines or pulses closer together, or a turn from layer to layer, would even it out.`;
    return phrase`${numbers}.`;
  },
);

/** Whether light still falls straight onto the floor. */
export const floorSlopeSaid = says({ slope }, ({ slope: steepest }) => {
  if (steepest === 0) return '';
  const lower = 1 - 1 / Math.hypot(1, steepest);
  if (steepest <= steep)
    return phrase`Slopes of the floor stay below ${slope} (height over width), so that light falls onto them nearly as onto level ground: at most ${percentText(lower, 2)} weaker.`;
  return phrase`Slopes of the floor reach ${slope} (height over width). There the light falls aslant and is up to ${percentText(lower, 2)} weaker, which the model leaves out: take it as a sign of where the floor goes, not as its shape.`;
});

/** Which of the turns leaves the least roughness. */
export const turnsSaid = says({ turns, set: hatchAngle }, ({ turns: { turn, roughness }, set }) => {
  const [least, most] = [Math.min(...roughness), Math.max(...roughness)];
  if (most === 0) return nothingEngraved;
  const best = turn[roughness.indexOf(least)]!;
  const own = roughness[turn.findIndex((angle) => Math.abs(angle - set) < 1e-6)]!;
  if (least > most * (1 - 0.1))
    return 'The turn from layer to layer hardly matters here: all of these leave nearly the same roughness.';
  if (own <= least * (1 + alike))
    return phrase`Of these the turn that is set, ${hatchAngle}, leaves the least roughness.`;
  return phrase`Of these a turn of ${angleText(best)} leaves the least roughness, ${fineText(least)}, against ${fineText(own)} with the ${angleText(set)} that is set.`;
});

/** Layers and time for the depth wanted. */
export const engravingPlanSaid = says(
  { plan: engravingPlan, time: planTime, layers: engravingLayers, wanted: wantedDepth },
  ({ plan: { needed, layers: planned, depth }, layers }) => {
    const whole = planned === 1 ? 'one whole layer' : `${formatNumber(planned, 5)} whole layers`;
    const takes = phrase`A mean depth of ${wantedDepth} is reached after ${formatNumber(needed, 3)} layers. ${planned === 1 ? 'One whole layer comes' : `${formatNumber(planned, 5)} whole ones come`} to ${lengthText(depth)} and take${planned === 1 ? 's' : ''} ${planTime} for the field.`;
    const set = Math.round(layers);
    if (planned === set) return phrase`${takes} The plan is what is set: ${whole}.`;
    return phrase`${takes} The layers that are set, ${formatNumber(set, 5)}, are ${planned > set ? 'fewer' : 'more'}.`;
  },
);

/** The beam without the plate at its own best, against today's settings with it. */
export const engravingBestSaid = says(
  { best: unshapedBestLayer, shaped: engravingVolumePerEnergy, plain: unshapedBestVolumePerEnergy },
  ({ best, shaped, plain }) => {
    const at = phrase`At its own best the beam without the plate would run at ${energyText(best.energy)}, a peak of ${fluenceText(best.peak)}, with lines ${lengthText(best.lineSpacing)} apart; its first layer then removes ${unshapedBestVolumePerEnergy} against ${engravingVolumePerEnergy} with the plate as it is set`;
    if (shaped === 0) return phrase`${at}, which is nothing.`;
    if (shaped > plain * (1 + alike)) return phrase`${at}: per energy the plate removes more.`;
    if (shaped < plain * (1 - alike)) return phrase`${at}: per energy the plate removes less.`;
    return phrase`${at}: per energy as much.`;
  },
);

/** What is known to be harmful in the fume of a material. */
const harmful: Partial<Record<string, string>> = {
  stainless: 'That of stainless steel holds chromium and nickel, which can cause cancer',
  nickel: 'That of nickel can cause cancer',
  chromium: 'That of chromium can hold its hexavalent form, which causes cancer',
  copper: 'That of copper brings on metal fume fever',
};

/** What the fume of this material holds; memory, as all that is said of harm here. */
export const fumeKindSaid = says({ material }, ({ material }) => {
  const known = harmful[material];
  const words = known ?? 'What it holds is what the material holds, alloying elements and coatings with it';
  return `${words} (memory): work with extraction and filters made for it, and by your local limits.`;
});

/** Where what is removed goes; stands whatever the design. */
export const fumeSaid = says(
  { rate: planMassRate },
  () =>
    phrase`All that is removed, ${planMassRate} by the plan for the depth wanted, goes into the air and onto surfaces as vapour, fine particles and droplets.`,
  [],
  'All that is removed goes into the air and onto surfaces as vapour, fine particles and droplets.',
);
