import type { OwnBlock } from '../../../../lib/graph/studies.ts';
import { documents } from '../../../contents.ts';
import { type OwnContent, ownBlockToBlock } from '../../../ownBlocks.ts';
import type { PageContext, RenderBlock } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { wordButton } from './labelledField.ts';
import { pieceFields, pieceKinds } from './pieceFields.ts';
import { createPiece, type PieceView } from './pieceView.ts';

/** A pause in typing after which the piece is shown again, ms. */
const restsFor = 350;

/** Where a piece is written or changed, with the piece as it will look below. */
export interface PieceForm {
  readonly element: HTMLElement;
  focus(): void;
  close(): void;
}

/** What is done with the piece: `keep` throws a Problem where it cannot be kept. */
export interface PieceActs {
  keep(piece: OwnBlock): void;
  leave(): void;
}

/** A form for a kind of piece, filled from `start` where one is changed. */
export function createPieceForm(
  context: PageContext,
  kind: OwnBlock['kind'],
  start: OwnBlock | undefined,
  renderBlock: RenderBlock,
  acts: PieceActs,
): PieceForm {
  const { document, live } = context;
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const place = element(document, 'div', { class: 'own-preview-place' });
  const preview = element(
    document,
    'section',
    { class: 'own-preview', 'aria-label': 'As it will look' },
    element(document, 'p', { class: 'own-preview-name', 'aria-hidden': 'true' }, 'As it will look'),
    place,
  );
  let shown: PieceView | undefined;
  let last = '';
  let timer: ReturnType<typeof setTimeout> | undefined;
  const show = () => {
    let content: OwnContent | undefined;
    let text = '';
    try {
      const piece = fields.read();
      text = JSON.stringify(piece);
      content = ownBlockToBlock(live.graph, documents, piece, 'own-preview');
    } catch {
      // Told when it is to be kept; half of a piece is no mistake.
    }
    if (text === last && shown) return;
    last = text;
    shown?.close();
    shown = undefined;
    // A tool holds what a person is at; shown twice its fields could not be told apart.
    const tool = content?.kind === 'block' && content.block.kind === 'tool';
    preview.hidden = !content || tool;
    if (!content || tool) return;
    shown = createPiece(context, content, renderBlock);
    place.replaceChildren(shown.element);
  };
  const changed = () => {
    setText(problem, '');
    clearTimeout(timer);
    timer = setTimeout(show, restsFor);
  };
  const fields = pieceFields(context, kind, start as never, changed);
  const form = element(
    document,
    'form',
    { class: 'own-form', autocomplete: 'off', 'aria-label': pieceKinds[kind] },
    element(document, 'h3', {}, pieceKinds[kind]),
    ...fields.elements,
    element(
      document,
      'div',
      { class: 'own-buttons' },
      element(
        document,
        'button',
        { type: 'submit', class: 'own-main' },
        start ? 'Keep the change' : 'Add it',
      ),
      wordButton(document, 'Leave it', acts.leave),
    ),
    problem,
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    try {
      acts.keep(fields.read());
    } catch (error) {
      setText(problem, (error as Error).message);
    }
  });
  form.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && !event.defaultPrevented) acts.leave();
  });
  show();
  return {
    element: element(document, 'div', { class: 'own-editing' }, form, preview),
    focus: fields.focus,
    close() {
      clearTimeout(timer);
      shown?.close();
    },
  };
}
