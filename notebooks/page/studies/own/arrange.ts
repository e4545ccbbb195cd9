import type { OwnBlock } from '../../../../lib/graph/studies.ts';
import { element } from '../../element.ts';
import type { Dragging } from './dragging.ts';
import { wordButton } from './labelledField.ts';
import { pieceKinds } from './pieceFields.ts';

/** What can be done with a piece while a page is arranged. */
export interface ArrangeActs {
  move(from: number, to: number): void;
  change(place: number): void;
  addBelow(place: number): void;
  takeOut(place: number): void;
}

/** A piece with what can be done with it: its place counted from 0 among `count`, and what it is in a few words. */
export function arrangedPiece(
  document: Document,
  shown: HTMLElement,
  { place, count, words }: { place: number; count: number; words: string },
  acts: ArrangeActs,
  dragging: Dragging,
): HTMLElement {
  const button = (text: string, act: string, run: () => void, off = false) => {
    const made = wordButton(document, text, run, { about: `${text}: ${words}` });
    made.dataset['act'] = act;
    made.disabled = off;
    return made;
  };
  const bar = element(
    document,
    'div',
    { class: 'own-bar', role: 'group', 'aria-label': `Piece ${place + 1} of ${count}: ${words}` },
    element(document, 'span', { class: 'own-bar-words', 'aria-hidden': 'true' }, `${place + 1}. ${words}`),
    button('Up', 'up', () => acts.move(place, place - 1), place === 0),
    button('Down', 'down', () => acts.move(place, place + 1), place === count - 1),
    button('Change', 'change', () => acts.change(place)),
    button('Add below', 'add', () => acts.addBelow(place)),
    button('Take out', 'out', () => acts.takeOut(place)),
  );
  const piece = element(document, 'section', { class: 'own-piece' }, bar, shown);
  piece.dataset['place'] = String(place);
  dragging.attach(piece, bar, () => place);
  return piece;
}

/** The kinds of piece to add, as buttons. */
export function kindChoice(
  document: Document,
  words: string,
  choose: (kind: OwnBlock['kind']) => void,
  leave: (() => void) | undefined,
): HTMLElement {
  return element(
    document,
    'div',
    { class: 'own-kinds', role: 'group', 'aria-label': words },
    element(document, 'span', { class: 'own-kinds-words', 'aria-hidden': 'true' }, words),
    ...Object.entries(pieceKinds).map(([kind, name]) =>
      wordButton(document, name, () => choose(kind as OwnBlock['kind']), { main: true }),
    ),
    ...(leave ? [wordButton(document, 'Leave it', leave)] : []),
  );
}
