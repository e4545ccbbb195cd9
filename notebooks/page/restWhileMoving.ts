import type { PageContext } from './context.ts';
import { holdHeights } from './heldHeights.ts';

/** After this long without a change, in ms, the hand rests: longer than between two steps of a held key. */
const restsAfter = 250;

/**
 * While inputs change, blocks far from view are not laid out (style.css), and none becomes lower; once the hand rests, all
 * are laid out again. Heights are kept as long as a button of the mouse or a finger is down, however long it stays still.
 */
export function restWhileMoving(context: PageContext, main: HTMLElement, stops: (() => void)[]): void {
  const { document, live } = context;
  const heights = holdHeights(main.children);
  let timer: ReturnType<typeof setTimeout> | undefined;
  let pressed = false;
  const rest = () => {
    main.classList.remove('moving');
    timer = undefined;
    if (!pressed) heights.release();
  };
  const watch = (kind: string, down: boolean) => {
    const told = () => {
      pressed = down;
      if (!down && timer === undefined) heights.release();
    };
    document.addEventListener(kind, told, { capture: true });
    stops.push(() => document.removeEventListener(kind, told, { capture: true }));
  };
  watch('pointerdown', true);
  watch('pointerup', false);
  watch('pointercancel', false);
  stops.push(
    live.onState(() => {
      main.classList.add('moving');
      heights.hold();
      clearTimeout(timer);
      timer = setTimeout(rest, restsAfter);
    }),
    () => clearTimeout(timer),
    () => heights.close(),
  );
}
