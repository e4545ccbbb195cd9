import type { PageContext } from './context.ts';

/** After this long without a change, in ms, the hand rests: longer than between two steps of a held key. */
const restsAfter = 250;

/** While inputs change, blocks far from view are not laid out (style.css); once the hand rests, all are again. */
export function restWhileMoving(context: PageContext, main: HTMLElement, stops: (() => void)[]): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const rest = () => main.classList.remove('moving');
  stops.push(
    context.live.onState(() => {
      main.classList.add('moving');
      clearTimeout(timer);
      timer = setTimeout(rest, restsAfter);
    }),
    () => clearTimeout(timer),
  );
}
