import { hasValue } from '../../lib/graph/outcome.ts';
import type { StepwellDocument } from '../document.ts';
import type { PageContext } from './context.ts';
import { element } from './element.ts';
import { inlineButton } from './inlineButton.ts';
import type { BeamPathView } from './pathView.ts';

/** Why the document has no result, said once, with the way to the field that can mend it. */
export function renderMissing(
  context: PageContext,
  { result }: StepwellDocument,
  path: BeamPathView,
  stops: (() => void)[],
): HTMLElement[] {
  if (!result) return [];
  const { document } = context;
  const place = element(document, 'div', { role: 'status', class: 'result-missing' });
  stops.push(
    context.live.watch(result.quantity, {
      changed: (outcome) => {
        const problem = hasValue(outcome) ? undefined : outcome.problem;
        place.replaceChildren();
        place.hidden = problem === undefined;
        if (!problem) return;
        const line = element(document, 'p', { class: 'problem' }, `${result.missing} ${problem.message}`);
        const input = context.live.graph.quantities.get(problem.parts.input ?? '');
        if (input && path.holds(input.id))
          line.append(
            ' ',
            inlineButton(document, 'sets-link', `Go to: ${input.name}`, () => path.bring(input.id)),
          );
        place.append(line);
      },
    }),
  );
  return [place];
}
