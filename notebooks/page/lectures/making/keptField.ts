import { element, setText } from '../../element.ts';
import { labelledField } from '../../studies/own/labelledField.ts';

/** A field that is taken when one leaves it; what cannot be taken stays in it, with the reason below. */
export interface KeptField {
  readonly element: HTMLElement;
  /** Shows what the design holds, unless something else is typed. */
  refresh(): void;
  /** Takes what is typed; false where that cannot be. */
  take(): boolean;
}

interface KeptFieldParts {
  /** Name of what is typed into it, unique on the page. */
  readonly key: string;
  readonly label: string;
  readonly control: HTMLInputElement | HTMLTextAreaElement;
  readonly help?: string;
  /** What the design holds. */
  value(): string;
  /** What is better mended in it, in words; empty where nothing is. It can be taken all the same. */
  warn?(text: string): string;
  /** Puts what is typed into the design; throws a Problem where it cannot. */
  put(text: string): void;
}

/** `drafts` keeps what is typed and not taken while the person is elsewhere. */
export function createKeptField(
  document: Document,
  drafts: Map<string, string>,
  { key, label, control, help = '', value, warn = () => '', put }: KeptFieldParts,
): KeptField {
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const warning = element(document, 'p', { class: 'own-said', role: 'status' });
  const refresh = () => {
    const text = drafts.get(key) ?? value();
    if (control.value !== text) control.value = text;
    setText(warning, warn(text));
  };
  const take = (): boolean => {
    if (!drafts.has(key)) return true;
    const text = control.value;
    try {
      setText(problem, '');
      // Before it is put: what follows the design then shows what it holds.
      drafts.delete(key);
      put(text);
      refresh();
      return true;
    } catch (error) {
      drafts.set(key, text);
      setText(problem, (error as Error).message);
      return false;
    }
  };
  control.addEventListener('input', () => drafts.set(key, control.value));
  control.addEventListener('change', () => {
    take();
    setText(warning, warn(control.value));
  });
  refresh();
  const holder = labelledField(document, label, control, help);
  holder.append(problem, warning);
  return { element: holder, refresh, take };
}

/** A text of several lines to type in. */
export function textArea(document: Document, rows: number, longest: number): HTMLTextAreaElement {
  return element(document, 'textarea', {
    class: 'field-text lecture-text',
    rows,
    maxlength: longest,
  });
}
