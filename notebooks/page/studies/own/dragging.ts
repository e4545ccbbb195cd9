/** Pieces are taken by their bars and let go above or below another; buttons do the same for those without a mouse. */
export interface Dragging {
  /** Lets a piece be taken by its bar, and others be let go beside it; `place` says where it stands by then. */
  attach(piece: HTMLElement, bar: HTMLElement, place: () => number): void;
}

/** `move` gets the place that a piece was taken from, and the one that it stands in afterwards. */
export function createDragging(move: (from: number, to: number) => void): Dragging {
  let from: number | undefined;
  return {
    attach(piece, bar, place) {
      const side = (event: DragEvent) => {
        const { top, height } = piece.getBoundingClientRect();
        return event.clientY < top + height / 2 ? 'above' : 'below';
      };
      const unmark = () => delete piece.dataset['drop'];
      bar.draggable = true;
      bar.addEventListener('dragstart', (event) => {
        from = place();
        event.dataTransfer?.setData('text/plain', bar.textContent ?? '');
        if (event.dataTransfer) event.dataTransfer.effectAllowed = 'move';
      });
      bar.addEventListener('dragend', () => {
        from = undefined;
      });
      piece.addEventListener('dragover', (event) => {
        if (from === undefined) return;
        event.preventDefault();
        piece.dataset['drop'] = side(event);
      });
      piece.addEventListener('dragleave', unmark);
      piece.addEventListener('drop', (event) => {
        unmark();
        if (from === undefined) return;
        event.preventDefault();
        const to = placeAfter(from, place(), side(event));
        const taken = from;
        from = undefined;
        if (to !== taken) move(taken, to);
      });
    },
  };
}

/** Where a piece taken from a place stands once it is let go above or below the one at `over`. */
export function placeAfter(from: number, over: number, side: 'above' | 'below'): number {
  const gap = side === 'above' ? over : over + 1;
  return gap > from ? gap - 1 : gap;
}
