import { designGraph } from '../../../lib/design/design.ts';
import { applyPatch, initialState, type Patch } from '../../../lib/graph/state.ts';
import type { PageContext } from '../context.ts';
import { createDrafts } from '../controls/drafts.ts';
import type { HeavyPort } from '../heavy/heavyMessages.ts';
import { openWorker } from '../heavy/openWorker.ts';
import { createLive } from '../live.ts';
import { createTracePanel } from '../trace.ts';

/** The designs of a lesson: one that goes on from task to task, each task over its own state of it. */
export interface LessonDesigns {
  /** What a task shows its blocks with; tasks that begin with the same inputs share theirs. */
  of(patch: Patch): LessonDesign;
}

export interface LessonDesign {
  readonly context: PageContext;
  /** Whether its inputs are no longer those that the task began with. */
  isChanged(): boolean;
  /** Brings those back. */
  restore(): void;
}

/** Makes designs beside the open one, which none of them touches; their workers and traces end with the lesson. */
export function createLessonDesigns(page: PageContext, stops: (() => void)[]): LessonDesigns {
  const made = new Map<string, LessonDesign>();
  return {
    of(patch) {
      const key = JSON.stringify(Object.entries(patch).sort(([a], [b]) => (a < b ? -1 : 1)));
      const known = made.get(key);
      if (known) return known;
      const design = createDesign(page, patch, stops);
      made.set(key, design);
      return design;
    },
  };
}

function createDesign(page: PageContext, patch: Patch, stops: (() => void)[]): LessonDesign {
  const { document, ownParts, report, define } = page;
  const ports: HeavyPort[] = [];
  const start = applyPatch(designGraph, initialState(designGraph), patch);
  const live = createLive(designGraph, start, (replied, failed) => {
    const port = openWorker(replied, failed);
    ports.push(port);
    return port;
  });
  const context: PageContext = {
    document,
    live,
    ownParts,
    within: page.within,
    drafts: createDrafts(live),
    passing: true,
    open: () => {},
    // Values there are those of the open design, and might pass for those of the case.
    ...(define && { define: (word, from) => define(word, from, true) }),
    report,
  };
  const trace = createTracePanel(context, () => undefined);
  context.open = trace.open;
  (document.querySelector('.page') ?? document.body.lastElementChild ?? document.body).after(trace.element);
  stops.push(() => {
    trace.close();
    trace.element.remove();
    for (const port of ports) port.close();
  });
  const changed = () =>
    Object.entries(live.state().inputs).filter(([id, value]) => !Object.is(value, start.inputs[id]));
  return {
    context,
    isChanged: () => changed().length > 0,
    restore: () => live.set(Object.fromEntries(changed().map(([id]) => [id, start.inputs[id]]))),
  };
}
