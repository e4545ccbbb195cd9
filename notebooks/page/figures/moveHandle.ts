import type { NumberInput } from '../../../lib/graph/quantity.ts';
import { formatReadable } from '../../../lib/graph/units.ts';
import type { AxisSpec } from '../../document.ts';
import type { MoveSpec } from '../../moveSpec.ts';
import { element, setAttributes } from '../element.ts';
import { axisSteps, keySteps } from './axisKeys.ts';
import type { Layout } from './layout.ts';

/** What the hand sets; `final` ends a drag. */
export type Move = (input: NumberInput, value: number, final: boolean) => void;

/** A handle over a chart that is dragged along x, or moved by keys. */
export interface MoveHandle {
  readonly element: HTMLElement;
  update(moves: MoveSpec, axis: AxisSpec, layout: Layout): void;
}

/** Makes the handle; without a spec it does nothing. */
export function createMoveHandle(document: Document, move: Move): MoveHandle {
  const handle = element(document, 'div', { class: 'figure-handle', role: 'slider', tabindex: 0 });
  const box = element(document, 'div', { class: 'figure-moves' }, handle);
  let shown: { readonly moves: MoveSpec; readonly domain: readonly [number, number] } | undefined;
  let dragging = false;
  let byKeys = false;
  /** The last place that was set while the answer to it is on its way. */
  let held: number | undefined;

  const set = (place: number, final: boolean) => {
    if (!shown) return;
    const { moves, domain } = shown;
    const { range } = moves.input;
    const inside = Math.min(domain[1], Math.max(domain[0], place));
    const value = Math.min(
      range.max,
      Math.max(range.min, roundedTo(inside, domain, moves.step) * moves.perUnit),
    );
    held = value / moves.perUnit;
    move(moves.input, value, final);
  };
  const placeOf = (event: PointerEvent): number => {
    const { left, width } = box.getBoundingClientRect();
    const [low, high] = shown!.domain;
    return low + ((high - low) * (event.clientX - left)) / width;
  };
  box.addEventListener('pointerdown', (event) => {
    if (!shown || event.button !== 0) return;
    dragging = true;
    box.setPointerCapture(event.pointerId);
    handle.focus({ preventScroll: true });
    event.preventDefault();
    set(placeOf(event), false);
  });
  box.addEventListener('pointermove', (event) => {
    if (dragging) set(placeOf(event), false);
  });
  const end = (event: PointerEvent) => {
    if (!dragging) return;
    dragging = false;
    set(event.type === 'pointerup' ? placeOf(event) : (held ?? shown!.moves.at), true);
  };
  box.addEventListener('pointerup', end);
  box.addEventListener('pointercancel', end);
  handle.addEventListener('keydown', (event) => {
    const steps = keySteps(event.key);
    if (!shown || steps === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    byKeys = true;
    const [low, high] = shown.domain;
    set((held ?? shown.moves.at) + steps * (shown.moves.step ?? (high - low) / axisSteps), false);
  });
  // A held key is one step back, as a drag is.
  const endKeys = () => {
    if (!byKeys || !shown) return;
    byKeys = false;
    set(held ?? shown.moves.at, true);
  };
  handle.addEventListener('keyup', endKeys);
  handle.addEventListener('blur', endKeys);
  return {
    element: box,
    update(moves, axis, { left, top, width, height, frameWidth, frameHeight }) {
      shown = { moves, domain: axis.domain };
      held = dragging ? held : undefined;
      const percent = (share: number) => `${(100 * share).toFixed(4)}%`;
      Object.assign(box.style, {
        left: percent(left / width),
        top: percent(top / height),
        width: percent(frameWidth / width),
        height: percent(frameHeight / height),
      });
      const [low, high] = axis.domain;
      const share = (moves.at - low) / (high - low);
      handle.style.left = percent(Math.min(1, Math.max(0, share)));
      const { input, perUnit } = moves;
      setAttributes(handle, {
        'aria-label': input.name,
        'aria-valuemin': low,
        'aria-valuemax': high,
        'aria-valuenow': moves.at,
        'aria-valuetext': formatReadable(moves.at * perUnit, input.unit, input.display ?? input.unit),
      });
    },
  };
}

/** To the step, or to a thousandth of the axis, as a number that reads well. */
function roundedTo(
  place: number,
  [low, high]: readonly [number, number],
  step = 10 ** Math.floor(Math.log10((high - low) / 500)),
): number {
  return Number((Math.round(place / step) * step).toPrecision(12));
}
