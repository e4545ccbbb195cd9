import type { NumberInput } from '../../../lib/graph/quantity.ts';
import { shownValue } from '../../../lib/graph/shown.ts';
import { readTyped } from '../../../lib/graph/typedInput.ts';
import { withUnit } from '../../../lib/graph/units.ts';
import { splitQuantityText } from '../../../lib/graph/unitText.ts';
import { setAttributes } from '../element.ts';
import { type Drafts, draftText } from './drafts.ts';
import { type FieldFrame, type Setting, tryChange } from './field.ts';
import { readingUnit, stepValue } from './steps.ts';

/** Takes a new value, SI; throws a Problem that says why it cannot be, and then nothing has changed. */
export type SetNumber = (value: number, setting: Setting) => void;

/** What the text field holds and does. */
export class NumberEntry {
  value: number;
  /** The input with its usual span as the design stands. */
  usual: NumberInput;
  /** Called with each value shown. */
  onShown: (value: number) => void = () => {};
  /** Text of the present value, as typed or as formatted; what differs from it has not been taken. */
  private shown = '';
  private stepping = false;
  /** True while the drafts change by this field, which then knows what to show. */
  private drafting = false;

  constructor(
    readonly input: NumberInput,
    private readonly text: HTMLInputElement,
    private readonly frame: FieldFrame,
    private readonly onSet: SetNumber,
    private readonly drafts: Drafts | undefined,
  ) {
    this.value = input.initial;
    this.usual = input;
    this.show(input.initial);
    this.recall();
    text.addEventListener('input', () => {
      this.takeBackRefusal();
      this.keepDraft();
    });
    text.addEventListener('keydown', (event) => this.press(event));
    text.addEventListener('keyup', () => this.endSteps());
    text.addEventListener('change', () => this.commit());
    text.addEventListener('blur', () => {
      this.endSteps();
      this.commit();
    });
  }

  update(value: number, typed?: string): void {
    const same = Object.is(value, this.value);
    if (same && (typed === undefined || typed === this.shown)) return;
    this.show(value, typed);
    this.recall();
  }

  /** Shows the draft of this input in place of its value; without one, the value. */
  recall(): void {
    if (this.drafting || !this.drafts) return;
    const draft = this.drafts.of(this.input.id);
    const text = draft ? draftText(this.input, draft) : this.shown;
    if (this.text.value === text) return;
    this.show(this.value, this.shown);
    if (!draft) return;
    this.text.value = text;
    this.frame.wait(`Not taken yet: Enter takes it, Escape brings back ${this.shownText(this.value)}.`);
  }

  /** Sets a value that was pointed at; refuses beside the field. */
  choose(value: number, final: boolean): void {
    const [before, text] = [this.value, this.shown];
    // Shown first: writing into a field that has the focus lays the page out, 10 ms once the design has marked it.
    this.show(value);
    tryChange(this.frame, () => this.onSet(value, { final }));
    if (!this.frame.refused()) return this.dropDraft();
    [this.value, this.shown, this.text.value] = [before, text, text];
    this.mark();
    this.onShown(before);
  }

  shownText(value: number): string {
    return shownValue(this.input, { value });
  }

  private show(value: number, typed = this.shownText(value)): void {
    this.value = value;
    this.shown = typed;
    if (this.text.value !== typed) this.text.value = typed;
    this.frame.accept();
    this.frame.wait();
    this.mark();
    this.onShown(value);
  }

  /** Keeps what stands in the field; one that was emptied holds nothing to keep. */
  private keepDraft(): void {
    const text = this.text.value;
    if (text === this.shown || text.trim() === '') return this.dropDraft();
    this.drafting = true;
    this.drafts?.keep({ input: this.input.id, text, unit: readingUnit(this.input) });
    this.drafting = false;
  }

  /** What was refused is being corrected: what was said of it goes. */
  private takeBackRefusal(): void {
    if (!this.frame.refused()) return;
    this.frame.accept();
    this.mark();
  }

  private dropDraft(): void {
    this.frame.wait();
    this.drafting = true;
    this.drafts?.drop(this.input.id);
    this.drafting = false;
  }

  private mark(): void {
    setAttributes(this.text, { 'aria-invalid': this.frame.refused() ? 'true' : undefined });
  }

  private press(event: KeyboardEvent): void {
    if (event.key === 'Enter') this.commit();
    else if (event.key === 'Escape' && this.text.value !== this.shown) {
      event.stopPropagation();
      this.show(this.value, this.shown);
      this.dropDraft();
    } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      event.preventDefault();
      this.step(event.key === 'ArrowUp' ? 1 : -1, event.shiftKey ? 0.1 : event.altKey ? 0.001 : 0.01);
    }
  }

  private step(direction: 1 | -1, fraction: number): void {
    if (!this.commit()) return;
    const next = stepValue(this.usual, this.value, direction, fraction);
    if (Object.is(next, this.value)) return;
    this.stepping = true;
    this.choose(next, false);
  }

  private endSteps(): void {
    if (!this.stepping) return;
    this.stepping = false;
    this.choose(this.value, true);
  }

  /** Takes what was typed; false where it cannot be. */
  private commit(): boolean {
    const typed = this.text.value;
    if (typed === this.shown) {
      if (this.frame.refused()) this.show(this.value, typed);
      return true;
    }
    const taken = tryChange(this.frame, () => this.take(typed));
    this.mark();
    return taken;
  }

  private take(typed: string): void {
    try {
      const read = readTyped(this.input, typed, readingUnit(this.input));
      const value = this.input.whole ? Math.round(read) : read;
      const before = this.value;
      this.value = value;
      this.drafting = true;
      try {
        this.onSet(value, { final: true });
      } catch (error) {
        this.value = before;
        throw error;
      } finally {
        this.drafting = false;
      }
      // A number that was rounded is shown as it counts.
      this.show(value, value === read ? withItsUnit(this.input, typed) : undefined);
      this.dropDraft();
    } catch (error) {
      throw stillCounting(error as Error, this.shownText(this.value));
    }
  }
}

/** What was typed, a bare number with the unit that it counts in. */
function withItsUnit(input: NumberInput, typed: string): string {
  const isBare = splitQuantityText(typed).unit === '';
  return isBare ? withUnit(typed.trim(), readingUnit(input)) : typed;
}

/** The refusal of what was typed, with the value that the page goes on with. */
function stillCounting(error: Error, value: string): Error {
  return new Error(`${error.message} ${value} still counts.`);
}
