import { Problem } from '../problem.ts';
import { parseQuantity } from './units.ts';

/** Most radii in one list: a table of this many rows is written in well under a second. */
const mostRadii = 100_000;

/**
 * Reads `START:STOP:COUNT UNIT`, e.g. "0:20:101 um": COUNT equally spaced radii from START to STOP, both included,
 * in metres. Both ends are at least 0 and STOP above START; COUNT is 2 to 100 000, or 1 with STOP equal to START.
 * A missing unit means metres. Throws `unreadable` or `impossible`.
 */
export function readRadii(text: string): Float64Array {
  const match = /^\s*([^:]+):([^:]+):\s*(\d{1,9})(?![\d.,])\s*([^:\d].*)?$/.exec(text);
  if (!match) {
    throw new Problem(
      'unreadable',
      `'${text}' is no list of radii; write START:STOP:COUNT UNIT, e.g. 0:20:101 um.`,
      {
        value: text,
        allowed: 'START:STOP:COUNT UNIT',
      },
    );
  }
  const [, startText = '', stopText = '', countText, unit = 'm'] = match;
  const start = parseQuantity(`${startText} ${unit}`, 'm');
  const stop = parseQuantity(`${stopText} ${unit}`, 'm');
  const count = Number(countText);
  checkRange(text, start, stop, count);
  if (count === 1) return Float64Array.of(start);
  return Float64Array.from({ length: count }, (_, i) =>
    i === count - 1 ? stop : start + ((stop - start) * i) / (count - 1),
  );
}

function checkRange(text: string, start: number, stop: number, count: number): void {
  if (start < 0) throw impossible(text, 'a radius is at least 0');
  if (count < 1 || count > mostRadii) throw impossible(text, `the count must be 1 to ${mostRadii}`);
  if (count === 1 ? stop !== start : stop <= start) {
    throw impossible(text, 'STOP must be above START (a single radius has both equal and a count of 1)');
  }
}

function impossible(text: string, reason: string): Problem {
  return new Problem('impossible', `The radii '${text}' cannot be: ${reason}.`, {
    value: text,
    allowed: reason,
  });
}
