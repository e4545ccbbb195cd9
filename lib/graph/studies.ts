/** A design that is kept beside the open one, to compare with or to go back to. */
export interface Alternative {
  readonly name: string;
  /** Why it is kept. */
  readonly about: string;
  /** Values of all inputs, SI. */
  readonly inputs: Readonly<Record<string, unknown>>;
  /** Saved entries of inputs that this program does not know. */
  readonly kept?: Readonly<Record<string, unknown>>;
}

/** What is asked of a number of the design, and why. */
export interface Requirement {
  /** Id of the quantity. */
  readonly id: string;
  /** SI unit of the bounds. */
  readonly unit: string;
  /** Bounds; both belong to what is allowed, and at least one is there. */
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly reason: string;
}

/** What a person keeps with a design besides its inputs. */
export interface Studies {
  readonly alternatives: readonly Alternative[];
  readonly requirements: readonly Requirement[];
}

export const noStudies: Studies = { alternatives: [], requirements: [] };

/** True where nothing differs; values of inputs by identity, as everywhere. */
export function sameStudies(one: Studies = noStudies, other: Studies = noStudies): boolean {
  return (
    one === other ||
    (one.alternatives.length === other.alternatives.length &&
      one.alternatives.every((alternative, i) => sameAlternative(alternative, other.alternatives[i]!)) &&
      JSON.stringify(one.requirements) === JSON.stringify(other.requirements))
  );
}

function sameAlternative(one: Alternative, other: Alternative): boolean {
  if (one === other) return true;
  const ids = new Set([...Object.keys(one.inputs), ...Object.keys(other.inputs)]);
  return (
    one.name === other.name &&
    one.about === other.about &&
    JSON.stringify(one.kept ?? {}) === JSON.stringify(other.kept ?? {}) &&
    [...ids].every((id) => Object.is(one.inputs[id], other.inputs[id]))
  );
}
