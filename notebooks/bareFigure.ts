import type { FigureSpec } from './document.ts';

const none = new Float64Array();

/**
 * A chart with its axes and its title alone: where the curves will run is for others to say. The legend stays, so that
 * nothing moves when they come, unless a name in it says a number.
 */
export function bareFigure({ title, x, y, secondX, secondY, equalScale, series }: FigureSpec): FigureSpec {
  const tells = series.some(({ label }) => /\d/.test(label));
  return {
    title,
    x,
    y,
    ...(secondX && { secondX }),
    ...(secondY && { secondY }),
    ...(equalScale !== undefined && { equalScale }),
    series: tells ? [] : series.map(({ label, role }) => ({ label, role, x: none, y: none })),
    summary: '',
  };
}
