import type { Patch } from '../../../lib/graph/state.ts';
import type { SolveRequest, SolveResult } from '../../../lib/studies/solveRequest.ts';
import { emptySolveForm, type SolveForm } from '../../solveForm.ts';
import type { Varied } from '../../varied.ts';
import { emptyVaryForm, type VaryForm } from '../../varyForm.ts';
import type { Live } from '../live.ts';

/** A proposal as it was found. */
export interface Proposal {
  /** Inputs from which it was looked for. */
  readonly inputs: Patch;
  readonly request: SolveRequest;
  readonly result: SolveResult;
  /** Which solution is shown, 0 for the first. */
  chosen: number;
}

/** What the tools of a page hold while the person is elsewhere on it. */
export interface ToolMemory {
  solve: SolveForm;
  proposal: Proposal | undefined;
  vary: VaryForm;
  varied: Varied | undefined;
  /** Name typed for what is to be kept as an alternative; empty for the one that is offered. */
  alternative: string;
  /** A number brought from elsewhere, until its tool has taken it. */
  asked: { readonly tool: 'solve' | 'vary'; readonly id: string } | undefined;
  /** The tools that are on the page hear of it at once. */
  readonly listeners: Set<() => void>;
}

const memories = new WeakMap<Live, ToolMemory>();

/** The memory of a page's tools. */
export function toolMemory(live: Live): ToolMemory {
  const kept = memories.get(live);
  if (kept) return kept;
  const made: ToolMemory = {
    solve: emptySolveForm(),
    proposal: undefined,
    vary: emptyVaryForm(),
    varied: undefined,
    alternative: '',
    asked: undefined,
    listeners: new Set(),
  };
  memories.set(live, made);
  return made;
}

/** Brings a number to a tool. */
export function askTool(live: Live, tool: 'solve' | 'vary', id: string): void {
  const memory = toolMemory(live);
  memory.asked = { tool, id };
  for (const listener of memory.listeners) listener();
}

/** Takes what was brought to `tool`, now and whenever something is; returns how to end that. */
export function onAsked(live: Live, tool: 'solve' | 'vary', take: (id: string) => void): () => void {
  const memory = toolMemory(live);
  const listen = () => {
    if (memory.asked?.tool !== tool) return;
    const { id } = memory.asked;
    memory.asked = undefined;
    take(id);
  };
  memory.listeners.add(listen);
  listen();
  return () => memory.listeners.delete(listen);
}
