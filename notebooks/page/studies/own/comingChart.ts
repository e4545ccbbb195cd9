import type { VaryPlan } from '../../../varyForm.ts';
import { variedTitle } from '../../../varyWords.ts';
import type { PageContext } from '../../context.ts';
import { element } from '../../element.ts';

/** What stands in the place of a chart while its numbers are not there yet: its title, and a frame with how far it is. */
export function createComingChart(
  { document, frames }: PageContext,
  { results, axes }: VaryPlan,
  progress: HTMLElement,
  stops: (() => void)[],
): HTMLElement {
  const title = variedTitle(
    results.map(({ name }) => name),
    axes,
  );
  const words = element(document, 'span', {}, 'Being worked out …');
  const frame = element(document, 'div', { class: 'own-chart-frame' }, words, progress);
  const size = () => {
    const height = frames?.height();
    frame.style.height = height === undefined ? '' : `${height}px`;
  };
  size();
  const stop = frames?.onChange(size);
  if (stop) stops.push(stop);
  return element(
    document,
    'div',
    { class: 'own-chart-coming' },
    element(document, 'div', { class: 'figure-title' }, title),
    frame,
  );
}
