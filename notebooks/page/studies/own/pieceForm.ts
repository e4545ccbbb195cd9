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

/** Said over what was written for a piece that has gone meanwhile. */
const pieceGone =
  'The piece that you were changing is gone; what you wrote is kept, to be added as a new one.';

/** Where a piece is written or changed, with the piece as it will look below. */
export interface PieceForm {
  readonly element: HTMLElement;
  focus(): void;
  /** Whether anything stands in it that did not when it was opened. */
  isTouched(): boolean;
  /** Does what its button does; false where that cannot be, and says why. */
  take(): boolean;
  /** Shows it on a page, `isNew` where it makes a new piece; these acts count from now on. */
  serve(acts: PieceActs, isNew: boolean): void;
  /** What is written stays, and is no longer shown as it will look. */
  rest(): void;
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
  let acts: PieceActs | undefined;
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
  const note = element(document, 'p', { class: 'own-said', role: 'status' });
  const button = element(document, 'button', { type: 'submit', class: 'own-main' });
  const fields = pieceFields(context, kind, start as never, changed);
  const form = element(
    document,
    'form',
    { class: 'own-form', autocomplete: 'off', 'aria-label': pieceKinds[kind] },
    element(document, 'h3', {}, pieceKinds[kind]),
    note,
    ...fields.elements,
    element(
      document,
      'div',
      { class: 'own-buttons' },
      button,
      wordButton(document, 'Leave it', () => acts?.leave()),
    ),
    problem,
  );
  const take = () => {
    try {
      acts?.keep(fields.read());
      return true;
    } catch (error) {
      setText(problem, (error as Error).message);
      return false;
    }
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    take();
  });
  form.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && !event.defaultPrevented) acts?.leave();
  });
  const opened = standsIn(form);
  return {
    element: element(document, 'div', { class: 'own-editing' }, form, preview),
    focus: fields.focus,
    isTouched: () => standsIn(form) !== opened,
    take() {
      if (take()) return true;
      fields.focus();
      problem.scrollIntoView({ block: 'nearest' });
      return false;
    },
    serve(next, isNew) {
      acts = next;
      setText(button, isNew ? 'Add it' : 'Keep the change');
      setText(note, start && isNew ? pieceGone : '');
      last = '';
      show();
    },
    rest() {
      clearTimeout(timer);
      shown?.close();
      shown = undefined;
    },
  };
}

/** What was typed and chosen in a form; what one looks for in it is not part of that. */
function standsIn(form: HTMLFormElement): string {
  const fields = form.querySelectorAll<HTMLInputElement>('input:not([role="combobox"]), textarea, select');
  const chosen = form.querySelectorAll('.own-chosen small');
  return JSON.stringify([
    [...fields].map(({ value }) => value),
    [...chosen].map(({ textContent }) => textContent),
  ]);
}
