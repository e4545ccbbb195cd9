import { bareFigure } from '../../../bareFigure.ts';
import type { Varied } from '../../../varied.ts';
import { variedFigures } from '../../../varyFigures.ts';
import { variedRows } from '../../../varyTable.ts';
import { lineSaid, mapSaid, variedTitle } from '../../../varyWords.ts';
import type { PageContext } from '../../context.ts';
import { element } from '../../element.ts';
import { createFigure, type FigureView } from '../../figures/drawFigure.ts';
import { download, fileName } from '../../figures/exportFigure.ts';
import { rowsCsv } from '../../figures/figureCsv.ts';
import { actButton } from '../formField.ts';
import { plainTable } from '../solve/plainTable.ts';

/** Figures are as wide as the sheet allows, to this many pixels. */
const widest = 760;
/** A table longer than this is read in a file, not on a page. */
const longestTable = 300;

/** Charts of what was varied, and the same numbers as a table and a file; `bare`: axes and titles alone. */
export function createVariedView({ document, frames }: PageContext, stops: (() => void)[], bare = false) {
  const views: FigureView[] = [];
  const figures = element(document, 'div', {});
  const table = element(document, 'div', {});
  const holder = element(document, 'div', { class: 'study-varied', hidden: true }, figures, table);
  const width = () => Math.min(widest, holder.clientWidth || window.innerWidth - 32);
  const shape = () => frames?.height() ?? 'wide';
  const resize = () => {
    for (const view of views) view.resize(width(), shape());
  };
  const observer = new ResizeObserver(resize);
  observer.observe(holder);
  const stopFrames = frames?.onChange(resize);
  stops.push(() => {
    observer.disconnect();
    stopFrames?.();
    for (const view of views) view.close();
  });
  const draw = (varied: Varied) => {
    const specs = variedFigures(varied).map((spec) => (bare ? bareFigure(spec) : spec));
    while (views.length > specs.length) {
      const view = views.pop()!;
      view.close();
      view.element.remove();
    }
    specs.forEach((spec, i) => {
      if (!views[i]) {
        views[i] = createFigure(document, width(), shape());
        figures.append(views[i].element);
      }
      views[i].update(spec);
    });
  };
  const list = (varied: Varied, isOpen: boolean) => {
    const { columns, rows } = variedRows(varied);
    const { axes, results } = varied.plan;
    const title = variedTitle(
      results.map(({ name }) => name),
      axes,
    );
    const save = actButton(
      document,
      'CSV',
      () => download(fileName(title, 'csv'), new Blob([rowsCsv([columns, ...rows])], { type: 'text/csv' })),
      { 'aria-label': `${title} as CSV` },
    );
    const said = variedFigures(varied).length > 0 ? [] : saidOf(varied);
    if (rows.length > longestTable) {
      table.replaceChildren();
      return;
    }
    const shown = element(
      document,
      'details',
      {},
      element(document, 'summary', {}, 'The numbers as a table'),
      save,
      plainTable(document, title, columns, rows),
    );
    // Without a chart the table is all there is.
    shown.open = isOpen || said.length > 0;
    table.replaceChildren(...said.map((text) => element(document, 'p', {}, text)), shown);
  };
  return {
    element: holder,
    show(varied: Varied) {
      holder.hidden = false;
      draw(varied);
      if (!bare) list(varied, table.querySelector('details')?.open ?? false);
    },
  };
}

/** Sentences where no chart brings its own. */
function saidOf({ plan, columns }: Varied): string[] {
  const [x, y] = plan.axes;
  return plan.results.map((result, i) =>
    y ? mapSaid(result, [x, y], columns[i]!) : lineSaid(result, x, columns[i]!),
  );
}
