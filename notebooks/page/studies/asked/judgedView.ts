import type { Outcome } from '../../../../lib/graph/outcome.ts';
import type { ComparedDesign } from '../../../../lib/studies/compare.ts';
import { requirementsOf } from '../../../../lib/studies/requirements.ts';
import { longWorkSaid } from '../../../requirementWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { type KeptWork, keptDesigns } from '../keptDesigns.ts';
import { judgedTable } from './judgedTable.ts';
import { watchAged } from './watchAged.ts';

/** How several designs stand to what is asked, with a button for what takes a longer computation. */
export interface JudgedView {
  readonly element: HTMLElement;
  /** Holds these against today's requirements; hidden while there are none. */
  show(designs: readonly ComparedDesign[]): void;
}

export function createJudgedView(context: PageContext, stops: (() => void)[]): JudgedView {
  const { document, live } = context;
  const kept = keptDesigns(live);
  const table = element(document, 'div', { class: 'judged-table' });
  const words = element(document, 'span', { role: 'status' });
  const button = element(document, 'button', { type: 'button', class: 'plain' });
  const line = element(document, 'p', { class: 'judged-work' }, words, ' ', button);
  const whole = element(document, 'div', { class: 'judged' }, table, line);
  let designs: readonly ComparedDesign[] = [];
  let work: KeptWork | undefined;
  const today = new Map<string, Outcome>();
  let watched: readonly string[] = [];
  let ends: (() => void)[] = [];
  /** Follows what is asked in today's design, whose long work the page does anyway. */
  const watchToday = () => {
    if (watched.join(' ') === ids().join(' ')) return;
    watched = ids();
    for (const end of ends) end();
    today.clear();
    ends = watched.flatMap((id) => {
      const quantity = live.graph.quantities.get(id);
      if (!quantity) return [];
      return watchAged(live, quantity, (outcome, aged) => {
        if (aged || !outcome) today.delete(id);
        else today.set(id, outcome);
        show();
      });
    });
  };
  stops.push(() => {
    for (const end of ends) end();
  });

  const ids = () => requirementsOf(live.state()).map(({ id }) => id);
  const waiting = () =>
    designs.filter(
      ({ inputs }) =>
        kept.outcomes().workFor(inputs, ids()).length > 0 &&
        !(inputs === live.state().inputs && ids().every((id) => today.has(id))),
    );
  const show = () => {
    const requirements = requirementsOf(live.state());
    whole.hidden = requirements.length === 0;
    table.replaceChildren(
      ...(whole.hidden ? [] : [judgedTable(context, requirements, designs, kept.outcomes(), today)]),
    );
    const left = waiting().map(({ name }) => name);
    line.hidden = left.length === 0 && !work;
    if (work) return;
    setText(words, left.length === 0 ? '' : longWorkSaid(left));
    setText(button, 'Work it out');
  };
  const workOut = async () => {
    for (const { name, inputs } of waiting()) {
      setText(words, `Working out ‘${name}’ …`);
      setText(button, 'Stop');
      work = kept.workOut(inputs, ids(), (part) => {
        setText(words, `Working out ‘${name}’: ${Math.round(100 * part)}\u202f% done`);
      });
      const done = await work.done;
      work = undefined;
      show();
      if (!done) return;
    }
  };
  button.addEventListener('click', () => {
    if (work) work.stop();
    else void workOut();
  });
  stops.push(() => work?.stop());
  return {
    element: whole,
    show(next) {
      designs = next;
      watchToday();
      show();
    },
  };
}
