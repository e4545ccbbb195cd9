import { beamDiameter } from '../../../lib/design/laser.ts';
import { beamSource } from '../../../lib/design/rawBeam.ts';
import { shownValue } from '../../../lib/graph/shown.ts';
import { radiusFrom, widthsOf } from '../../../lib/optics/widths.ts';
import { widthFigure, widthRows } from '../../words/widthRows.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { createFigure } from '../figures/drawFigure.ts';
import { createLinkedRows } from './linkedRowsView.ts';

/** Charts are as wide as the text allows, to this many pixels. */
const widestFigure = 660;

/** Turns a width of a Gaussian beam, given one way, into all others; begins with the raw beam of the design. */
export function renderWidths(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  let radius = (live.state().inputs[beamDiameter.id] as number) / 2;
  const holder = element(document, 'div', { class: 'linked-figure' });
  const width = () => Math.min(widestFigure, holder.clientWidth || window.innerWidth - 32);
  const figure = createFigure(document, width());
  holder.append(figure.element);
  const rows = createLinkedRows(document, widthRows, {
    values: () => widthsOf(radius),
    set: (key, value) => {
      radius = radiusFrom(key, value);
      figure.update(widthFigure(radius));
      setText(said, '');
    },
  });
  const said = element(document, 'p', { class: 'linked-said', role: 'status' });
  const use = element(document, 'button', { type: 'button', class: 'study-go' }, 'Use as raw beam diameter');
  use.addEventListener('click', () => {
    try {
      live.set({ [beamDiameter.id]: 2 * radius, [beamSource.id]: 'typed' });
      const shown = shownValue(beamDiameter, { value: live.state().inputs[beamDiameter.id] });
      setText(said, `The raw beam of the design is now ${shown} wide (1/e² diameter). Undo takes it back.`);
    } catch (error) {
      setText(said, (error as Error).message);
    }
  });
  figure.update(widthFigure(radius));
  const observer = new ResizeObserver(() => figure.resize(width()));
  observer.observe(holder);
  stops.push(() => {
    observer.disconnect();
    figure.close();
  });
  return element(
    document,
    'section',
    { class: 'converter', 'aria-label': 'Widths of a Gaussian beam' },
    rows.element,
    element(document, 'p', { class: 'linked-acts' }, use),
    said,
    holder,
  );
}
