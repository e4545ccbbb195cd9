import { type HalfSpectrum, valueAt, visitDisc } from './halfSpectrum.ts';
import { lobeWeight, type RippleLobe, ringAt } from './rippleLobe.ts';

/** A length over which ripples keep their phase. */
export interface CoherenceLength {
  /** Pixels, or metres where the ripples have been scaled. */
  readonly length: number;
  /** The tiles are too small to show where it ends: it is at least this. */
  readonly atLeast: boolean;
}

/** Beyond this share of a tile the window leaves a third of the autocorrelation, and tiles meet their own other end. */
const longestLag = 0.4;

/** Autocorrelation of a Hann window over its own length, 1 at lag 0; `share` is the lag over the window's length. */
function windowAutocorrelation(share: number): number {
  const turn = 2 * Math.PI * Math.abs(share);
  return (1 - Math.abs(share)) * (2 / 3 + Math.cos(turn) / 3) + Math.sin(turn) / (2 * Math.PI);
}

/** Steps of frequency between the places that power is shared out to: 0.5 % at the longest lag. */
const spacing = 0.1;

/**
 * The lag along a direction at which the envelope of the ripples' autocorrelation has fallen to 1/e: the transform of
 * the power above the background around the lobe, over the autocorrelation of the window. `angle` from x towards y, rad.
 */
export function coherenceLength(
  spectrum: HalfSpectrum,
  rings: Float64Array,
  lobe: RippleLobe,
  angle: number,
): CoherenceLength {
  const { size } = spectrum;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const powers = powerAlong(spectrum, rings, lobe, [cos, sin]);
  const total = powers.reduce((sum, power) => sum + power, 0);
  const envelope = (lag: number) => {
    const turn = (2 * Math.PI * spacing * lag) / size;
    let [re, im] = [0, 0];
    for (let i = 0; i < powers.length; i++) {
      re += powers[i]! * Math.cos(turn * i);
      im += powers[i]! * Math.sin(turn * i);
    }
    const window = windowAutocorrelation((lag * cos) / size) * windowAutocorrelation((lag * sin) / size);
    return Math.hypot(re, im) / (total * window);
  };
  return firstBelow(envelope, 1 / Math.E, longestLag * size);
}

/** Ripples that wander reach half way to frequency 0 and to the second harmonic, and sixty degrees to each side. */
const widestTurn = Math.PI / 3;

/** Power above the background around a lobe by its frequency along a direction, in steps of `spacing` from the least. */
function powerAlong(
  spectrum: HalfSpectrum,
  rings: Float64Array,
  { kx, ky }: RippleLobe,
  [cos, sin]: readonly [number, number],
): Float64Array {
  const length = Math.hypot(kx, ky);
  const reach = 2 * Math.sin(widestTurn / 2) * 1.5 * length + 2;
  const powers = new Float64Array(Math.ceil((2 * reach) / spacing) + 2);
  visitDisc(spectrum.size, kx, ky, reach, (x, y) => {
    const radius = Math.hypot(x, y);
    const turn = Math.acos(Math.min(1, Math.abs(x * kx + y * ky) / (length * Math.max(radius, 1))));
    const weight =
      x * kx + y * ky > 0
        ? lobeWeight(Math.abs(radius - length), Math.max(length / 2, 3)) * lobeWeight(turn, widestTurn)
        : 0;
    if (weight === 0) return;
    const power = weight * (valueAt(spectrum, x, y) - ringAt(rings, radius));
    const place = ((x - kx) * cos + (y - ky) * sin + reach) / spacing;
    const low = Math.floor(place);
    powers[low]! += power * (low + 1 - place);
    powers[low + 1]! += power * (place - low);
  });
  return powers;
}

/** Where a function that begins at 1 first falls below `level`, in steps of a hundredth of the way, between them linear. */
function firstBelow(value: (lag: number) => number, level: number, most: number): CoherenceLength {
  const step = most / 100;
  let before = 1;
  for (let lag = step; lag <= most * 1.001; lag += step) {
    const here = value(lag);
    if (here < level) return { length: lag - (step * (level - here)) / (before - here), atLeast: false };
    before = here;
  }
  return { length: most, atLeast: true };
}
