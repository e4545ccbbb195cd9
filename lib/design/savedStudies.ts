import * as v from 'valibot';
import type { Graph } from '../graph/graph.ts';
import type { OriginalFile } from '../graph/originals.ts';
import type { Patch } from '../graph/state.ts';
import type { Alternative, Requirement, Studies } from '../graph/studies.ts';
import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { inPlace } from './ownPartsFile.ts';
import { entriesOf } from './savedFile.ts';
import { type FileSource, readInputs, type SavedPlace, writeInputs } from './savedInputs.ts';
import { lectureSchema, readLectures, writeLectures } from './savedLectures.ts';
import { readWritings, writingsSchema } from './savedWritings.ts';

const alternativeSchema = v.object({
  name: v.string(),
  about: v.optional(v.string(), ''),
  inputs: entriesOf(v.unknown()),
});
const requirementSchema = v.object({
  id: v.string(),
  unit: v.string(),
  atLeast: v.optional(v.pipe(v.number(), v.finite())),
  atMost: v.optional(v.pipe(v.number(), v.finite())),
  reason: v.optional(v.string(), ''),
});

/** Studies as they are saved, with a design, a link or a history. */
export const studiesSchema = v.object({
  alternatives: v.optional(v.array(alternativeSchema), []),
  requirements: v.optional(v.array(requirementSchema), []),
  // Since version 4.
  ...writingsSchema,
  // Since version 5.
  lectures: v.optional(v.array(lectureSchema), []),
});

export type SavedStudies = v.InferOutput<typeof studiesSchema>;

/** As many alternatives and requirements as a page can show. */
export const mostAlternatives = 20;
export const mostRequirements = 100;

/** Studies as plain data, and the files that they name. Inputs that are as in `base` are left out. */
export function writeStudies(
  graph: Graph,
  { alternatives, requirements, ownLines, ownDocuments, texts, lectures }: Studies,
  base: Patch = {},
): { readonly saved: SavedStudies; readonly files: readonly OriginalFile[] } {
  const written = alternatives.map(({ name, about, inputs, kept }) => {
    const changed = Object.entries(inputs).filter(
      ([id, value]) => !(Object.hasOwn(base, id) && Object.is(value, base[id])),
    );
    const { entries, files } = writeInputs(graph, Object.fromEntries(changed));
    return { saved: { name, about, inputs: { ...entries, ...kept } }, files };
  });
  const given = writeLectures(graph, lectures);
  return {
    saved: {
      alternatives: written.map((one) => one.saved),
      requirements: requirements.map((one) => ({ ...one })),
      ...plainCopy({ ownLines, ownDocuments, texts }),
      lectures: given.saved,
    },
    files: [...written.flatMap((one) => one.files), ...given.files],
  };
}

/** Saved data is no part of the state: nobody who changes one changes the other. */
function plainCopy(writings: Pick<Studies, 'ownLines' | 'ownDocuments' | 'texts'>): SavedWritings {
  return JSON.parse(JSON.stringify(writings));
}

type SavedWritings = Pick<SavedStudies, 'ownLines' | 'ownDocuments' | 'texts'>;

/** Studies from plain data; inputs that an alternative leaves out are as in `base`. */
export function readStudies(
  graph: Graph,
  saved: SavedStudies,
  base: Patch,
  place: SavedPlace,
  files: FileSource,
): Studies {
  const { alternatives, requirements } = saved;
  tooMany('alternatives', alternatives.length, mostAlternatives);
  tooMany('requirements', requirements.length, mostRequirements);
  return {
    alternatives: alternatives.map((one) => readAlternative(graph, one, base, place, files)),
    requirements: requirements.map((one) => readRequirement(graph, one, place)),
    ...readWritings(saved),
    lectures: readLectures(graph, saved.lectures, place, files),
  };
}

function tooMany(words: string, count: number, most: number): void {
  if (count <= most) return;
  throw new Problem('impossible', `${count} ${words} are too many; up to ${most} are kept with a design.`, {
    value: String(count),
    allowed: `up to ${most}`,
  });
}

function readAlternative(
  graph: Graph,
  { name, about, inputs }: SavedStudies['alternatives'][number],
  base: Patch,
  { at, remedy }: SavedPlace,
  files: FileSource,
): Alternative {
  const inAlternative = { at: (id: string) => `${at(id)} of the alternative ‘${name.slice(0, 40)}’`, remedy };
  const { patch, unknown } = readInputs(graph, inputs, inAlternative, files);
  const kept = Object.keys(unknown).length === 0 ? {} : { kept: unknown };
  return { name, about, inputs: { ...base, ...patch }, ...kept };
}

/** Bounds in the unit of the quantity; a quantity of a later program keeps what was saved. */
function readRequirement(
  graph: Graph,
  { id, unit, atLeast, atMost, reason }: SavedStudies['requirements'][number],
  { at }: SavedPlace,
): Requirement {
  return inPlace(at(id), () => {
    if (atLeast === undefined && atMost === undefined)
      throw new Problem('unreadable', 'This requirement gives neither atLeast nor atMost.');
    const own = graph.quantities.get(id)?.unit;
    const target = typeof own === 'string' ? own : unit;
    if (!isKnownUnit(unit) || !sameDimensions(dimensionsOf(unit), dimensionsOf(target)))
      throw new Problem(
        'unreadable',
        `This requirement is given in '${unit.slice(0, 40)}', which is no unit for it.`,
      );
    const inSi = (value: number) => fromUnit(value, target, unit);
    return {
      id,
      unit: target,
      ...(atLeast === undefined ? {} : { atLeast: inSi(atLeast) }),
      ...(atMost === undefined ? {} : { atMost: inSi(atMost) }),
      reason,
    };
  });
}
