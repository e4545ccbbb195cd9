import { derived } from '../graph/define.ts';
import { burstPulses } from './burst.ts';
import { repetitionRate } from './laser.ts';
import { usedPulseEnergy } from './losses.ts';
import { unshapedUnit } from './rippleWindow.ts';
import { fluenceWithoutPlate } from './unshaped.ts';

export const unshapedPulseEnergy = derived({
  id: 'unshaped.laser.pulseEnergy',
  name: 'pulse energy of the field without the plate',
  symbol: 'E_\\text{u}',
  unit: 'J',
  display: 'uJ',
  about:
    'Energy of a pulse that the field is written with when the plate is taken out: that of the same peak fluence on the workpiece, or the same energy; where the pulse energy is measured.',
  from: { E: usedPulseEnergy, unit: unshapedUnit, plain: fluenceWithoutPlate },
  compute: ({ E, unit, plain }) => (E * unit) / plain,
  formula: 'E\\,F_\\text{u,0}^*/F_\\text{u,0}',
  source: 'scaling',
});

export const unshapedAveragePower = derived({
  id: 'unshaped.laser.averagePower',
  name: 'average power of the field without the plate',
  symbol: 'P_\\text{u}',
  unit: 'W',
  display: 'auto:W',
  about:
    'Pulse energy of the field without the plate times pulses per second, those of bursts counted one by one, mean over time, where the pulse energy is measured.',
  from: { E: unshapedPulseEnergy, f: repetitionRate, burst: burstPulses },
  compute: ({ E, f, burst }) => E * f * burst,
  formula: 'n_\\text{b}\\,E_\\text{u}\\,f_\\text{rep}',
  source: 'definition',
});
