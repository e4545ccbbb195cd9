import type { Patch } from '../../../../lib/graph/state.ts';
import type { Varied } from '../../../varied.ts';
import { overOf, type VaryPlan } from '../../../varyForm.ts';
import type { PageContext } from '../../context.ts';
import { freshId } from '../../controls/field.ts';
import { element, setText } from '../../element.ts';
import { studiesUntil } from '../desk/studiesUntil.ts';
import { createStudyProgress } from '../studyProgress.ts';
import { createVariedView } from '../vary/variedView.ts';
import { createComingChart } from './comingChart.ts';
import { comingChart, keepChart, workedChart } from './workedCharts.ts';

/** A pause of the hand after which a chart is worked out again, and a time after which it tells how far it is, ms. */
const [restsFor, isLong] = [300, 700];

/**
 * A chart of results over an input, worked out beside the page; it follows the design once the hand rests. `bare`: its axes
 * and its title alone.
 */
export function renderChartPiece(
  context: PageContext,
  plan: VaryPlan,
  stops: (() => void)[],
  bare = false,
): HTMLElement {
  const { document, live } = context;
  const startStudy = studiesUntil(stops);
  const name = `own-chart-${freshId()}`;
  const view = createVariedView(context, stops, bare);
  const said = element(document, 'p', { class: 'own-said', role: 'status' });
  const progress = createStudyProgress(document, () => {
    clearTimeout(later);
    progress.end();
    begun();
    setText(said, 'Stopped. It is worked out again when the design changes.');
    holder.tabIndex = -1;
    holder.focus();
  });
  const frame = createComingChart(context, plan, progress.element, stops);
  const parts = [said, frame, view.element];
  const holder = element(document, 'div', { class: 'own-chart' }, ...parts);
  let timer: ReturnType<typeof setTimeout> | undefined;
  let later: ReturnType<typeof setTimeout> | undefined;
  let drawn: Patch | undefined;
  let closed = false;
  /** From now on the chart keeps its place, and what tells of its work stands above it. */
  const begun = () => {
    frame.hidden = true;
    if (progress.element.parentNode !== holder) holder.prepend(progress.element);
  };
  const fail = (message: string) => {
    view.element.hidden = true;
    begun();
    setText(said, message);
  };
  const show = (varied: Varied) => {
    setText(said, '');
    begun();
    view.show(varied);
    view.element.removeAttribute('data-older');
  };
  const work = () => {
    const { inputs, studies } = live.state();
    const own = studies?.ownLines ?? [];
    const ids = plan.results.map(({ id }) => id);
    drawn = inputs;
    const known = workedChart(inputs, plan, own);
    if (known) {
      clearTimeout(later);
      progress.end();
      return show(known);
    }
    const ahead = comingChart(inputs, plan, own);
    if (ahead) return void ahead.then(() => drawn === inputs && !closed && work());
    const study = startStudy(
      { kind: 'vary', inputs, over: overOf(plan), ids, own },
      { tool: name, progressed: (part) => progress.told(part) },
    );
    const today = startStudy({ kind: 'evaluate', inputs, ids, own }, { tool: `${name}-today` });
    clearTimeout(later);
    later = setTimeout(() => progress.begin(study, 'Working the chart out'), isLong);
    void Promise.all([study.answer, today.answer]).then(([found, now]) => {
      // What was known already may stand there by now, for other values.
      if (drawn !== inputs || ('problem' in found && found.problem.kind === 'stopped')) return;
      clearTimeout(later);
      progress.end();
      if ('problem' in found) return fail(found.problem.message);
      const varied = { plan, columns: found.value, inputs, today: 'value' in now ? now.value : {} };
      if ('value' in now) keepChart(varied, own);
      show(varied);
    });
  };
  const follow = () => {
    const { inputs } = live.state();
    if (drawn && Object.keys(inputs).every((id) => Object.is(inputs[id], drawn![id]))) return;
    view.element.setAttribute('data-older', '');
    clearTimeout(timer);
    timer = setTimeout(work, restsFor);
  };
  stops.push(live.onState(follow), () => {
    closed = true;
    clearTimeout(timer);
    clearTimeout(later);
  });
  work();
  return holder;
}
