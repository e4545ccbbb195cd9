import { designGraph } from '../../../../lib/design/design.ts';
import type { Outcome } from '../../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { shownValue } from '../../../../lib/graph/shown.ts';
import { step } from '../../../../lib/graph/step.ts';
import type { OwnLine } from '../../../../lib/graph/studies.ts';
import type { Problem } from '../../../../lib/problem.ts';
import { ownQuantities } from '../../../../lib/studies/ownQuantities.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { watchAll } from '../../watchAll.ts';

/** Says what a formula comes to while it is typed, or what is wrong with it and where. */
export interface FormulaFeedback {
  readonly element: HTMLElement;
  /** The lines with the one that is typed among them, at `place`; undefined while nothing is typed. */
  show(lines: readonly OwnLine[], place: number | undefined): void;
}

/** The value follows the design while the formula stands; nothing is kept by looking. */
export function createFormulaFeedback(context: PageContext, stops: (() => void)[]): FormulaFeedback {
  const { document } = context;
  const echo = element(document, 'p', { class: 'own-echo', 'aria-hidden': 'true', hidden: true });
  const said = element(document, 'p', { class: 'own-feedback', 'aria-live': 'polite' });
  let watched: (() => void)[] = [];
  const leave = () => {
    for (const stop of watched) stop();
    watched = [];
  };
  stops.push(leave);
  const tell = (text: string, wrong: boolean) => {
    said.classList.toggle('problem', wrong);
    setText(said, text);
  };
  const tellValue = (quantity: Quantity, outcomeOf: (other: Quantity) => Outcome) => {
    if (quantity.kind !== 'derived') return;
    const outcome = step(quantity, Object.values(quantity.from).map(outcomeOf)).outcome;
    if ('problem' in outcome) tell(outcome.problem.message, true);
    else tell(`= ${shownValue(quantity, outcome)}`, false);
  };
  const complain = (problem: Problem, formula: string) => {
    tell(problem.message, true);
    const { character, value = '' } = problem.parts;
    echo.hidden = character === undefined;
    if (character === undefined) return;
    const from = character - 1;
    const part = formula.slice(from, from + Math.max(1, value.length));
    echo.replaceChildren(
      formula.slice(0, from),
      element(document, 'mark', {}, part === '' ? '\u00a0' : part),
      formula.slice(from + part.length),
    );
  };
  return {
    element: element(document, 'div', {}, echo, said),
    show(lines, place) {
      leave();
      echo.hidden = true;
      if (place === undefined) return tell('', false);
      const line = lines[place]!;
      const { quantities, problems } = ownQuantities(designGraph, lines);
      const wrong = problems.find((one) => one.line === place);
      if (wrong) return complain(wrong.problem, line.formula);
      const quantity = quantities.find(({ id }) => id === line.id)!;
      watchAll(context, Object.values(quantity.from), watched, {
        pending: () => {},
        settled: () => {},
        changed: (outcomeOf) => tellValue(quantity, outcomeOf),
      });
    },
  };
}
