import type { Progress } from '../numerics/progress.ts';
import type { Spot } from '../optics/askedSpot.ts';
import {
  asToday,
  bestField,
  type FieldDemand,
  type FoundField,
  partsOfSetting,
  type SpotFamily,
} from './bestField.ts';
import type { FieldLimit } from './fieldMachine.ts';
import { lineDose } from './lineDose.ts';
import { lineTimes } from './scanTime.ts';
import { type ModulationAt, modulationOf } from './spacingSearch.ts';

/** The best way to write a field with one beam, in numbers; SI. Rate, time and energy count whole lines. */
export interface ChosenField {
  /** ζ of the plane. */
  readonly defocus: number;
  /** Size of the focus over today's: what another lens or expander must bring. */
  readonly scale: number;
  /** Of the spot as scanned. */
  readonly diameter: number;
  readonly peakFluence: number;
  /** Where the laser's energy is measured. */
  readonly pulseEnergy: number;
  readonly pulseSpacing: number;
  readonly lineSpacing: number;
  readonly speed: number;
  readonly repetitionRate: number;
  readonly power: number;
  readonly limit: FieldLimit;
  readonly rate: number;
  readonly fieldTime: number;
  /** Part of the field inside the window, and modulation of the accumulated fluence across the lines. */
  readonly inside: number;
  readonly modulation: number;
  /** Laser energy per area of the field, J/m². */
  readonly energyPerArea: number;
  /** The same with the focus as large as it is today. */
  readonly today: {
    readonly pulseEnergy: number;
    readonly pulseSpacing: number;
    readonly lineSpacing: number;
    readonly speed: number;
    readonly repetitionRate: number;
    readonly limit: FieldLimit;
    readonly rate: number;
  };
}

/** Searches it (see {@link bestField}); null where nothing keeps the demand. */
export function chooseField(
  family: SpotFamily,
  asked: Omit<FieldDemand, 'modulation'>,
  report?: Progress,
): ChosenField | null {
  const demand = { ...asked, modulation: keptModulation() };
  const found = bestField(family, demand, report);
  if (found === null) return null;
  const { defocus, peak, setting, fastest } = found;
  const { scale, speed, repetitionRate, limit } = fastest;
  const spot = family(defocus);
  const pulseEnergy = setting.energy * scale ** 2;
  const { width, height, motion } = demand.machine;
  const lines = Math.ceil(height / (setting.lineSpacing * scale) - 1e-9);
  const fieldTime = lines * lineTimes(width, { ...motion, speed }).total;
  return {
    defocus,
    scale,
    diameter: setting.diameter * scale,
    peakFluence: peak * demand.wanted.high,
    pulseEnergy,
    pulseSpacing: setting.pulseSpacing * scale,
    lineSpacing: setting.lineSpacing * scale,
    speed,
    repetitionRate,
    power: pulseEnergy * repetitionRate,
    limit,
    rate: (width * height) / fieldTime,
    fieldTime,
    inside: partsOfSetting(spot, demand, peak, setting).inside,
    modulation: lineDose(spot, setting.lineSpacing).modulation,
    energyPerArea: (pulseEnergy * lines) / (setting.pulseSpacing * scale * height),
    today: todayOf(found, demand),
  };
}

function todayOf(found: FoundField, demand: FieldDemand): ChosenField['today'] {
  const { pulseSpacing, lineSpacing, energy } = found.setting;
  const { speed, repetitionRate, limit, rate } = asToday(demand.machine, found);
  return { pulseEnergy: energy, pulseSpacing, lineSpacing, speed, repetitionRate, limit, rate };
}

/** Modulation across the lines; the spectrum of each spot is tabulated once. */
function keptModulation(): FieldDemand['modulation'] {
  const known = new WeakMap<Spot, ModulationAt>();
  return (spot, spacing) => {
    const at = known.get(spot) ?? modulationOf(spot);
    known.set(spot, at);
    return at(spacing);
  };
}
