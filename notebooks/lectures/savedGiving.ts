import * as v from 'valibot';
import { entriesOf } from '../../lib/design/savedFile.ts';
import { type FileSource, readInputs, writeInputs } from '../../lib/design/savedInputs.ts';
import { writeLectures } from '../../lib/design/savedLectures.ts';
import type { Graph } from '../../lib/graph/graph.ts';
import { startHistory } from '../../lib/graph/history.ts';
import { applyPatch, type DesignState } from '../../lib/graph/state.ts';
import type { Lecture, LectureStep } from '../../lib/graph/studies.ts';
import { sha256 } from '../../lib/measured/sha256.ts';
import { type Giving, preparedDesign, type StepRoom } from './giving.ts';

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const roomSchema = v.object({
  revealed: v.boolean(),
  chosen: v.optional(count),
  moved: v.optional(entriesOf(v.unknown())),
});
const schema = v.object({
  version: v.literal(1),
  /** Tells this lecture over this design from all others. */
  of: v.string(),
  place: count,
  began: v.pipe(v.number(), v.finite()),
  left: v.optional(v.pipe(v.number(), v.finite())),
  /** The lecturer’s page was open. */
  beside: v.boolean(),
  rooms: entriesOf(roomSchema),
});
type SavedRoom = v.InferOutput<typeof roomSchema>;

/** A lecture that is given, as plain data that outlasts the page. */
export type SavedGiving = v.InferOutput<typeof schema>;

/** A lecture and the design that it is given over. */
export interface GivenOver {
  readonly lecture: Lecture;
  readonly design: DesignState;
}

/** The lecture as it stands. What was moved is kept by step; files are not, nor the steps back. */
export function saveGiving(
  graph: Graph,
  { lecture, place, began, left, rooms }: Giving,
  design: DesignState,
  beside: boolean,
): SavedGiving {
  const saved = lecture.steps.flatMap((step): [string, SavedRoom][] => {
    const room = rooms[step.id];
    return room ? [[step.id, saveRoom(graph, room, preparedDesign(graph, design, step).design)]] : [];
  });
  const of = givenMark(graph, { lecture, design });
  const rest = left !== undefined && { left };
  return { version: 1, of, place, began, ...rest, beside, rooms: Object.fromEntries(saved) };
}

function saveRoom(graph: Graph, { revealed, chosen, designs }: StepRoom, { inputs }: DesignState): SavedRoom {
  const now = designs?.present.inputs ?? inputs;
  const moved = Object.entries(now).filter(([id, value]) => {
    const kind = graph.quantities.get(id)?.kind;
    return kind !== 'file' && kind !== 'list' && !Object.is(inputs[id], value);
  });
  const { entries } = writeInputs(graph, Object.fromEntries(moved));
  return { revealed, ...(chosen !== undefined && { chosen }), ...(moved.length > 0 && { moved: entries }) };
}

/** The kept data of `text` by the id of their lecture; what cannot be read is left out. */
export function readGivings(text: string | null): Readonly<Record<string, SavedGiving>> {
  try {
    const data: unknown = JSON.parse(text ?? '{}');
    return Object.fromEntries(
      Object.entries(data as object).flatMap(([id, one]) => {
        const read = v.safeParse(schema, one);
        return read.success ? [[id, read.output]] : [];
      }),
    );
  } catch {
    return {};
  }
}

/** The lecture as it was kept; nothing where it or its design is another since. */
export function restoreGiving(graph: Graph, saved: SavedGiving, over: GivenOver): Giving | undefined {
  const { lecture, design } = over;
  if (saved.of !== givenMark(graph, over) || saved.place >= lecture.steps.length) return undefined;
  const rooms = lecture.steps.flatMap((step): [string, StepRoom][] => {
    const room = Object.hasOwn(saved.rooms, step.id) ? saved.rooms[step.id] : undefined;
    return room ? [[step.id, restoreRoom(graph, room, step, design)]] : [];
  });
  const { place, began, left } = saved;
  const rest = left !== undefined && { left };
  return { lecture, place, began, ...rest, blank: false, rooms: Object.fromEntries(rooms) };
}

function restoreRoom(
  graph: Graph,
  { revealed, chosen, moved }: SavedRoom,
  step: LectureStep,
  design: DesignState,
): StepRoom {
  const isOption = chosen !== undefined && chosen < (step.ask?.options.length ?? 0);
  const room = { revealed, ...(isOption && { chosen }) };
  if (!moved) return room;
  const prepared = preparedDesign(graph, design, step).design;
  try {
    const { patch } = readInputs(graph, moved, place, noFiles);
    const present = applyPatch(graph, prepared, patch);
    return { ...room, designs: { ...startHistory(present), past: [prepared] } };
  } catch {
    // What cannot be set any more is as it was prepared.
    return room;
  }
}

/** Nobody writes what the browser keeps: there is nothing to mend by hand. */
const place = { at: (id: string) => `what was kept of ${id}`, remedy: () => '' };
const noFiles: FileSource = { bytesOf: () => undefined, read: () => null };

/** The same for the same lecture over the same inputs, also after the page was loaded again. */
export function givenMark(graph: Graph, { lecture, design }: GivenOver): string {
  const written = [writeLectures(graph, [lecture]).saved, writeInputs(graph, design.inputs).entries];
  return sha256(new TextEncoder().encode(JSON.stringify(written)));
}
