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

/** A quantity of the person's own: one line of a formula with its name. */
export interface OwnLine {
  /** `own.` and a name of letters and digits that begins with a small letter: `own.depthRatio`. */
  readonly id: string;
  /** Short name in words, as a label: "depth to width". */
  readonly name: string;
  readonly formula: string;
  /** Unit to show it in, as it can be typed; left out, the unit of what it is made of. */
  readonly display?: string;
  /** What it is for, in the person's words. */
  readonly about?: string;
}

/** A number input that a chart runs over, from one end to the other. */
export interface OwnAxis {
  readonly id: string;
  /** SI unit of the ends. */
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly by: 'steps' | 'factors';
}

interface Captioned {
  readonly title?: string;
  readonly caption?: string;
}

/**
 * A piece of a page that the person composes: Markdown with `{id}` for live values and `$…$` for equations, a block of
 * any document (its chart with other ends of the axes, in the units shown), values side by side, inputs to set, the
 * formula of a quantity, or a chart of any results over any input.
 */
export type OwnBlock =
  | { readonly kind: 'text'; readonly text: string }
  | (Captioned & {
      readonly kind: 'block';
      readonly document: string;
      readonly block: string;
      readonly x?: readonly [number, number];
      readonly y?: readonly [number, number];
    })
  | (Captioned & { readonly kind: 'values' | 'controls'; readonly ids: readonly string[] })
  | (Captioned & { readonly kind: 'equation'; readonly id: string })
  | (Captioned & { readonly kind: 'chart'; readonly over: OwnAxis; readonly ids: readonly string[] });

/** A page that the person composes. */
export interface OwnDocument {
  /** Unique among them; never changes. */
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly OwnBlock[];
}

/** What a step of a lecture asks the room before its charts are drawn. */
export interface RoomQuestion {
  /** Markdown, as in own text. */
  readonly question: string;
  /** What the room may choose among; none where the question is open. */
  readonly options: readonly string[];
  /** Place of the first piece that is withheld until then: of a chart the axes are drawn, of all else nothing. */
  readonly from: number;
}

/** One idea on a screen. */
export interface LectureStep {
  /** Unique in its lecture; never changes. */
  readonly id: string;
  readonly title: string;
  readonly pieces: readonly OwnBlock[];
  /** Inputs set as the step opens, SI by id. */
  readonly sets?: Readonly<Record<string, unknown>>;
  /** Saved entries of inputs to set that this program does not know. */
  readonly kept?: Readonly<Record<string, unknown>>;
  readonly ask?: RoomQuestion;
  /** For the lecturer alone: what to say; Markdown. */
  readonly notes?: string;
  /** Time meant for it, minutes. */
  readonly minutes?: number;
}

/** Steps in order, given over the design that it is kept with. */
export interface Lecture {
  /** Unique among them; never changes. */
  readonly id: string;
  readonly title: string;
  readonly about?: string;
  readonly steps: readonly LectureStep[];
}

/** What a person keeps with a design besides its inputs. */
export interface Studies {
  readonly alternatives: readonly Alternative[];
  readonly requirements: readonly Requirement[];
  readonly ownLines: readonly OwnLine[];
  readonly ownDocuments: readonly OwnDocument[];
  /** The person's own words in the written rationale, Markdown by the name of their section. */
  readonly texts: Readonly<Record<string, string>>;
  readonly lectures: readonly Lecture[];
}

export const noStudies: Studies = {
  alternatives: [],
  requirements: [],
  ownLines: [],
  ownDocuments: [],
  texts: {},
  lectures: [],
};

/** True where nothing differs; values of inputs by identity, as everywhere. */
export function sameStudies(one: Studies = noStudies, other: Studies = noStudies): boolean {
  return (
    one === other ||
    (one.alternatives.length === other.alternatives.length &&
      one.alternatives.every((alternative, i) => sameAlternative(alternative, other.alternatives[i]!)) &&
      sameLectures(one.lectures, other.lectures) &&
      writtenIn(one) === writtenIn(other))
  );
}

/** All but the alternatives and what steps set, which hold files and tables. */
function writtenIn({ requirements, ownLines, ownDocuments, texts }: Studies): string {
  return JSON.stringify([requirements, ownLines, ownDocuments, Object.entries(texts).sort()]);
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

function sameLectures(one: readonly Lecture[], other: readonly Lecture[]): boolean {
  if (one === other) return true;
  const plain = (lectures: readonly Lecture[]) =>
    JSON.stringify(lectures, (key, value) => (key === 'sets' ? Object.keys(value).sort() : value));
  const setIn = (lectures: readonly Lecture[]) =>
    lectures.flatMap(({ steps }) =>
      steps.flatMap(({ sets = {} }) => Object.entries(sets).sort(([a], [b]) => (a < b ? -1 : 1))),
    );
  const set = setIn(other);
  return plain(one) === plain(other) && setIn(one).every(([, value], i) => Object.is(value, set[i]?.[1]));
}
