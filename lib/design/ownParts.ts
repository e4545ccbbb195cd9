import type { ChoiceInput, NumberInput } from '../graph/quantity.ts';
import { checkInput, type Patch } from '../graph/state.ts';
import { Problem } from '../problem.ts';
import { expanderKind, firstFocalLength, magnification, secondFocalLength, separation } from './expander.ts';
import { focalLength } from './lens.ts';
import {
  apertureDiameter,
  glass,
  madeHeight,
  plateSource,
  raised,
  stepDiameter,
  stop,
  typedIndex,
} from './plate.ts';

/** Parts that a person can own and choose again. */
export const partKinds = ['lens', 'expander', 'plate'] as const;
export type PartKind = (typeof partKinds)[number];

/** A lens, an expander or a plate that a person owns. */
export interface OwnPart {
  readonly kind: PartKind;
  /** One line, up to `longestName` signs; no other part of its kind has it. */
  readonly name: string;
  /** One line for the person, empty where there is none. */
  readonly note: string;
  /** SI values by input id: the patch that chooses the part. */
  readonly values: Patch;
}

/** Signs of a name or a note that fit a list; longer ones are pasted by mistake. */
export const longestName = 60;
export const longestNote = 200;

/** An input that a part brings. */
interface Carried {
  readonly input: NumberInput | ChoiceInput;
  /** It counts only while that choice of the part is so. */
  readonly when?: readonly [choice: ChoiceInput, value: string];
  /** The one way it can be. */
  readonly only?: string;
  /** A part may leave it out: the setup then keeps its own. */
  readonly optional?: true;
}

const byMagnification = [expanderKind, 'magnification'] as const;
const byLenses = [expanderKind, 'lenses'] as const;

/**
 * What belongs to the part, and not to the setup around it. The distances before and behind a part are the table's. A
 * plate keeps its height and never a phase, since the step does not grow with the wavelength of the next laser. The
 * stop is the smallest of plate edge, scanner pupil and lens mount: the plate's only where a person says so.
 */
const carried: Readonly<Record<PartKind, readonly Carried[]>> = {
  lens: [{ input: focalLength }],
  expander: [
    { input: expanderKind },
    { input: magnification, when: byMagnification },
    { input: firstFocalLength, when: byLenses },
    { input: separation, when: byLenses },
    { input: secondFocalLength, when: byLenses },
  ],
  plate: [
    { input: stepDiameter },
    { input: plateSource, only: 'made' },
    { input: madeHeight },
    { input: glass },
    { input: typedIndex, when: [glass, 'typed'] },
    { input: raised },
    { input: stop, optional: true },
    { input: apertureDiameter, when: [stop, 'round'] },
  ],
};

/** Every input that a part of that kind may bring. */
export function inputsOfKind(kind: PartKind): readonly (NumberInput | ChoiceInput)[] {
  return carried[kind].map(({ input }) => input);
}

/**
 * A part of one's own from values by id, others than its own left out. Throws a Problem where the name is empty or too
 * long, or where a value is missing or not allowed.
 */
export function createPart(kind: PartKind, name: string, given: Patch, note = ''): OwnPart {
  const values: Record<string, unknown> = {};
  for (const { input, when, only, optional } of carried[kind]) {
    if (when && values[when[0].id] !== when[1]) continue;
    const value = Object.hasOwn(given, input.id) ? given[input.id] : only;
    if (value === undefined && optional) continue;
    if (value === undefined) throw missingValue(kind, input);
    values[input.id] = checkInput(input, value);
    if (only !== undefined && value !== only) throw notMade(input);
  }
  return {
    kind,
    name: oneLine(name, `name of the ${kind}`, longestName, true),
    note: readNote(note),
    values,
  };
}

/** A note as it is kept: one line, which may be empty. */
export function readNote(note: string): string {
  return oneLine(note, 'note', longestNote, false);
}

/** A text without line breaks, trimmed; a Problem that names `what` where it is too long, or empty where it is `needed`. */
export function oneLine(text: string, what: string, longest: number, needed: boolean): string {
  const line = text.replace(/\s+/g, ' ').trim();
  if (line === '' && needed) {
    throw new Problem('impossible', `The ${what} is empty; give it one that you will know again.`);
  }
  if (line.length > longest) {
    throw new Problem(
      'impossible',
      `The ${what} has ${line.length} signs; up to ${longest} are possible. Shorten it.`,
      { value: String(line.length), allowed: `up to ${longest} signs` },
    );
  }
  return line;
}

function missingValue(kind: PartKind, { id, name }: NumberInput | ChoiceInput): Problem {
  return new Problem('unreadable', `The ${name} (${id}) of the ${kind} is missing; add it.`, { input: id });
}

function notMade({ id }: NumberInput | ChoiceInput): Problem {
  return new Problem(
    'impossible',
    `A plate of your own is a made one: its ${madeHeight.name} (${madeHeight.id}) is kept, not the phase it was designed for. Set ${id} to 'made'.`,
    { input: id, allowed: 'made' },
  );
}
