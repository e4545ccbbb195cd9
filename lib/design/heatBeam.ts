import { unshapedPeak } from './focus.ts';
import { asked, unshapedAsked } from './marks.ts';
import { unshapedUnit } from './rippleWindow.ts';

/** One of the two beams, as heat asks it. */
export interface HeatBeam {
  /** Before the id. */
  readonly before: '' | 'unshaped.';
  readonly spot: typeof asked;
  /** Fluence of relative irradiance 1. */
  readonly unit: typeof unshapedPeak;
  readonly words: string;
  /** In symbols. */
  readonly mark: string;
}

/** With the plate. */
export const shapedBeam: HeatBeam = { before: '', spot: asked, unit: unshapedPeak, words: '', mark: '' };

/** With the plate taken out, at the energy with which the field without it is written. */
export const unshapedBeam: HeatBeam = {
  before: 'unshaped.',
  spot: unshapedAsked,
  unit: unshapedUnit,
  words: ' without the step',
  mark: '\\text{u},',
};
