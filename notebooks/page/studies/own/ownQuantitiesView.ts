import { designGraph } from '../../../../lib/design/design.ts';
import { hasValue } from '../../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { noStudies, type OwnLine } from '../../../../lib/graph/studies.ts';
import { ownLinesOf, takeOutLine, usesOf } from '../../../../lib/studies/ownEdits.ts';
import { ownGraph } from '../../../../lib/studies/ownGraph.ts';
import { takenOutSaid, usedBySaid } from '../../../ownWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { valueElement } from '../../proseView.ts';
import { wordButton } from './labelledField.ts';
import { createOwnLineForm } from './ownLineForm.ts';

/** The person's own quantities: a list of them with today's values, and where they are written. */
export function renderOwnQuantities(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const said = element(document, 'p', { class: 'own-said', role: 'status' });
  const list = element(document, 'ul', { class: 'own-lines', 'aria-label': 'Own numbers', tabindex: -1 });
  const form = createOwnLineForm(context, stops, (text) => setText(said, text));
  let watched: (() => void)[] = [];
  let shown: unknown;
  const leave = () => {
    for (const stop of watched) stop();
    watched = [];
  };
  const takeOut = (place: number) => {
    const state = live.state();
    const { id, name } = ownLinesOf(state)[place]!;
    const uses = usesOf(id, state.studies ?? noStudies);
    live.open(takeOutLine(state, place));
    setText(said, takenOutSaid(name, uses));
    list.focus();
  };
  const follow = () => {
    // Requirements and pages count too: they may use a number.
    const { studies } = live.state();
    if (shown === studies) return;
    shown = studies;
    leave();
    const lines = ownLinesOf(live.state());
    const { problems } = ownGraph(designGraph, lines);
    const rows = lines.map((line, place) => {
      const problem = problems.find((one) => one.line === place)?.problem.message;
      return rowOf(context, line, problem, watched, {
        change: () => form.change(line.id),
        takeOut: () => takeOut(place),
      });
    });
    list.replaceChildren(...rows);
    list.hidden = rows.length === 0;
    form.follow();
  };
  // What was said belongs to the design as it was then; whoever changes it here says so afterwards.
  const changed = () => {
    setText(said, '');
    follow();
  };
  stops.push(live.onState(changed), leave);
  follow();
  return element(
    document,
    'section',
    { class: 'own-numbers', 'aria-label': 'Numbers of your own' },
    list,
    said,
    form.element,
  );
}

function rowOf(
  context: PageContext,
  line: OwnLine,
  problem: string | undefined,
  stops: (() => void)[],
  acts: { change(): void; takeOut(): void },
): HTMLElement {
  const { document, live } = context;
  const quantity = live.graph.quantities.get(line.id);
  const small = (text: string, kind: string) =>
    text === '' ? [] : [element(document, 'p', { class: kind }, text)];
  return element(
    document,
    'li',
    {},
    element(document, 'strong', {}, line.name || line.id),
    element(
      document,
      'span',
      { class: 'own-value' },
      quantity && problem === undefined ? valueElement(context, quantity, stops) : '—',
    ),
    element(
      document,
      'span',
      { class: 'own-buttons' },
      wordButton(document, 'Change', acts.change, { about: `Change ${line.name}` }),
      wordButton(document, 'Take out', acts.takeOut, { about: `Take ${line.name} out` }),
    ),
    element(document, 'p', { class: 'own-line-formula' }, line.id, ' = ', line.formula),
    problem === undefined && quantity
      ? reasonOf(context, quantity, stops)
      : element(document, 'p', { class: 'problem' }, problem ?? ''),
    ...small(line.about ?? '', 'own-small'),
    ...small(usedBySaid(usesOf(line.id, live.state().studies ?? noStudies)), 'own-small'),
  );
}

/** Why there is no value, as long as there is none. */
function reasonOf({ document, live }: PageContext, quantity: Quantity, stops: (() => void)[]): HTMLElement {
  const reason = element(document, 'p', { class: 'problem', hidden: true });
  stops.push(
    live.watch(quantity, {
      changed(outcome) {
        reason.hidden = hasValue(outcome);
        setText(reason, hasValue(outcome) ? '' : outcome.problem.message);
      },
    }),
  );
  return reason;
}
