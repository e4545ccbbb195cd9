/** Sizes of letters in a figure, px. */
export const tickSize = 11.5;
export const labelSize = 12.5;
/** From one line of a label to the next, px. */
export const lineHeight = 15;

const narrow = /[iljtfrI.,:;'’|!()[\]\s/·]/u;
const wide = /[mwMWOQGDN%@—→µΩ]/u;
const capital = /[A-ZÄÖÜ]/u;

/**
 * Width of a text in px, estimated so that no browser is needed. Shares of the letter size are those of Helvetica
 * rounded up (Source Sans is 5–8 % narrower), so an estimate errs towards more room.
 */
export function textWidth(text: string, size: number): number {
  let sum = 0;
  for (const letter of text) {
    if (narrow.test(letter)) sum += 0.3;
    else if (wide.test(letter)) sum += 0.8;
    else if (capital.test(letter)) sum += 0.66;
    else sum += 0.53;
  }
  return sum * size;
}

/** Lines no wider than `width` px, broken between words; a word longer than a line is cut with an ellipsis. */
export function wrapText(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size) > width) {
      lines.push(shorten(line, width, size));
      line = word;
    } else line = longer;
  }
  return [...lines, shorten(line, width, size)];
}

/** The text, cut with an ellipsis where it would be wider than `width` px. */
export function shorten(text: string, width: number, size: number): string {
  if (textWidth(text, size) <= width) return text;
  const letters = [...text];
  while (letters.length > 1 && textWidth(`${letters.join('')}…`, size) > width) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** "label (unit)", or the label alone for a pure number. */
export function withUnit(label: string, unit: string): string {
  return unit === '' || unit === '1' ? label : `${label} (${unit})`;
}

const raised = new Map([...'0123456789-'].map((letter, index) => [letter, [...'⁰¹²³⁴⁵⁶⁷⁸⁹⁻'][index]!]));

/** A number to `digits` significant digits for a scale: true minus, powers of ten as a person writes them. */
export function shortNumber(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return '–';
  const size = Math.abs(value);
  if (size !== 0 && (size >= 1e5 || size < 1e-3)) return powerOfTen(value, digits - 1);
  return spaced(String(Number(value.toPrecision(digits))));
}

/** Tick texts, all with the decimals that the distance between ticks needs. */
export function tickTexts(ticks: readonly number[]): string[] {
  const largest = Math.max(...ticks.map(Math.abs));
  const step = ticks.length > 1 ? Math.abs(ticks[1]! - ticks[0]!) : largest;
  if (largest >= 1e5 || (largest > 0 && largest < 1e-3)) {
    const digits = Math.max(0, Math.ceil(Math.log10(largest / step) - 1e-9));
    return ticks.map((tick) =>
      tick === 0 ? '0' : powerOfTen(tick, digits, Math.floor(Math.log10(largest))),
    );
  }
  const decimals = step > 0 ? Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)) : 0;
  return ticks.map((tick) => spaced(tick.toFixed(Math.min(decimals, 20))));
}

function powerOfTen(
  value: number,
  decimals: number,
  power = Math.floor(Math.log10(Math.abs(value))),
): string {
  const mantissa = Number((value / 10 ** power).toFixed(decimals));
  const exponent = [...String(power)].map((letter) => raised.get(letter)).join('');
  return spaced(`${mantissa}·10${exponent}`);
}

/** True minus, and narrow no-break spaces between thousands from five digits on. */
function spaced(text: string): string {
  const grouped = text.replace(/\d{5,}(?=\.|$)/u, (digits) => digits.replace(/\B(?=(\d{3})+$)/gu, '\u202f'));
  return /^-0(\.0*)?$/.test(grouped) ? grouped.slice(1) : grouped.replace('-', '−');
}
