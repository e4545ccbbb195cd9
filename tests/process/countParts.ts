import type { Spot } from '../../lib/optics/askedSpot.ts';
import type { ScannedField } from '../../lib/process/fieldWindow.ts';
import type { PulseWindow } from '../../lib/process/pulseWindow.ts';

/** Parts of a scanned field by counting places of a fine grid; pulses no further than `reach` (m) are asked of the spot itself. */
export function countParts(
  spot: Spot,
  unit: number,
  field: ScannedField,
  window: PulseWindow,
  { columns, rows, reach }: { readonly columns: number; readonly rows: number; readonly reach: number },
) {
  let [inside, much] = [0, 0];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const x = ((column + 0.5) / columns) * field.pulseSpacing;
      const y = ((row + 0.5) / rows) * field.lineSpacing;
      const all: number[] = [];
      for (let l = Math.floor((y - reach) / field.lineSpacing); l <= (y + reach) / field.lineSpacing; l++)
        for (
          let m = Math.floor((x - reach) / field.pulseSpacing);
          m <= (x + reach) / field.pulseSpacing;
          m++
        ) {
          const F = unit * spot.irradianceAt(x - m * field.pulseSpacing, y - l * field.lineSpacing);
          for (let pass = 0; pass < field.passes; pass++) all.push(F);
        }
      all.sort((a, b) => b - a);
      const bound = (F: number, n: number) => F * Math.max(1, n / window.pulsesLow) ** (window.exponent - 1);
      const enough = all.some((F, i) => i + 1 >= window.pulsesLow && F >= bound(window.low, i + 1));
      const tooMuch =
        all.some((F, i) => F > bound(window.high, i + 1)) ||
        all.some((F, i) => i + 1 > window.pulsesHigh && F >= bound(window.low, i + 1));
      if (tooMuch) much++;
      else if (enough) inside++;
    }
  return { inside: inside / (columns * rows), tooMuch: much / (columns * rows) };
}
