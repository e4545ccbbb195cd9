import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import type { GrooveShape } from '../process/grooveShape.ts';
import type { SectionFit } from '../process/sectionFit.ts';
import { topIs, wallIs } from './grooveWords.ts';
import { measuredGrooveShape } from './measuredSection.ts';
import { fittedShape, sectionFit, todaysShape } from './sectionFit.ts';

/** Ids, names and symbols of one of the three grooves that are set beside each other. */
interface ShapeWords {
  readonly id: string;
  readonly before: string;
  readonly of: string;
  readonly mark: string;
}

/** Depth, top width and wall angle of a groove. */
function shapeResults(shape: Derived<GrooveShape>, { id, before, of, mark }: ShapeWords) {
  const depth = derived({
    id: `groove.${id}Depth`,
    name: `${before} depth of the groove`,
    symbol: `d_\\text{${mark}}`,
    unit: 'm',
    display: 'um',
    digits: 3,
    about: `Greatest depth of ${of} below the surface.`,
    from: { shape },
    compute: ({ shape }) => shape.depth,
    formula: `\\max d_\\text{${mark}}(y)`,
    source: 'definition',
  });
  const topWidth = derived({
    id: `groove.${id}TopWidth`,
    name: `${before} width of the groove at the top`,
    symbol: `b_\\text{${mark}}`,
    unit: 'm',
    display: 'um',
    digits: 3,
    about: `Width of ${of} at the surface, ${topIs}.`,
    from: { shape },
    compute: ({ shape }) => shape.topWidth,
    formula: 'y_\\text{right}-y_\\text{left}',
    source: 'definition',
  });
  const wallAngle = derived({
    id: `groove.${id}WallAngle`,
    name: `${before} wall angle of the groove`,
    symbol: `\\alpha_\\text{${mark}}`,
    unit: 'rad',
    display: 'deg',
    digits: 3,
    about: `Angle of the walls of ${of} ${wallIs}.`,
    from: { shape },
    compute: ({ shape }) => shape.wallAngle,
    formula: `\\overline{\\arctan(0.6\\,d_\\text{${mark}}/\\Delta y)}`,
    source: 'definition',
  });
  return { depth, topWidth, wallAngle };
}

const measured = {
  id: 'measured',
  before: 'measured',
  of: 'the measured groove, spikes taken off,',
  mark: 'm',
};
const today = {
  id: 'sectionToday',
  before: 'computed',
  of: 'the groove that the model cuts today with the passes of the measured one,',
  mark: 'today',
};
const fitted = {
  id: 'sectionFitted',
  before: 'fitted',
  of: 'the groove that the model cuts with the fitted values,',
  mark: 'fit',
};
export const {
  depth: measuredDepth,
  topWidth: measuredTopWidth,
  wallAngle: measuredWallAngle,
} = shapeResults(measuredGrooveShape, measured);
export const {
  depth: todaysDepth,
  topWidth: todaysTopWidth,
  wallAngle: todaysWallAngle,
} = shapeResults(todaysShape, today);
export const {
  depth: fittedDepth,
  topWidth: fittedTopWidth,
  wallAngle: fittedWallAngle,
} = shapeResults(fittedShape, fitted);

/** χ² beyond which the model does not describe the groove to the noise of its surface. */
export const describedUpTo = 2;

/** What tells against the values of a fit. */
export function doubtOfSection({ reducedChiSquare }: SectionFit): string | undefined {
  return reducedChiSquare <= describedUpTo
    ? undefined
    : 'Inside the groove the measured depth departs from the model by more than the noise of the surface: a rough floor, melt or debris, or a setting other than the groove was made with. The uncertainty counts the scatter, not such an error.';
}

const doubt = ({ fit }: { readonly fit: SectionFit }) => doubtOfSection(fit);

export const sectionDepthPerPulse = derived({
  id: 'groove.fittedDepthPerPulse',
  name: 'depth per pulse from the measured groove',
  symbol: '\\delta_\\text{m}',
  unit: 'm',
  display: 'nm',
  digits: 3,
  about:
    'Depth that one pulse gains for each factor e of fluence, as the fit to the measured groove gives it; of the first branch where there are two.',
  from: { fit: sectionFit },
  compute: ({ fit }) => fit.depthPerPulse.value,
  valid: doubt,
  formula: '\\delta',
  source: 'fit',
});

export const sectionDepthUncertainty = derived({
  id: 'groove.fittedDepthUncertainty',
  name: 'standard uncertainty of the depth per pulse from the measured groove',
  symbol: 'u(\\delta_\\text{m})',
  unit: 'm',
  display: 'nm',
  digits: 2,
  about:
    'Standard uncertainty (one standard deviation) of the fitted depth per pulse, from the scatter of the section and the correlation of neighbouring points.',
  from: { fit: sectionFit },
  compute: ({ fit }) => fit.depthPerPulse.uncertainty,
  formula: 'u(\\delta_\\text{m})',
  source: 'jcgm100',
});

export const sectionThreshold = derived({
  id: 'groove.fittedThreshold',
  name: 'threshold from the measured groove',
  symbol: 'F_\\text{th,m}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'Incident fluence of one pulse at the threshold, as the fit to the measured groove gives it with the incubation exponent held.',
  from: { fit: sectionFit },
  compute: ({ fit }) => fit.threshold.value,
  valid: doubt,
  formula: 'F_\\text{th}',
  source: 'fit',
});

export const sectionThresholdUncertainty = derived({
  id: 'groove.fittedThresholdUncertainty',
  name: 'standard uncertainty of the threshold from the measured groove',
  symbol: 'u(F_\\text{th,m})',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 2,
  about:
    'Standard uncertainty (one standard deviation) of the fitted threshold, from the scatter of the section and the correlation of neighbouring points.',
  from: { fit: sectionFit },
  compute: ({ fit }) => fit.threshold.uncertainty,
  formula: 'u(F_\\text{th,m})',
  source: 'jcgm100',
});

export const sectionCorrelation = derived({
  id: 'groove.fittedCorrelation',
  name: 'correlation of depth per pulse and threshold',
  symbol: 'r(\\delta_\\text{m}, F_\\text{th,m})',
  unit: '1',
  digits: 3,
  about:
    'How the errors of the two fitted values go together: near 1 a deeper pulse with a higher threshold cuts nearly the same groove.',
  from: { fit: sectionFit },
  compute: ({ fit }) => fit.correlation,
  formula: 'u(\\delta_\\text{m},F_\\text{th,m})/(u(\\delta_\\text{m})\\,u(F_\\text{th,m}))',
  source: 'jcgm100',
});

export const sectionResidual = derived({
  id: 'groove.sectionResidual',
  name: 'deviation of the measured groove from the fitted one',
  symbol: '\\epsilon_\\text{m}',
  unit: 'm',
  display: 'nm',
  digits: 2,
  about: 'Root mean square of measured less fitted depth inside the groove.',
  from: { fit: sectionFit },
  compute: ({ fit }) => fit.residual,
  formula: '\\sqrt{\\overline{(d_\\text{m}-d)^2}}',
  source: 'definition',
});

export const sectionChiSquare = derived({
  id: 'groove.sectionChiSquare',
  name: 'reduced χ² of the measured groove',
  symbol: '\\chi^2_\\nu',
  unit: '1',
  digits: 2,
  about:
    'Mean squared deviation of the measured groove from the fitted one, per degree of freedom, over that of the surface beside it: near 1 where the model holds to the noise.',
  from: { fit: sectionFit },
  compute: ({ fit }) => fit.reducedChiSquare,
  formula: '\\frac1\\nu\\sum\\frac{(d_\\text{m}-d)^2}{\\sigma_\\text{m}^2}',
  source: 'definition',
});
