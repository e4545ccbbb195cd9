import { parseQuantity } from '../../lib/graph/units.ts';
import { splitQuantityText } from '../../lib/graph/unitText.ts';
import { Problem } from '../../lib/problem.ts';

/**
 * Reads one length or several, in metres: "0.05 mm", "0, 0.05, 0.1 mm", "0;0,05 mm;0,1 mm". Semicolons part lengths, or
 * commas where there are none; a text that reads as one length is one, so that 0,05 mm keeps its decimal comma. A number
 * without a unit takes that of the last, else it is in metres. Throws `unreadable` where commas could be either.
 */
export function readLengths(text: string): number[] {
  if (text.includes(';')) return readAll(text.split(';'));
  try {
    return [parseQuantity(text, 'm')];
  } catch (error) {
    if (!(error instanceof Problem) || !text.includes(',')) throw error;
  }
  // A whole number straight before a comma and one straight behind it may be the two halves of one number.
  if (/(?<![\d.])\d+,\d+(?![\d.])/.test(text)) {
    throw new Problem(
      'unreadable',
      `The commas in '${text}' can part lengths or be decimal marks; write decimal points, or part the lengths by semicolons, as in "0; 50 um; 100 um".`,
      { value: text, allowed: 'lengths parted by semicolons' },
    );
  }
  return readAll(text.split(','));
}

/** The last length first: where its unit is wrong, the message is about the text that holds it. */
function readAll(parts: readonly string[]): number[] {
  const text = parts.at(-1)!;
  const last = parseQuantity(text, 'm');
  const bare = splitQuantityText(text).unit || 'm';
  return [...parts.slice(0, -1).map((part) => parseQuantity(part, 'm', { bare })), last];
}

/** Two ends of a range in metres, the second above the first. */
export type Span = readonly [from: number, to: number];

/**
 * Reads `START:STOP UNIT`, e.g. "-0.4:0.4 mm"; `what` names the range in messages. A missing unit means metres.
 * Throws `unreadable`, or `impossible` where STOP is not above START.
 */
export function readSpan(text: string, what: string, example: string): Span {
  const parts = text.split(':');
  if (parts.length !== 2) {
    throw new Problem(
      'unreadable',
      `'${text}' is no range of ${what}; write START:STOP UNIT, e.g. "${example}".`,
      { value: text, allowed: 'START:STOP UNIT' },
    );
  }
  const [from, to] = readAll(parts) as [number, number];
  if (from < to) return [from, to];
  throw new Problem('impossible', `The range of ${what} '${text}' cannot be: STOP must be above START.`, {
    value: text,
    allowed: 'STOP above START',
  });
}

/** `count` equal steps from one end to the other, both included; `count` is at least 2. */
export function spaced([from, to]: Span, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) =>
    i === count - 1 ? to : from + ((to - from) * i) / (count - 1),
  );
}
