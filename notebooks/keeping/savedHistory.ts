import * as v from 'valibot';
import { designGraph } from '../../lib/design/design.ts';
import { entriesOf } from '../../lib/design/savedFile.ts';
import { type FileSource, readInputs, writeInputs } from '../../lib/design/savedInputs.ts';
import { readStudies, studiesSchema, writeStudies } from '../../lib/design/savedStudies.ts';
import { issueWords } from '../../lib/design/schemaWords.ts';
import type { History } from '../../lib/graph/history.ts';
import type { OriginalFile } from '../../lib/graph/originals.ts';
import type { DesignState, Kept } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { Problem } from '../../lib/problem.ts';

const kept = v.object({ inputs: entriesOf(v.unknown()), files: entriesOf(v.string()) });
const step = v.object({
  inputs: entriesOf(v.unknown()),
  name: v.optional(v.string()),
  about: v.optional(v.string()),
  kept: v.optional(kept),
  studies: v.optional(studiesSchema),
});
const schema = v.object({
  version: v.literal(1),
  at: v.pipe(v.number(), v.integer(), v.minValue(0)),
  steps: v.pipe(v.array(step), v.minLength(1)),
});

/** What changed from one state to the next, as saved entries; the first step holds everything. */
type SavedStep = v.InferOutput<typeof step>;

/** A design with its undo and redo: the steps in order, and which of them is the present one. */
export type SavedHistory = v.InferOutput<typeof schema>;

/** A step as written, and the files that it names. */
interface WrittenStep {
  readonly before: DesignState | undefined;
  readonly step: SavedStep;
  readonly files: readonly OriginalFile[];
}

// States are never changed: of a long history only the last step is new when it is written again.
const writtenSteps = new WeakMap<DesignState, WrittenStep>();

/** The history as plain data, and the files that its states were read from. */
export function saveHistory({ past, present, future }: History): {
  readonly saved: SavedHistory;
  readonly files: readonly OriginalFile[];
} {
  const states = [...past, present, ...future];
  const steps = states.map((state, i) => writeStep(states[i - 1], state));
  return {
    saved: { version: 1, at: past.length, steps: steps.map((one) => one.step) },
    files: steps.flatMap((one) => one.files),
  };
}

const none: Kept = { inputs: {}, files: {} };

function writeStep(before: DesignState | undefined, state: DesignState): WrittenStep {
  const known = writtenSteps.get(state);
  if (known && known.before === before) return known;
  const changed = Object.entries(state.inputs).filter(([id, value]) => !Object.is(value, before?.inputs[id]));
  const { entries, files } = writeInputs(designGraph, before ? Object.fromEntries(changed) : state.inputs);
  const { name = '', about = '', kept = none, studies = noStudies } = state;
  const written = writeStudies(designGraph, studies, designGraph.initial);
  const step: SavedStep = {
    inputs: entries,
    ...(name === (before?.name ?? '') ? {} : { name }),
    ...(about === (before?.about ?? '') ? {} : { about }),
    ...(kept === (before?.kept ?? none) ? {} : { kept }),
    ...(studies === (before?.studies ?? noStudies) ? {} : { studies: written.saved }),
  };
  const made = { before, step, files: [...files, ...written.files] };
  writtenSteps.set(state, made);
  return made;
}

/**
 * The history of saved data. Where a former state cannot be read any more, the present one comes back alone; where that
 * cannot either, a Problem says why. What was saved by a later program is kept.
 */
export function restoreHistory(data: unknown, files: FileSource): History {
  const parsed = v.safeParse(schema, data);
  if (!parsed.success || parsed.output.at >= parsed.output.steps.length)
    throw unreadable(parsed.success ? 'its present state is missing' : issueWords(parsed.issues[0]));
  const { at, steps } = parsed.output;
  const source = readOnce(files);
  try {
    const states = restoreSteps(steps, source);
    return { past: states.slice(0, at), present: states[at]!, future: states.slice(at + 1), open: false };
  } catch {
    const [present] = restoreSteps([steps.slice(0, at + 1).reduce(joined)], source);
    return { past: [], present: present!, future: [], open: false };
  }
}

function unreadable(why: string): Problem {
  return new Problem('unreadable', `What this browser kept is no design: ${why}.`);
}

function joined(one: SavedStep, next: SavedStep): SavedStep {
  return { ...one, ...next, inputs: { ...one.inputs, ...next.inputs } };
}

/** Nobody writes what the browser keeps: there is nothing to mend by hand. */
const place = { at: (id: string) => `what was kept of ${id}`, remedy: () => '' };

function restoreSteps(steps: readonly SavedStep[], files: FileSource): DesignState[] {
  const states: DesignState[] = [];
  let state: DesignState = { inputs: designGraph.initial, revision: -1 };
  for (const { inputs: entries, studies, ...texts } of steps) {
    const { patch, unknown } = readInputs(designGraph, entries, place, files);
    state = {
      ...state,
      ...defined(texts),
      ...(studies && { studies: readStudies(designGraph, studies, designGraph.initial, place, files) }),
      inputs: { ...state.inputs, ...patch },
      revision: state.revision + 1,
    };
    if (Object.keys(unknown).length > 0) {
      const { inputs, files } = state.kept ?? none;
      state = { ...state, kept: { inputs: { ...inputs, ...unknown }, files } };
    }
    states.push(state);
  }
  return states;
}

function defined(texts: Omit<SavedStep, 'inputs' | 'studies'>): Pick<DesignState, 'name' | 'about' | 'kept'> {
  return Object.fromEntries(Object.entries(texts).filter(([, value]) => value !== undefined));
}

/** The same file is read once, however many states hold it. */
function readOnce({ bytesOf, read }: FileSource): FileSource {
  const known = new Map<string, { readonly bytes: Uint8Array; readonly value: unknown }>();
  return {
    bytesOf,
    read: (id, bytes, name) => {
      const key = `${id} ${name}`;
      const before = known.get(key);
      if (before?.bytes === bytes) return before.value;
      const value = read(id, bytes, name);
      known.set(key, { bytes, value });
      return value;
    },
  };
}
