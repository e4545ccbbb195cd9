import { createPart, type OwnPart, type PartKind } from '../../../lib/design/ownParts.ts';
import { addPart, partOf, partsLike, removePart, renamePart } from '../../../lib/design/ownPartsList.ts';
import { takePart } from '../../../lib/design/takePart.ts';
import type { Patch } from '../../../lib/graph/state.ts';
import { element, setText } from '../element.ts';
import type { OwnPartsStore } from '../ownPartsStore.ts';
import { freshId } from './field.ts';
import { createOwnPartsChoice, type OwnPartsChoice, partWords } from './ownPartsChoice.ts';
import { createOwnPartsFiles, type OwnPartsFiles, type SaveText } from './ownPartsFiles.ts';
import { createOwnPartsForm, type FormActions, type OwnPartsForm, type PartWords } from './ownPartsForm.ts';

/** What the control needs of the design and of the person's disk. */
export interface OwnPartsActions {
  inputs(): Patch;
  /** One write, one step back; throws a Problem, and then nothing has changed. */
  set(patch: Patch): void;
  save: SaveText;
}

/** A person's own parts of one kind. */
export interface OwnPartsField {
  readonly element: HTMLElement;
  /** Follows the design and the list; call it after every change of either. */
  refresh(): void;
}

/** A choice among one's own parts; keeping, renaming, removing and files behind a disclosure. */
export function createOwnPartsField(
  document: Document,
  kind: PartKind,
  store: OwnPartsStore,
  actions: OwnPartsActions,
): OwnPartsField {
  const field = new Field(document, kind, store, actions);
  field.refresh();
  return { element: field.element, refresh: () => field.refresh() };
}

class Field {
  readonly element: HTMLElement;
  private readonly choice: OwnPartsChoice;
  private readonly form: OwnPartsForm;
  private readonly files: OwnPartsFiles;
  private readonly more: HTMLDetailsElement;
  private readonly summary: HTMLElement;
  private readonly status: HTMLElement;
  private readonly problem: HTMLElement;
  private readonly trouble: HTMLElement;
  /** Of two equal parts, the one that was chosen last. */
  private preferred = '';

  constructor(
    document: Document,
    private readonly kind: PartKind,
    private readonly store: OwnPartsStore,
    private readonly actions: OwnPartsActions,
  ) {
    const problemId = `${freshId()}-problem`;
    this.status = element(document, 'p', { class: 'own-parts-status', role: 'status' });
    this.problem = element(document, 'p', { class: 'problem', id: problemId, 'aria-live': 'polite' });
    this.trouble = element(document, 'p', { class: 'problem' });
    this.choice = createOwnPartsChoice(document, kind, (name) => this.attempt(() => this.choose(name)));
    const form: FormActions = {
      keep: (words) => this.attempt(() => this.keep(words)),
      change: (part, words) => this.attempt(() => this.change(part, words)),
      remove: (part) => this.attempt(() => this.remove(part)),
    };
    this.form = createOwnPartsForm(document, kind, form, problemId);
    this.files = createOwnPartsFiles(document, kind, store, actions.save, (act) => this.attempt(act));
    this.summary = element(document, 'summary');
    const inside = [this.summary, this.form.element, this.files.element];
    this.more = element(document, 'details', { class: 'own-parts-more' }, ...inside);
    const rows = [this.choice.element, this.status, this.problem, this.trouble, this.more];
    this.element = element(document, 'div', { class: 'own-parts' }, ...rows);
  }

  refresh(): void {
    const { kind, store } = this;
    const part = this.current();
    const ofKind = store.value().filter((one) => one.kind === kind);
    this.choice.show(ofKind, part);
    this.form.show(part, this.actions.inputs());
    this.files.show();
    setText(
      this.summary,
      part ? 'Rename, remove or save' : `Keep this ${partWords[kind].one}, or open a list`,
    );
    setText(this.trouble, store.trouble());
    this.say('');
  }

  private current(): OwnPart | undefined {
    const like = partsLike(this.store.value(), this.kind, this.actions.inputs());
    return like.find(({ name }) => name === this.preferred) ?? like[0];
  }

  private say(words: string, fault = ''): void {
    setText(this.status, words);
    setText(this.problem, fault);
  }

  /** Runs what was asked for and says what came of it; a Problem leaves list and design as they were. */
  private async attempt(act: () => string | Promise<string>): Promise<void> {
    try {
      this.say(await act());
    } catch (error) {
      this.refresh();
      this.say('', (error as Error).message);
    }
  }

  private choose(name: string): string {
    const part = partOf(this.store.value(), this.kind, name);
    this.actions.set(part.values);
    this.prefer(part.name);
    return '';
  }

  private prefer(name: string): void {
    this.preferred = name;
    this.refresh();
  }

  private keep({ name, ...taking }: PartWords): string {
    const part = takePart(this.kind, name, this.actions.inputs(), taking);
    this.store.change((parts) => addPart(parts, part));
    this.actions.set(part.values);
    this.prefer(part.name);
    this.more.open = false;
    this.choice.focus();
    return `Kept as ‘${part.name}’.`;
  }

  private change(part: OwnPart, { name, note }: PartWords): string {
    const next = createPart(this.kind, name, part.values, note);
    this.store.change((parts) => renamePart(parts, this.kind, part.name, next.name, next.note));
    this.prefer(next.name);
    return `Changed to ‘${next.name}’.`;
  }

  private remove(part: OwnPart): string {
    this.store.change((parts) => removePart(parts, this.kind, part.name));
    this.refresh();
    this.form.focus();
    if (this.current()) return `‘${part.name}’ is off the list.`;
    this.form.fill(part);
    return `‘${part.name}’ is off the list; the inputs stay. ‘Keep’ puts it back.`;
  }
}
