import { usedPulseEnergy } from '../lib/design/losses.ts';
import { unshapedRuns } from '../lib/design/rippleWindow.ts';
import { unshapedPulseEnergy } from '../lib/design/unshapedEnergy.ts';
import { type Phrase, phrase } from './prose.ts';

/** Energies that differ by less than this are called the same. */
const same = 5e-3;

/** What tells at which energy the field without the plate is written. */
export const plainRuns = { runs: unshapedRuns, energy: usedPulseEnergy, plainEnergy: unshapedPulseEnergy };

/** How the energy changes when the plate comes out. */
export function energyChange({ energy, plainEnergy }: { energy: number; plainEnergy: number }): string {
  if (Math.abs(plainEnergy / energy - 1) < same) return 'unchanged at';
  return plainEnergy < energy ? 'lowered to' : 'raised to';
}

/** Behind "scanned alike": at the same peak fluence or with the same energy. */
export function plainRunsWords(values: { runs: string; energy: number; plainEnergy: number }): Phrase {
  return values.runs === 'peak'
    ? phrase`at the same peak fluence (pulse energy ${energyChange(values)} ${unshapedPulseEnergy})`
    : phrase`with the same pulse energy`;
}
