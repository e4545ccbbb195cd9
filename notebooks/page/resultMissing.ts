import { hasValue } from '../../lib/graph/outcome.ts';
import { isInput, type Quantity } from '../../lib/graph/quantity.ts';
import { checkInput } from '../../lib/graph/state.ts';
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
        const { parts, message } = problem;
        const input = context.live.graph.quantities.get(parts.input ?? '');
        const mends = input !== undefined && parts.mend !== undefined && allows(input, parts.mend.value);
        // Where one value would mend it, the design is none without a result: the message alone says what is so.
        const text = mends ? message : `${result.missing} ${message}`;
        const line = element(document, 'p', { class: 'problem' }, text);
        if (mends)
          line.append(
            ' ',
            inlineButton(document, 'sets-link', parts.mend!.words, () => {
              context.live.set({ [input.id]: parts.mend!.value });
              // The button goes with the problem; whoever pressed it by a key goes on at the field.
              if (path.holds(input.id)) path.bring(input.id);
            }),
          );
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

/** Whether the input can be set to that value. */
function allows(quantity: Quantity, value: number): boolean {
  try {
    if (!isInput(quantity)) return false;
    checkInput(quantity, value);
    return true;
  } catch {
    return false;
  }
}
