import { choice, picked } from '../graph/define.ts';
import { beamDiameter, beamPropagationRatio, measuredDiameter } from './laser.ts';
import { causticModelRatio, causticWaistDiameter } from './measuredCaustic.ts';

export const beamSource = choice({
  id: 'laser.beamSource',
  name: 'source of the beam diameter',
  symbol: '\\text{beam source}',
  about:
    'Which raw beam counts: the typed diameter, the one measured in the camera image, or the waist of a measured caustic, which must then be the raw beam’s own.',
  initial: 'typed',
  options: {
    typed: 'typed diameter',
    measured: 'measured in a camera image',
    caustic: 'waist of a measured caustic',
  },
});

export const usedBeamDiameter = picked({
  id: 'laser.usedBeamDiameter',
  name: 'raw beam diameter in use',
  symbol: 'd_\\text{raw}',
  unit: 'm',
  display: 'mm',
  about: '1/e² diameter of the laser beam before the expander that everything follows from.',
  by: beamSource,
  cases: { typed: beamDiameter, measured: measuredDiameter, caustic: causticWaistDiameter },
  formula: '\\begin{cases} d_\\text{typed} \\\\ d_\\text{measured} \\\\ d_0 \\end{cases}',
});

export const ratioSource = choice({
  id: 'laser.ratioSource',
  name: 'source of M²',
  symbol: '\\text{ratio source}',
  about: 'Which beam propagation ratio counts: the typed one, or the one of a measured caustic.',
  initial: 'typed',
  options: { typed: 'typed M²', measured: 'M² of a measured caustic' },
});

export const usedBeamPropagationRatio = picked({
  id: 'laser.usedBeamPropagationRatio',
  name: 'beam propagation ratio M² in use',
  symbol: 'M^2',
  unit: '1',
  about:
    'How much wider the focus is than that of a perfect Gaussian of the same diameter, same in both axes, as everything takes it; 1 is perfect.',
  by: ratioSource,
  cases: { typed: beamPropagationRatio, measured: causticModelRatio },
  formula: '\\begin{cases} M^2_\\text{typed} \\\\ M^2_\\text{caustic} \\end{cases}',
});
