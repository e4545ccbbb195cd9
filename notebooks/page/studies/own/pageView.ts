import type { Graph } from '../../../../lib/graph/graph.ts';
import type { OwnBlock, OwnDocument } from '../../../../lib/graph/studies.ts';
import {
  addPiece,
  changePiece,
  movePiece,
  ownPagesOf,
  takeOutPiece,
} from '../../../../lib/studies/ownPages.ts';
import { documents } from '../../../contents.ts';
import { ownContents, pieceWords } from '../../../ownBlocks.ts';
import type { PageContext, RenderBlock } from '../../context.ts';
import { freshId } from '../../controls/field.ts';
import { element } from '../../element.ts';
import { renderWork } from '../../workLines.ts';
import { type ArrangeActs, arrangedPiece, kindChoice } from './arrange.ts';
import { createDragging } from './dragging.ts';
import { createPieceForm, type PieceForm } from './pieceForm.ts';
import { createPiece, type PieceView } from './pieceView.ts';

/** One own page, live; while it is arranged each piece can be moved, changed and taken out. */
export interface OwnPageView {
  readonly element: HTMLElement;
  /** Shows the page as it stands; nothing without one. */
  show(page: OwnDocument | undefined, arranging: boolean): void;
  close(): void;
}

/** Where something is being written: in place of a piece, or as a new one before `place`. */
interface Editing {
  readonly place: number;
  readonly isNew: boolean;
  /** Without one the kinds are offered. */
  readonly form: PieceForm | undefined;
}

/** `said` tells in words what was done. */
export function createOwnPage(
  context: PageContext,
  renderBlock: RenderBlock,
  said: (text: string) => void,
): OwnPageView {
  const { document, live } = context;
  const body = element(document, 'div', { class: 'own-page-body' });
  const views = new Map<OwnBlock, PieceView>();
  let work: (() => void)[] = [];
  let page: OwnDocument | undefined;
  let graph: Graph | undefined;
  let arranging = false;
  let editing: Editing | undefined;

  const clear = () => {
    for (const view of views.values()) view.close();
    views.clear();
  };
  const leave = () => {
    editing?.form?.close();
    editing = undefined;
  };
  const focusPiece = (place: number, act: string) => {
    const bars = body.querySelectorAll('.own-piece');
    const piece = bars[Math.min(place, bars.length - 1)];
    const wanted = piece?.querySelector<HTMLButtonElement>(`[data-act="${act}"]:not(:disabled)`);
    (
      wanted ??
      piece?.querySelector<HTMLButtonElement>('button:not(:disabled)') ??
      body.querySelector('button')
    )?.focus();
  };
  const begin = (next: Editing) => {
    leave();
    editing = next;
    draw();
    if (next.form) next.form.focus();
    else body.querySelector<HTMLElement>('.own-kinds button')?.focus();
  };
  const write = (place: number, isNew: boolean, kind: OwnBlock['kind'], start?: OwnBlock) => {
    const keep = (piece: OwnBlock) => {
      const { id } = page!;
      const state = live.state();
      const next = isNew ? addPiece(state, id, place, piece) : changePiece(state, id, place, piece);
      // The form goes with what it was for: the page is drawn anew by the change.
      leave();
      live.open(next);
      draw();
      focusPiece(place, 'change');
      said(isNew ? 'Added.' : 'Changed.');
    };
    const form = createPieceForm(context, kind, start, renderBlock, {
      keep,
      leave: () => {
        leave();
        draw();
        focusPiece(place, 'change');
      },
    });
    begin({ place, isNew, form });
  };
  const offer = (place: number) => begin({ place, isNew: true, form: undefined });
  const acts: ArrangeActs = {
    move(from, to) {
      live.open(movePiece(live.state(), page!.id, from, to));
      focusPiece(to, to < from ? 'up' : 'down');
      said(`Now piece ${to + 1} of ${page!.blocks.length}.`);
    },
    change: (place) => write(place, false, page!.blocks[place]!.kind, page!.blocks[place]),
    addBelow: (place) => offer(place + 1),
    takeOut(place) {
      live.open(takeOutPiece(live.state(), page!.id, place));
      focusPiece(place, 'out');
      said('Taken out. Undo brings it back.');
    },
  };
  const dragging = createDragging(acts.move);
  const offered = (place: number, words: string, mayLeave: boolean) =>
    kindChoice(
      document,
      words,
      (kind) => write(place, true, kind),
      mayLeave
        ? () => {
            leave();
            draw();
            focusPiece(place - 1, 'add');
          }
        : undefined,
    );
  const draw = () => {
    for (const stop of work) stop();
    work = [];
    if (!page) return body.replaceChildren();
    const { blocks } = page;
    const contents = ownContents(live.graph, documents, blocks, () => `own-${freshId()}`);
    const kept = new Set(blocks);
    for (const [block, view] of views)
      if (!kept.has(block)) {
        view.close();
        views.delete(block);
      }
    const shown = blocks.map((block, place) => {
      const view = views.get(block) ?? createPiece(context, contents[place]!, renderBlock);
      views.set(block, view);
      return view;
    });
    const parts = shown.flatMap((view, place) => {
      if (!arranging) return [view.element];
      if (editing && !editing.isNew && editing.place === place) return [editing.form!.element];
      const words = pieceWords(live.graph, documents, blocks[place]!);
      const piece = { place, count: blocks.length, words };
      return [arrangedPiece(document, view.element, piece, acts, dragging)];
    });
    if (arranging) {
      const end = blocks.length === 0 ? 'Add the first piece' : 'Add a piece at the end';
      if (editing?.isNew)
        parts.splice(
          editing.place,
          0,
          editing.form?.element ?? offered(editing.place, 'Add a piece here', true),
        );
      if (!editing) parts.push(offered(blocks.length, end, false));
    } else if (blocks.length === 0)
      parts.push(element(document, 'p', { class: 'own-said' }, 'Nothing stands on this page yet.'));
    body.replaceChildren(...parts);
    body.append(
      renderWork(
        context,
        shown.flatMap(({ place }) => place ?? []),
        work,
      ),
    );
  };
  return {
    element: body,
    show(next, isArranging) {
      const now = next && ownPagesOf(live.state()).find(({ id }) => id === next.id);
      const sameGraph = graph === live.graph;
      if (now === page && sameGraph && arranging === isArranging) return;
      if (now?.id !== page?.id || !sameGraph) clear();
      if (now !== page || arranging !== isArranging) leave();
      page = now;
      graph = live.graph;
      arranging = isArranging;
      draw();
    },
    close() {
      leave();
      for (const stop of work) stop();
      clear();
    },
  };
}
