import { designGraph } from '../../lib/design/design.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';

/** Values of all inputs: they tell which of several numbers counts. */
export interface Known {
  readonly inputs: Readonly<Record<string, unknown>>;
}

/** Two micrographs have the same numbers. */
const ofMicrograph = (name: string) => ({
  [`${name}.period`]: `${name}.periodUncertainty`,
  [`${name}.periodPixels`]: `${name}.periodPixelsUncertainty`,
  [`${name}.direction`]: `${name}.directionUncertainty`,
  [`${name}.secondPeriod`]: `${name}.secondPeriodUncertainty`,
});

/** Ids of numbers whose standard uncertainty is a number of the design, and of that. */
export const uncertainties: Readonly<Record<string, string>> = {
  'laser.measuredDiameter': 'laser.measuredUncertainty',
  'laser.causticRatio': 'laser.causticRatioUncertainty',
  'laser.causticModelRatio': 'laser.causticRatioUncertainty',
  'laser.causticWaistDiameter': 'laser.causticWaistDiameterUncertainty',
  'laser.causticWaistPosition': 'laser.causticWaistPositionUncertainty',
  'laser.causticRayleighLength': 'laser.causticRayleighLengthUncertainty',
  'laser.causticDivergence': 'laser.causticDivergenceUncertainty',
  'threshold.fluence': 'threshold.uncertainty',
  'threshold.fluenceAtN': 'threshold.uncertaintyAtN',
  'threshold.fittedFluence': 'threshold.fittedUncertainty',
  'threshold.gaussianFluence': 'threshold.gaussianUncertainty',
  'threshold.profileFluence': 'threshold.profileUncertainty',
  'threshold.planeFluence': 'threshold.planeUncertainty',
  'threshold.handbookFluence': 'threshold.handbookUncertainty',
  'ladder.thresholdFluence': 'ladder.thresholdUncertainty',
  'ladder.zero': 'ladder.zeroUncertainty',
  'markPicture.area': 'markPicture.areaUncertainty',
  'markPicture.outerDiameter': 'markPicture.outerDiameterUncertainty',
  'markPicture.innerDiameter': 'markPicture.innerDiameterUncertainty',
  'groove.fittedDepthPerPulse': 'groove.fittedDepthUncertainty',
  'groove.fittedThreshold': 'groove.fittedThresholdUncertainty',
  ...ofMicrograph('micrograph'),
  ...ofMicrograph('otherMicrograph'),
};

/** The same for numbers that are measured only where a choice says so. */
const chosen: Readonly<
  Record<string, { readonly by: string; readonly is: Readonly<Record<string, string>> }>
> = {
  'laser.usedBeamDiameter': {
    by: 'laser.beamSource',
    is: { measured: 'laser.measuredUncertainty', caustic: 'laser.causticWaistDiameterUncertainty' },
  },
  'laser.usedBeamPropagationRatio': {
    by: 'laser.ratioSource',
    is: { measured: 'laser.causticRatioUncertainty' },
  },
};

/** The standard uncertainty that belongs to a number of the design; undefined where none is known. */
export function uncertaintyOf({ id }: Quantity, { inputs }: Known): Quantity | undefined {
  const among = chosen[id];
  const found = among ? among.is[String(inputs[among.by])] : uncertainties[id];
  return found === undefined ? undefined : designGraph.quantities.get(found);
}
