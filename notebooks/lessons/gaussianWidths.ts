/** 1/e² diameter of a Gaussian over its full width at half maximum: 2w = 1.699 FWHM. */
export const diameterOverHalfWidth = Math.sqrt(2 / Math.LN2);
