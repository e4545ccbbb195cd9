import type { PictureRegion } from '../../../lib/measured/markLevels.ts';
import { element, setAttributes } from '../element.ts';
import {
  cornersOf,
  keyStep,
  lineBetween,
  type PictureLine,
  type PicturePoint,
  type PictureSize,
  regionBetween,
} from './pictureShapes.ts';

/** What is drawn on a picture: a part of it, or a line. */
export type Drawn =
  | { readonly kind: 'region'; readonly region: PictureRegion }
  | { readonly kind: 'line'; readonly line: PictureLine };

/** A corner or an end that is dragged or moved by keys. */
export interface PictureHandle {
  readonly element: HTMLElement;
  /** Where it is in what is drawn, and what stays when it moves. */
  ends(drawn: Drawn): { readonly here: PicturePoint; readonly anchor: PicturePoint };
  /** What is drawn when it moves there. */
  moved(drawn: Drawn, to: PicturePoint, size: PictureSize): Drawn;
  place(drawn: Drawn | undefined, size: PictureSize): void;
}

/** Called with what the keys make; `final` when they rest. */
export type MovedByKeys = (handle: PictureHandle, step: PicturePoint) => void;

const names = {
  region: (about: string) => [
    `Upper left corner of the part about ${about}`,
    `Lower right corner of the part about ${about}`,
  ],
  line: () => ['One end of the scale bar', 'Other end of the scale bar'],
} as const;

function endsOf(drawn: Drawn): readonly [PicturePoint, PicturePoint] {
  return drawn.kind === 'region' ? cornersOf(drawn.region) : [drawn.line.start, drawn.line.end];
}

/** What lies between two places; the first is the start of a line. */
export function between(
  kind: Drawn['kind'],
  first: PicturePoint,
  second: PicturePoint,
  size: PictureSize,
): Drawn {
  return kind === 'region'
    ? { kind, region: regionBetween(first, second, size) }
    : { kind, line: lineBetween(first, second, size) };
}

/** One of the two handles of a part or a line. */
export function createPictureHandle(
  document: Document,
  kind: Drawn['kind'],
  index: 0 | 1,
  about: string,
  keys: { moved: MovedByKeys; ended: () => void },
): PictureHandle {
  const box = element(document, 'div', {
    class: 'picture-handle',
    role: 'slider',
    tabindex: 0,
    'aria-label': names[kind](about)[index],
    'data-handle': `${kind}-${index}`,
    hidden: true,
  });
  const handle: PictureHandle = {
    element: box,
    ends(drawn) {
      const ends = endsOf(drawn);
      return { here: ends[index], anchor: ends[1 - index]! };
    },
    moved(drawn, to, size) {
      const { anchor } = handle.ends(drawn);
      return kind === 'line' && index === 0
        ? between(kind, to, anchor, size)
        : between(kind, anchor, to, size);
    },
    place(drawn, size) {
      box.hidden = drawn === undefined;
      if (!drawn) return;
      const { x, y } = handle.ends(drawn).here;
      Object.assign(box.style, { left: `${(100 * x) / size.width}%`, top: `${(100 * y) / size.height}%` });
      setAttributes(box, {
        'aria-valuemin': 0,
        'aria-valuemax': size.width,
        'aria-valuenow': x,
        'aria-valuetext': `${x} from the left, ${y} from the top, in pixels`,
      });
    },
  };
  box.addEventListener('keydown', (event) => {
    const step = keyStep(event.key, event.shiftKey);
    if (!step || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    keys.moved(handle, step);
  });
  box.addEventListener('keyup', keys.ended);
  box.addEventListener('blur', keys.ended);
  return handle;
}
