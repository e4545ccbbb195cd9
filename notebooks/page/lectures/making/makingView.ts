import type { Lecture } from '../../../../lib/graph/studies.ts';
import { addSteps, duplicateStep, moveStep, takeOutStep } from '../../../../lib/studies/lectureSteps.ts';
import { lectureOf, type StepDraft } from '../../../../lib/studies/lectures.ts';
import type { PageContext, RenderBlock } from '../../context.ts';
import { element } from '../../element.ts';
import { createDragging } from '../../studies/own/dragging.ts';
import type { LectureMemory } from '../lectureMemory.ts';
import { createAddSteps } from './addSteps.ts';
import { createStepEditor, type StepEditor } from './stepEditor.ts';
import { createStepRow, type StepActs, type StepRow } from './stepRow.ts';

/** The steps of a lecture in order, one of them open to be changed. */
export interface MakingView {
  readonly element: HTMLElement;
  /** Shows the lecture as it stands. */
  refresh(lecture: Lecture): void;
  /** Takes what is being written; false where that cannot be, and its field says why. */
  finish(): boolean;
  close(): void;
}

/** `said` tells in words what was done. */
export function createMaking(
  context: PageContext,
  id: string,
  memory: LectureMemory,
  renderBlock: RenderBlock,
  said: (text: string) => void,
): MakingView {
  const { document, live } = context;
  const rows = new Map<string, StepRow>();
  let editor: { readonly step: string; readonly view: StepEditor } | undefined;
  /** Step that new ones are added below; at the end without one. */
  let below: string | undefined;
  const list = element(document, 'ol', { class: 'lecture-steps', 'aria-label': 'Steps' });
  const steps = () => lectureOf(live.state(), id).steps;
  const at = (place: number) => ({ lecture: id, step: steps()[place]!.id });
  const finish = () => editor?.view.finish() ?? true;
  const focusStep = (place: number, act: Parameters<StepRow['focus']>[0]) => {
    const step = steps()[Math.min(place, steps().length - 1)];
    if (step) rows.get(step.id)?.focus(act);
    else adding.focus();
  };
  const openStep = (step: string | undefined) => {
    memory.step = step;
    refresh(lectureOf(live.state(), id));
  };
  const acts: StepActs = {
    move(from, to) {
      live.open(moveStep(live.state(), id, from, to));
      focusStep(to, to < from ? 'up' : 'down');
      said(`Now step ${to + 1} of ${steps().length}.`);
    },
    toggle(place) {
      const { step } = at(place);
      if (!finish()) return;
      openStep(memory.step === step ? undefined : step);
      if (memory.step === step) editor?.view.focus();
      else rows.get(step)?.focus('toggle');
    },
    duplicate(place) {
      attempt(() => {
        live.open(duplicateStep(live.state(), at(place)).design);
        focusStep(place + 1, 'duplicate');
        said('The same step stands below it.');
      });
    },
    addBelow(place) {
      below = at(place).step;
      refresh(lectureOf(live.state(), id));
      adding.focus();
    },
    takeOut(place) {
      live.open(takeOutStep(live.state(), at(place)));
      focusStep(place, 'takeOut');
      said('Taken out. Undo brings it back.');
    },
  };
  const attempt = (act: () => void) => {
    try {
      act();
    } catch (error) {
      said((error as Error).message);
    }
  };
  const dragging = createDragging(acts.move);
  const placeToAdd = () => {
    const place = steps().findIndex((step) => step.id === below);
    return place < 0 ? steps().length : place + 1;
  };
  const adding = createAddSteps(context, memory, {
    add(drafts: readonly StepDraft[]) {
      if (!finish()) return;
      const { design, ids } = addSteps(live.state(), id, placeToAdd(), drafts);
      live.open(design);
      // The next ones go behind these.
      if (below) below = ids.at(-1);
      if (ids.length === 1) {
        openStep(ids[0]);
        editor?.view.focus();
      } else refresh(lectureOf(live.state(), id));
      said(ids.length === 1 ? 'The step is there.' : `${ids.length} steps are there.`);
    },
    back() {
      below = undefined;
      refresh(lectureOf(live.state(), id));
      adding.focus();
    },
  });
  const end = element(document, 'div', { class: 'lecture-end' });
  const closeEditor = () => {
    editor?.view.close();
    editor?.view.element.remove();
    editor = undefined;
  };
  const followEditor = (lecture: Lecture) => {
    const open = lecture.steps.find((step) => step.id === memory.step);
    if (editor && editor.step !== open?.id) closeEditor();
    if (!open) return;
    if (!editor) {
      const place = { lecture: id, step: open.id };
      editor = {
        step: open.id,
        view: createStepEditor(context, place, renderBlock, memory.drafts, said),
      };
      rows.get(open.id)!.inside.append(editor.view.element);
    }
    editor.view.refresh(open, lecture.steps.indexOf(open));
  };
  const refresh = (lecture: Lecture) => {
    const count = lecture.steps.length;
    const kept = new Set(lecture.steps.map((step) => step.id));
    for (const step of [...rows.keys()]) if (!kept.has(step)) rows.delete(step);
    if (editor && !kept.has(editor.step)) closeEditor();
    const wanted = lecture.steps.map((step, place) => {
      const row = rows.get(step.id) ?? createStepRow(context, acts, dragging);
      rows.set(step.id, row);
      row.refresh(step, place, count, memory.step === step.id);
      return row.element;
    });
    arrange(list, wanted);
    list.hidden = count === 0;
    const place = placeToAdd();
    const holder = place < count && below ? rows.get(below)!.element : end;
    if (adding.element.parentNode !== holder) holder.append(adding.element);
    adding.refresh(place, count);
    followEditor(lecture);
  };
  return {
    element: element(document, 'div', { class: 'lecture-making' }, list, end),
    refresh,
    finish,
    close: closeEditor,
  };
}

/** Puts children in order; those that stand right are not touched, so that nothing in them loses the focus or a click. */
function arrange(parent: HTMLElement, wanted: readonly HTMLElement[]): void {
  for (const child of [...parent.children]) if (!wanted.includes(child as HTMLElement)) child.remove();
  wanted.forEach((child, i) => {
    if (parent.children[i] !== child) parent.insertBefore(child, parent.children[i] ?? null);
  });
}
