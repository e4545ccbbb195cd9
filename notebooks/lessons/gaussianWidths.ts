import { widthPerRadius } from '../../lib/optics/widths.ts';

/** 1/e² diameter of a Gaussian over its full width at half maximum: 2w = 1.699 FWHM. */
export const diameterOverHalfWidth = widthPerRadius.diameter / widthPerRadius.fullWidth;
