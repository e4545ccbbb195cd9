import { formatNumber, withUnit } from '../../../lib/graph/units.ts';
import type { AxisSpec, FigureSpec } from '../../document.ts';
import { element, setAttributes } from '../element.ts';
import { axisSteps, keySteps } from '../figures/axisKeys.ts';
import type { FigureOver } from '../figures/drawFigure.ts';

/** A mark that the hand, or keys, put somewhere along an axis of a chart. */
export interface PlaceHandle extends FigureOver {
  /** Where it was put, in the unit of the axis; undefined before. */
  chosen(): number | undefined;
  /** Puts it at a place that was chosen before, in the unit of the axis. */
  put(value: number): void;
  focus(): void;
  /** Calls `act` when Enter is pressed on the mark. */
  onEnter(act: () => void): void;
}

/** Where the mark lies before it is put anywhere, a part of the axis. */
const atFirst = 0.1;
/** Digits of a place; a thousandth of the axis is no more. */
const digits = 4;

/** Makes the mark; `moved` gets its place in words. */
export function createPlaceHandle(
  document: Document,
  along: 'x' | 'y',
  moved: (words: string) => void,
): PlaceHandle {
  const handle = element(document, 'div', {
    class: 'figure-handle place-handle',
    role: 'slider',
    tabindex: 0,
  });
  const box = element(document, 'div', { class: 'figure-moves place-moves', 'data-along': along }, handle);
  let axis: AxisSpec | undefined;
  let [share, put, dragging] = [atFirst, false, false];
  /** A place to be taken up once there is an axis. */
  let awaited: number | undefined;
  let enter = () => {};

  const show = () => {
    if (!axis) return;
    const value = valueAt(axis, share);
    const words = placeWords(axis, value);
    if (along === 'x') handle.style.left = `${(100 * share).toFixed(3)}%`;
    else handle.style.top = `${(100 * (1 - share)).toFixed(3)}%`;
    setAttributes(handle, {
      'data-put': put,
      'aria-label': `Your mark along ${axis.label}`,
      'aria-orientation': along === 'x' ? 'horizontal' : 'vertical',
      'aria-valuemin': Math.min(...axis.domain),
      'aria-valuemax': Math.max(...axis.domain),
      'aria-valuenow': value,
      'aria-valuetext': put ? words : `not put anywhere yet, at ${words}`,
    });
    if (put) moved(words);
  };
  const set = (next: number) => {
    share = Math.min(1, Math.max(0, next));
    put = true;
    show();
  };
  const takeUp = () => {
    if (!axis || awaited === undefined) return show();
    const value = awaited;
    awaited = undefined;
    set(shareAt(axis, value));
  };
  const shareOf = (event: PointerEvent) => {
    const { left, top, width, height } = box.getBoundingClientRect();
    return along === 'x' ? (event.clientX - left) / width : 1 - (event.clientY - top) / height;
  };
  box.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    dragging = true;
    box.setPointerCapture(event.pointerId);
    handle.focus({ preventScroll: true });
    event.preventDefault();
    set(shareOf(event));
  });
  box.addEventListener('pointermove', (event) => {
    if (dragging) set(shareOf(event));
  });
  for (const end of ['pointerup', 'pointercancel'] as const)
    box.addEventListener(end, () => {
      dragging = false;
    });
  handle.addEventListener('keydown', (event) => {
    const steps = keySteps(event.key);
    const enters = event.key === 'Enter' && !event.repeat;
    if ((steps === undefined && !enters) || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    if (steps === undefined) return enter();
    set(share + steps / axisSteps);
  });
  return {
    element: box,
    applies: () => true,
    place(spec: FigureSpec, { left, top, width, height, frameWidth, frameHeight }) {
      axis = spec[along];
      const percent = (part: number) => `${(100 * part).toFixed(4)}%`;
      Object.assign(box.style, {
        left: percent(left / width),
        top: percent(top / height),
        width: percent(frameWidth / width),
        height: percent(frameHeight / height),
      });
      takeUp();
    },
    chosen: () => (put && axis ? valueAt(axis, share) : undefined),
    put(value) {
      awaited = value;
      takeUp();
    },
    focus: () => handle.focus(),
    onEnter(act) {
      enter = act;
    },
  };
}

/** A place in words. */
export function placeWords({ unit }: AxisSpec, value: number): string {
  return withUnit(formatNumber(value, digits), unit);
}

/** The value at a part of the axis, as a number that reads well. */
export function valueAt({ domain: [low, high], logarithmic }: AxisSpec, share: number): number {
  if (logarithmic) return Number((low * (high / low) ** share).toPrecision(digits));
  const step = 10 ** Math.floor(Math.log10(Math.abs(high - low) / 500));
  return Number((Math.round((low + (high - low) * share) / step) * step).toPrecision(12));
}

/** The part of an axis, from 0 to 1 where it lies on it, at which a value stands. */
export function shareAt({ domain: [low, high], logarithmic }: AxisSpec, value: number): number {
  return logarithmic ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
}
