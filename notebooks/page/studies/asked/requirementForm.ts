import { longestNote } from '../../../../lib/design/ownParts.ts';
import { readNumber, typedText } from '../../../../lib/graph/typedNumber.ts';
import {
  inUnitOf,
  type NumberQuantity,
  requirementOf,
  withoutRequirement,
  withRequirement,
} from '../../../../lib/studies/requirements.ts';
import type { PageContext } from '../../context.ts';
import { freshId } from '../../controls/field.ts';
import { element, setAttributes, setText } from '../../element.ts';

/** Bounds and reason of one number: at least, at most, because. */
export interface RequirementForm {
  readonly element: HTMLElement;
  /** Shows what is asked of this number; of none, the fields rest. Undefined values stay for the same requirement. */
  show(quantity: NumberQuantity | undefined): void;
  /** Puts the cursor into the first field. */
  focus(): void;
}

/** The form; `today` gives what a number is now, for an example, and `done` hears of every change that was made. */
export function createRequirementForm(
  { document, live }: PageContext,
  today: () => number | undefined,
  done: (what: 'set' | 'taken out') => void,
): RequirementForm {
  const problem = element(document, 'p', { class: 'problem', role: 'status', id: freshId() });
  const field = (words: string, attributes: Readonly<Record<string, string | number>> = {}) => {
    const text = element(document, 'input', {
      type: 'text',
      class: 'field-text',
      autocomplete: 'off',
      'aria-describedby': problem.id,
      ...attributes,
    });
    return { text, label: element(document, 'label', {}, element(document, 'span', {}, words), text) };
  };
  const [least, most] = [field('at least'), field('at most')];
  const because = field('because', { maxlength: longestNote });
  because.label.className = 'requirement-because';
  const submit = element(document, 'button', { type: 'submit', class: 'requirement-set' }, 'Set');
  const remove = element(document, 'button', { type: 'button', class: 'plain' }, 'Take out');
  const buttons = element(document, 'div', { class: 'requirement-buttons' }, submit, remove);
  const form = element(
    document,
    'form',
    { class: 'requirement-form', autocomplete: 'off', novalidate: true },
    least.label,
    most.label,
    because.label,
    buttons,
    problem,
  );
  let quantity: NumberQuantity | undefined;
  let shown: string | undefined;

  const say = (message: string, wrong?: HTMLElement) => {
    setText(problem, message);
    for (const { text } of [least, most, because])
      setAttributes(text, { 'aria-invalid': text === wrong ? 'true' : undefined });
    wrong?.focus();
  };
  const read = (text: HTMLInputElement): number | undefined => {
    if (text.value.trim() === '') return undefined;
    try {
      return readNumber(quantity!, text.value, today());
    } catch (error) {
      throw Object.assign(error as Error, { field: text });
    }
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    if (!quantity) return;
    try {
      const [atLeast, atMost] = [read(least.text), read(most.text)];
      const asked = {
        ...(atLeast === undefined ? {} : { atLeast }),
        ...(atMost === undefined ? {} : { atMost }),
        reason: because.text.value,
      };
      live.open(withRequirement(live.state(), quantity, asked));
      say('');
      done('set');
    } catch (error) {
      const { message, field } = error as Error & { readonly field?: HTMLElement };
      say(message, field ?? least.text);
    }
  });
  remove.addEventListener('click', () => {
    if (!quantity) return;
    live.open(withoutRequirement(live.state(), quantity.id));
    say('');
    least.text.focus();
    done('taken out');
  });
  return {
    element: form,
    focus: () => {
      least.text.focus();
      least.text.select();
    },
    show(next) {
      const found = next && requirementOf(live.state(), next.id);
      const asked = found && inUnitOf(found, next);
      remove.hidden = found === undefined;
      for (const part of [least.text, most.text, because.text, submit]) part.disabled = next === undefined;
      const key = `${next?.id} ${JSON.stringify(asked)}`;
      quantity = next;
      // What is being typed stays while the design moves on.
      if (key === shown) return;
      shown = key;
      say('');
      least.text.value = next && asked?.atLeast !== undefined ? typedText(next, asked.atLeast) : '';
      most.text.value = next && asked?.atMost !== undefined ? typedText(next, asked.atMost) : '';
      because.text.value = asked?.reason ?? '';
      setText(submit, asked ? 'Change' : 'Set');
      setAttributes(submit, {
        'aria-label': next && `${asked ? 'Change' : 'Set'} what is required of ${next.name}`,
      });
      setAttributes(remove, { 'aria-label': next && `Take out what is required of ${next.name}` });
    },
  };
}
