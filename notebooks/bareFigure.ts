import type { FigureSpec } from './document.ts';

/** A chart with its axes and its title alone: where the curves will run is for others to say. */
export function bareFigure({ title, x, y, secondX, secondY, equalScale }: FigureSpec): FigureSpec {
  return {
    title,
    x,
    y,
    ...(secondX && { secondX }),
    ...(secondY && { secondY }),
    ...(equalScale !== undefined && { equalScale }),
    series: [],
    summary: '',
  };
}
