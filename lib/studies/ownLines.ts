import type { OwnLine } from '../graph/studies.ts';
import { Problem } from '../problem.ts';
import { quoted } from './formulaProblem.ts';

/** A line that cannot be used, and why. */
export interface OwnProblem {
  /** Which line, counted from 0. */
  readonly line: number;
  readonly id: string;
  readonly problem: Problem;
}

/** As many lines are kept, and as long a name and a description. */
export const ownLimits = { lines: 200, id: 40, name: 80, about: 500 } as const;

const idPattern = /^own\.[a-z][A-Za-z0-9]*$/;

/** True for what can be the id of an own quantity. */
export const isOwnId = (id: string): boolean => idPattern.test(id) && id.length <= ownLimits.id;

/** Throws `impossible` for an id that is not of the form `own.name` or that `isTaken`, and for missing or long texts. */
export function checkLine(line: OwnLine, number: number, isTaken: (id: string) => boolean): void {
  const { id, name, formula, about = '' } = line;
  if (number >= ownLimits.lines) {
    throw new Problem('impossible', `There are more than ${ownLimits.lines} own quantities; take some out.`);
  }
  if (![id, name, formula, about, line.display ?? ''].every((text) => typeof text === 'string')) {
    throw new Problem('unreadable', 'An own quantity needs id, name and formula as texts.');
  }
  if (!isOwnId(id)) throw wrongId(id);
  if (isTaken(id)) {
    throw new Problem('impossible', `The name ${quoted(id)} is taken already; choose another.`, {
      value: id,
    });
  }
  for (const [what, text, most] of [
    ['name', name, ownLimits.name],
    ['description', about, ownLimits.about],
  ] as const) {
    if (text.length > most) {
      const sentence = `The ${what} of ${id} has ${text.length} characters; at most ${most} are kept.`;
      throw new Problem('impossible', sentence, { value: text });
    }
  }
  if (name.trim() === '') throw new Problem('impossible', `${id} has no name; give it a few words.`);
}

function wrongId(id: string): Problem {
  const allowed = `'own.' and then letters and digits, the first a small letter, at most ${ownLimits.id} characters in all`;
  return new Problem('impossible', `${quoted(id)} cannot be the id of an own quantity; write ${allowed}.`, {
    value: id,
    allowed,
  });
}

/** For each line that leads back to itself, the shortest chain of ids from it to it; `uses` holds what each line names. */
export function circlesAmong(uses: ReadonlyMap<string, readonly string[]>): Map<string, readonly string[]> {
  const found = [...uses.keys()].map((id) => [id, chainBack(id, uses)] as const);
  return new Map(
    found.filter((entry): entry is readonly [string, readonly string[]] => entry[1] !== undefined),
  );
}

function chainBack(
  start: string,
  uses: ReadonlyMap<string, readonly string[]>,
): readonly string[] | undefined {
  const chains: (readonly string[])[] = [[start]];
  const seen = new Set<string>();
  for (const chain of chains) {
    for (const next of uses.get(chain.at(-1)!) ?? []) {
      if (next === start) return [...chain, next];
      if (seen.has(next)) continue;
      seen.add(next);
      chains.push([...chain, next]);
    }
  }
  return undefined;
}
