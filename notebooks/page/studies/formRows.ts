import { element } from '../element.ts';

/** A row of a form; what it holds is written into the memory as it is typed. */
export interface FormRow {
  readonly element: HTMLElement;
  fault(message: string): void;
  /** Puts the cursor where the next thing is to be typed. */
  focus(): void;
}

/** Rows of one kind, as many as the person adds. */
export interface FormRows<T, R extends FormRow> {
  readonly element: HTMLElement;
  readonly shown: readonly R[];
  add(form: T): R;
  /** Rows in which nothing stands make room for what is brought. */
  dropEmpty(): void;
}

/** `forms` is what the rows hold, and changes with them; `show` makes a row, `changed` hears of one more or fewer. */
export function createRows<T extends { search: string }, R extends FormRow>(
  document: Document,
  forms: T[],
  show: (form: T, remove: () => void) => R,
  changed: () => void,
): FormRows<T, R> {
  const shown: R[] = [];
  const holder = element(document, 'div', { class: 'study-rows' });
  const remove = (form: T) => {
    const place = forms.indexOf(form);
    forms.splice(place, 1);
    shown.splice(place, 1)[0]!.element.remove();
  };
  const append = (form: T): R => {
    const row = show(form, () => {
      remove(form);
      changed();
    });
    shown.push(row);
    holder.append(row.element);
    return row;
  };
  forms.forEach(append);
  return {
    element: holder,
    shown,
    add(form) {
      forms.push(form);
      const row = append(form);
      changed();
      return row;
    },
    dropEmpty() {
      for (const form of [...forms]) if (form.search.trim() === '') remove(form);
    },
  };
}
