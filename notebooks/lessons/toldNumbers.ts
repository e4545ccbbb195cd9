import { gaussianFit } from '../../lib/design/fits.ts';
import { focusRadius, light, workpieceZ } from '../../lib/design/focus.ts';
import { waveOnSurface } from '../../lib/design/ripples.ts';
import { says } from '../prose.ts';
import { energyText, lengthText } from '../shortTexts.ts';
import { missed } from './missedMiddle.ts';

/** The threshold energy as the line through the marks gives it. */
export const crossingSaid = says({ fit: gaussianFit }, ({ fit }) => energyText(fit.thresholdEnergy));

/** The index of the wave along the surface, its real part. */
export const waveIndexSaid = says({ wave: waveOnSurface }, ({ wave }) => wave.index.toFixed(3));

/** How far the beam misses the middle of the plate. */
export const missedSaid = says({ light }, () => lengthText(missed));

/** How far from the focus, and on which side: goes on with “the focus”. */
export const besideFocusSaid = says(
  { z: workpieceZ },
  ({ z }) => `${lengthText(Math.abs(z))} ${z < 0 ? 'before' : 'behind'}`,
);

/** Standard deviation of the Gaussian focus: half its 1/e² radius. */
export const deviationSaid = says({ radius: focusRadius }, ({ radius }) => lengthText(radius / 2));
