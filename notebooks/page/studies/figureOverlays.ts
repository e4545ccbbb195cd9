import type { Alternative } from '../../../lib/graph/studies.ts';
import type { FigureSpec } from '../../document.ts';
import { type KeptFigure, notDrawnSaid, overlaid, overlayWorkSaid } from '../../overlay.ts';
import { type From, readValues } from '../../prose.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { type KeptWork, keptDesigns } from './keptDesigns.ts';

/** The kept designs that a chart shows over today's curve. */
export interface FigureOverlays {
  /** What is said of those that are not drawn, and how far work for them is. */
  readonly element: HTMLElement;
  /** The charts with those over them that are worked out; the others follow. */
  over(specs: readonly FigureSpec[]): readonly FigureSpec[];
}

/** What charts are made from: one, or as many as there are. */
export interface ChartSource {
  readonly from: From;
  view(values: Readonly<Record<string, unknown>>): readonly FigureSpec[];
}

/** The charts of a kept design, or why it has none. */
type Own = { readonly specs: readonly FigureSpec[] } | { readonly problem: string };

/** Follows which designs charts show; `redraw` is called when others can be drawn. */
export function createFigureOverlays(
  context: PageContext,
  source: ChartSource,
  redraw: () => void,
  stops: (() => void)[],
): FigureOverlays {
  const { document, live } = context;
  const kept = keptDesigns(live);
  const words = element(document, 'span', { role: 'status' });
  const button = element(document, 'button', { type: 'button', class: 'plain' }, 'Stop');
  const note = element(document, 'p', { class: 'figure-overlays', hidden: true }, words, ' ', button);
  const charts = createOwnCharts(context, source);
  let work: { readonly of: Alternative; readonly job?: KeptWork } | undefined;
  let part: number | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const say = (shown: readonly Alternative[]) => {
    const missing = shown.flatMap((one) => {
      const made = charts.of(one);
      return made && 'problem' in made ? [notDrawnSaid(one.name, made.problem)] : [];
    });
    setText(words, [...missing, ...(work?.job ? [overlayWorkSaid(work.of.name, part)] : [])].join(' '));
    button.hidden = !work?.job;
    note.hidden = words.textContent === '';
  };
  /** One after the other; what needs no worker comes in a task of its own, so that today's curve is not kept waiting. */
  const workOn = (shown: readonly Alternative[]) => {
    if (work) return;
    const next = shown.find((one) => !charts.of(one));
    if (!next) return;
    const end = (stopped: boolean) => {
      [work, part] = [undefined, undefined];
      if (stopped) charts.skip(next);
      else charts.make(next);
      redraw();
    };
    work = { of: next };
    if (!charts.needsWork(next)) {
      timer = setTimeout(() => end(false));
      return;
    }
    const job = charts.workOut(next, (now) => {
      part = now;
      say(kept.shown());
    });
    work = { of: next, job };
    void job.done.then((done) => end(!done));
  };
  button.addEventListener('click', () => work?.job?.stop());
  stops.push(kept.onShown(redraw), () => {
    clearTimeout(timer);
    work?.job?.stop();
  });
  return {
    element: note,
    over(specs) {
      const shown = specs.every(({ map }) => map) ? [] : kept.shown();
      if (work?.job && !shown.includes(work.of)) work.job.stop();
      workOn(shown);
      say(shown);
      return specs.map((spec) => {
        const figures = shown.flatMap((one): KeptFigure[] => {
          const made = charts.of(one);
          if (!made || 'problem' in made) return [];
          // Of several charts each goes over the one with its title; a single one may be titled by its values.
          const [first] = made.specs;
          const same = specs.length === 1 ? first : made.specs.find(({ title }) => title === spec.title);
          return same ? [{ name: one.name, spec: same }] : [];
        });
        return overlaid(spec, figures);
      });
    },
  };
}

/** What a block would show for kept designs; each is made once, since their inputs never change. */
function createOwnCharts({ live }: PageContext, { from, view }: ChartSource) {
  const kept = keptDesigns(live);
  const ids = Object.values(from).map(({ id }) => id);
  let outcomes = kept.outcomes();
  let made = new WeakMap<Alternative['inputs'], Own>();
  /** Of another graph nothing is known yet. */
  const current = () => {
    if (outcomes !== kept.outcomes()) [outcomes, made] = [kept.outcomes(), new WeakMap()];
    return made;
  };
  const chartOf = ({ inputs }: Alternative): Own => {
    const found = outcomes.of(inputs, ids);
    try {
      const read = readValues(from, ({ id }) => found[id]!);
      return 'values' in read ? { specs: view(read.values) } : { problem: read.problem.message };
    } catch (fault) {
      reportError(fault);
      return { problem: 'it cannot be drawn for this design, by a fault of the program' };
    }
  };
  return {
    of: ({ inputs }: Alternative) => current().get(inputs),
    needsWork: ({ inputs }: Alternative) => kept.outcomes().workFor(inputs, ids).length > 0,
    workOut: ({ inputs }: Alternative, progressed: (part: number) => void) =>
      kept.workOut(inputs, ids, progressed),
    make: (one: Alternative) => current().set(one.inputs, chartOf(one)),
    skip: ({ inputs }: Alternative) => current().set(inputs, { problem: 'its computation was stopped' }),
  };
}
