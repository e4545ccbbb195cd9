/** Changes to the initial design that the sentences on the family are tried on. */
export const open = { 'plate.stop': 'open' };
export const ratio = (M2: number) => ({ 'laser.beamPropagationRatio': M2 });
export const range = (lengths: number) => ({ 'focus.searchedRange': lengths });
export const goal = (kind: string) => ({ 'focus.planeGoal': kind });
/** A whole wave and no stop: the Gaussian beam, as if there were no plate. */
export const noStep = { ...open, 'plate.designPhase': 2 * Math.PI };
/** The stop 1.5 beam radii wide. */
export const wider = { 'plate.apertureDiameter': 15e-3 };
/** family.json: 0.95 and 0.9 π without a stop. */
export const asymmetric = { ...open, 'plate.stepDiameter': 9.5e-3, 'plate.designPhase': 0.9 * Math.PI };
/** family.json: 1.05 and 0.9 π with a stop at 1.6. */
export const sixFlat = {
  'plate.stepDiameter': 10.5e-3,
  'plate.apertureDiameter': 16e-3,
  'plate.designPhase': 0.9 * Math.PI,
};
/** family.json: the dark-centre ratio behind a stop at 1.4. */
export const dark = { 'plate.stepDiameter': 7.49244e-3 };
/** A beam of 0.5 mm, zR 52 mm, and the plate far before the lens: the search meets the image of the plate. */
export const cut = {
  'expander.magnification': 0.1,
  'plate.stepDiameter': 0.5e-3,
  'plate.apertureDiameter': 0.7e-3,
  'lens.distanceMode': 'typed',
  'lens.typedPlateDistance': 0.8,
};

export const within7 = 'within 7 Rayleigh lengths of the focus';
