import type { Graph } from '../../../../lib/graph/graph.ts';
import type { OwnBlock } from '../../../../lib/graph/studies.ts';
import { documents } from '../../../contents.ts';
import { ownContents } from '../../../ownBlocks.ts';
import { pieceWords } from '../../../pieceWords.ts';
import type { PageContext, RenderBlock } from '../../context.ts';
import { freshId } from '../../controls/field.ts';
import { element } from '../../element.ts';
import { renderWork } from '../../workLines.ts';
import { type ArrangeActs, arrangedPiece, kindChoice } from './arrange.ts';
import { createDragging } from './dragging.ts';
import { drawAround } from './drawAround.ts';
import { type PieceEdits, type PieceHolder, pageEdits } from './pieceEdits.ts';
import { createPieceForm, type PieceActs } from './pieceForm.ts';
import { createPiece, type PieceView } from './pieceView.ts';
import { type Writing, writingAmong, writingsOf } from './writings.ts';

/** One own page, or what else holds pieces, live; while it is arranged each piece can be moved, changed and taken out. */
export interface OwnPageView {
  readonly element: HTMLElement;
  /** Shows the page as it stands; nothing without one. */
  show(page: PieceHolder | undefined, arranging: boolean): void;
  /** Takes what is being written, as its button does; false where it cannot be kept, and its form says why. */
  finish(): boolean;
  close(): void;
}

/** `said` tells in words what was done, `edits` do it. */
export function createOwnPage(
  context: PageContext,
  renderBlock: RenderBlock,
  said: (text: string) => void,
  edits: PieceEdits = pageEdits,
): OwnPageView {
  const { document, live } = context;
  const body = element(document, 'div', { class: 'own-page-body' });
  const views = new Map<OwnBlock, PieceView>();
  let work: (() => void)[] = [];
  let page: PieceHolder | undefined;
  let graph: Graph | undefined;
  let arranging = false;
  const writings = writingsOf(live);
  const writing = () => (page ? writings.get(page.id) : undefined);

  const clear = () => {
    for (const view of views.values()) view.close();
    views.clear();
  };
  const leave = () => {
    writing()?.form?.rest();
    if (page) writings.delete(page.id);
  };
  /** What is written waits until the page is shown again. */
  const rest = () => {
    const { form } = writing() ?? {};
    if (!form?.isTouched()) return leave();
    form.rest();
    const { id, title } = page!;
    if (!edits.find(live.state(), id)) said(waitsSaid(title));
  };
  const finish = () => {
    const { form } = writing() ?? {};
    if (form?.isTouched()) return form.take();
    leave();
    return true;
  };
  const focusPiece = (place: number, act: string) => {
    const piece =
      body.querySelector(`.own-piece[data-place="${place}"]`) ??
      [...body.querySelectorAll('.own-piece')].at(-1);
    const wanted = piece?.querySelector<HTMLButtonElement>(`[data-act="${act}"]:not(:disabled)`);
    (
      wanted ??
      piece?.querySelector<HTMLButtonElement>('button:not(:disabled)') ??
      body.querySelector('button')
    )?.focus();
  };
  const begin = (next: Omit<Writing, 'begun'>) => {
    leave();
    writings.set(page!.id, { ...next, begun: { place: next.place, blocks: page!.blocks } });
    next.form?.serve(formActs, next.isNew);
    draw();
    if (next.form) next.form.focus();
    else body.querySelector<HTMLElement>('.own-kinds button')?.focus();
  };
  const formActs: PieceActs = {
    keep(piece) {
      const { place, isNew } = writing()!;
      const { id } = page!;
      const state = live.state();
      const next = isNew ? edits.add(state, id, place, piece) : edits.change(state, id, place, piece);
      // The form goes with what it was for: the page is drawn anew by the change.
      leave();
      live.open(next);
      draw();
      focusPiece(place, 'change');
      said(isNew ? 'Added.' : 'Changed.');
    },
    leave() {
      const { place, isNew } = writing()!;
      leave();
      draw();
      focusPiece(isNew ? Math.max(0, place - 1) : place, isNew ? 'add' : 'change');
    },
  };
  const write = (place: number, kind: OwnBlock['kind'], piece?: OwnBlock) =>
    begin({ place, piece, isNew: !piece, form: createPieceForm(context, kind, piece, renderBlock) });
  /** Where a piece stands once what is being written has been taken; nowhere while that cannot be. */
  const placeOnceTaken = (place: number): number | undefined => {
    const piece = page!.blocks[place]!;
    return finish() ? page!.blocks.indexOf(piece) : undefined;
  };
  const acts: ArrangeActs = {
    move(from, to) {
      live.open(edits.move(live.state(), page!.id, from, to));
      focusPiece(to, to < from ? 'up' : 'down');
      said(`Now piece ${to + 1} of ${page!.blocks.length}.`);
    },
    change(place) {
      const now = placeOnceTaken(place);
      const piece = page!.blocks[now ?? -1];
      if (piece) write(now!, piece.kind, piece);
    },
    addBelow(place) {
      const now = placeOnceTaken(place);
      if (now !== undefined) begin({ place: now + 1, piece: undefined, isNew: true, form: undefined });
    },
    takeOut(place) {
      live.open(edits.takeOut(live.state(), page!.id, place));
      focusPiece(place, 'out');
      said('Taken out. Undo brings it back.');
    },
  };
  const dragging = createDragging(acts.move);
  const offered = (place: number, words: string, mayLeave: boolean) =>
    kindChoice(
      document,
      words,
      (kind) => write(place, kind),
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
    const editing = writing();
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
    const places = shown.flatMap(({ place }) => place ?? []);
    drawAround(body, [...parts, renderWork(context, places, work)], editing?.form?.element);
  };
  /** Finds what is written again among pieces that may be others; untouched it goes with its piece. */
  const follow = (isShownAnew: boolean) => {
    const known = writing();
    if (!known) return;
    const next = writingAmong(known, page!.blocks);
    if (next.isNew && !known.isNew && !known.form?.isTouched()) return leave();
    writings.set(page!.id, next);
    if (isShownAnew || next.isNew !== known.isNew) next.form?.serve(formActs, next.isNew);
  };
  return {
    element: body,
    show(next, isArranging) {
      const now = next && edits.find(live.state(), next.id);
      const sameGraph = graph === live.graph;
      const isOther = now?.id !== page?.id;
      const samePieces = !isOther && now?.blocks === page?.blocks;
      if (samePieces && sameGraph && arranging === isArranging) {
        page = now;
        return;
      }
      if (isOther || !sameGraph) clear();
      if (isOther) rest();
      page = now;
      graph = live.graph;
      arranging = isArranging;
      follow(isOther || !sameGraph);
      draw();
    },
    finish,
    close() {
      rest();
      for (const stop of work) stop();
      clear();
    },
  };
}

const waitsSaid = (title: string) =>
  `What you were writing on ‘${title}’ is kept until it is there again; undo or redo brings it back.`;
