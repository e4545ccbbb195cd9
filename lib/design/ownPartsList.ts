import type { Patch } from '../graph/state.ts';
import { Problem } from '../problem.ts';
import { createPart, type OwnPart, type PartKind, readNote } from './ownParts.ts';

/** Parts of one's own, in the order in which they were kept. Never changed in place. */
export type OwnParts = readonly OwnPart[];

/** The part of that name, whatever the case of its letters. */
export function findPart(parts: OwnParts, kind: PartKind, name: string): OwnPart | undefined {
  return parts.find((part) => part.kind === kind && sameName(part.name, name));
}

function sameName(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}

/** The list with one more part; a name that is taken throws a Problem. */
export function addPart(parts: OwnParts, part: OwnPart): OwnParts {
  refuseTaken(findPart(parts, part.kind, part.name));
  return [...parts, part];
}

function refuseTaken(other: OwnPart | undefined): void {
  if (!other) return;
  throw new Problem(
    'impossible',
    `The list already has the ${other.kind} ‘${other.name}’; choose another name, or rename or remove that one first.`,
    { value: other.name },
  );
}

/** The list with another name, and another note where one is given, for a part of it. */
export function renamePart(
  parts: OwnParts,
  kind: PartKind,
  name: string,
  newName: string,
  note?: string,
): OwnParts {
  const part = partOf(parts, kind, name);
  const next = createPart(kind, newName, part.values, note === undefined ? part.note : readNote(note));
  const other = findPart(parts, kind, next.name);
  if (other !== part) refuseTaken(other);
  return parts.map((one) => (one === part ? next : one));
}

/** The list without that part. */
export function removePart(parts: OwnParts, kind: PartKind, name: string): OwnParts {
  const part = partOf(parts, kind, name);
  return parts.filter((one) => one !== part);
}

/** The part of that name; a Problem where there is none. */
export function partOf(parts: OwnParts, kind: PartKind, name: string): OwnPart {
  const part = findPart(parts, kind, name);
  if (part) return part;
  throw new Problem('absent', `The list no longer has the ${kind} ‘${name}’; choose another one.`, {
    value: name,
  });
}

/** Two lists as one, and what became of the parts of the second. */
export interface MergedParts {
  readonly parts: OwnParts;
  readonly added: OwnParts;
  /** Already there, with the same name and values. */
  readonly same: OwnParts;
  /** Left out: their names stand for other values in the first list. */
  readonly leftOut: OwnParts;
}

/** Adds parts to a list and never changes one that is there. */
export function mergeParts(parts: OwnParts, more: OwnParts): MergedParts {
  let merged = parts;
  const result = { added: [] as OwnPart[], same: [] as OwnPart[], leftOut: [] as OwnPart[] };
  for (const part of more) {
    const other = findPart(merged, part.kind, part.name);
    if (!other) {
      merged = addPart(merged, part);
      result.added.push(part);
    } else result[equalValues(part, other) ? 'same' : 'leftOut'].push(part);
  }
  return { parts: merged, ...result };
}

function equalValues(a: OwnPart, b: OwnPart): boolean {
  const ids = new Set([...Object.keys(a.values), ...Object.keys(b.values)]);
  return [...ids].every((id) => sameValue(a.values[id], b.values[id]));
}

/** Typed in other units, the same length may differ in its last digits. */
const sameWithin = 1e-9;

/** The parts of that kind whose values are all those of the design. */
export function partsLike(parts: OwnParts, kind: PartKind, inputs: Patch): OwnPart[] {
  return parts.filter(
    (part) =>
      part.kind === kind && Object.entries(part.values).every(([id, value]) => sameValue(value, inputs[id])),
  );
}

/** True for equal choices, and for numbers equal but for rounding. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (typeof a !== 'number' || typeof b !== 'number') return a === b;
  return Math.abs(a - b) <= sameWithin * Math.max(Math.abs(a), Math.abs(b));
}
