import { hasValue } from '../../lib/graph/outcome.ts';
import type { Block, StepwellDocument } from '../document.ts';
import { missingResult } from '../missingResult.ts';
import type { PageContext } from './context.ts';
import { element } from './element.ts';
import { inlineButton } from './inlineButton.ts';
import type { BeamPathView } from './pathView.ts';

/** Why the document has no result, said once, with the way to the field that can mend it. */
export function renderMissing(
  context: PageContext,
  { result, blocks }: StepwellDocument,
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
        const { text, input, mend } = missingResult(context.live.graph, result, problem);
        const line = element(document, 'p', { class: 'problem' }, text);
        if (input && mend)
          line.append(
            ' ',
            inlineButton(document, 'sets-link', mend.words, () => {
              context.live.set({ [input.id]: mend.value });
              // The button goes with the problem; whoever pressed it by a key goes on at the field.
              if (path.holds(input.id)) path.bring(input.id);
            }),
          );
        if (input && (path.holds(input.id) || isFurtherDown(input.id, blocks)))
          line.append(
            ' ',
            inlineButton(document, 'sets-link', `Go to: ${input.name}`, () => {
              if (path.holds(input.id)) path.bring(input.id);
              else focusField(place, input.id);
            }),
          );
        place.append(line);
      },
    }),
  );
  return [place];
}

/** Whether the document itself has a field for the input. */
function isFurtherDown(id: string, blocks: readonly Block[]): boolean {
  return blocks.some((block) => block.kind === 'controls' && block.inputs.some((input) => input.id === id));
}

function focusField(place: HTMLElement, id: string): void {
  const field = place
    .closest('main')
    ?.querySelector<HTMLElement>(`.field[data-input="${id}"] :is(input, select, textarea)`);
  // Blocks out of view have their own heights again only then (restWhileMoving.ts), and the field its place.
  place.closest('main')?.classList.remove('moving');
  field?.scrollIntoView({ block: 'center' });
  field?.focus({ preventScroll: true });
}
