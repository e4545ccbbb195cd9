import type { NumberInput } from '../../../lib/graph/quantity.ts';
import { shownValue } from '../../../lib/graph/shown.ts';
import { readTyped } from '../../../lib/graph/typedInput.ts';
import { withUnit } from '../../../lib/graph/units.ts';
import { splitQuantityText } from '../../../lib/graph/unitText.ts';
import { element, setAttributes } from '../element.ts';
import { createFrame, type Field, type FieldFrame, type Setting, tryChange } from './field.ts';
import { readingUnit, type SliderScale, sliderScale, stepValue } from './steps.ts';

/** Takes a new value, SI; throws a Problem that says why it cannot be, and then nothing has changed. */
export type SetNumber = (value: number, setting: Setting) => void;

/**
 * A text field that takes any unit, keeps what was typed until the value changes from elsewhere (a bare number gets
 * its unit), and explains beside itself what it cannot take; with a slider where the input has a typical span. Enter, leaving the field and the
 * slider's release are final; a slider's drag and held arrow keys are not until they end.
 */
export function createNumberField(document: Document, input: NumberInput, onSet: SetNumber): Field {
  const frame = createFrame(document, input);
  const text = element(document, 'input', {
    type: 'text',
    id: frame.controlId,
    class: 'field-text',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    'aria-describedby': frame.describedBy,
  });
  frame.body.append(text);
  const scale = sliderScale(input);
  const entry = new NumberEntry(input, text, frame, onSet);
  const slider = scale && addSlider(document, frame, entry, scale);
  return {
    element: frame.element,
    update: (value, typed) => entry.update(value as number, typed),
    explain: frame.explain,
    focus: () => text.focus(),
    respan: (low, high) => {
      const { min, max } = input.range;
      const typical = [Math.max(min, low), Math.min(max, high)] as const;
      if (!slider || !(typical[0] < typical[1])) return;
      entry.usual = { ...input, typical };
      slider.rescale(sliderScale(entry.usual)!);
    },
  };
}

/** What the text field holds and does. */
class NumberEntry {
  value: number;
  /** The input with its usual span as the design stands. */
  usual: NumberInput;
  /** Called with each value shown. */
  onShown: (value: number) => void = () => {};
  /** Text of the present value, as typed or as formatted; what differs from it has not been taken. */
  private shown = '';
  private stepping = false;

  constructor(
    readonly input: NumberInput,
    private readonly text: HTMLInputElement,
    private readonly frame: FieldFrame,
    private readonly onSet: SetNumber,
  ) {
    this.value = input.initial;
    this.usual = input;
    this.show(input.initial);
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
  }

  /** Sets a value that was pointed at; refuses beside the field. */
  choose(value: number, final: boolean): void {
    const [before, text] = [this.value, this.shown];
    // Shown first: writing into a field that has the focus lays the page out, 10 ms once the design has marked it.
    this.show(value);
    tryChange(this.frame, () => this.onSet(value, { final }));
    if (!this.frame.refused()) return;
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
    this.mark();
    this.onShown(value);
  }

  private mark(): void {
    setAttributes(this.text, { 'aria-invalid': this.frame.refused() ? 'true' : undefined });
  }

  private press(event: KeyboardEvent): void {
    if (event.key === 'Enter') this.commit();
    else if (event.key === 'Escape' && this.text.value !== this.shown) {
      event.stopPropagation();
      this.show(this.value, this.shown);
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
      const value = readTyped(this.input, typed, readingUnit(this.input));
      const before = this.value;
      this.value = value;
      try {
        this.onSet(value, { final: true });
      } catch (error) {
        this.value = before;
        throw error;
      }
      this.show(value, withItsUnit(this.input, typed));
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

function addSlider(document: Document, frame: FieldFrame, entry: NumberEntry, first: SliderScale) {
  let scale = first;
  const slider = element(document, 'input', {
    type: 'range',
    // Arrow keys in the text do the same, so that Tab passes on to the next input.
    tabindex: -1,
    class: 'field-slider',
    min: 0,
    max: scale.places,
    step: 1,
    'aria-label': `${entry.input.name}, slider`,
  });
  frame.body.append(slider);
  const pointed = () => scale.valueAt(Number(slider.value) / scale.places);
  const move = (final: boolean) => entry.choose(pointed(), final);
  entry.onShown = (value) => {
    const position = scale.positionOf(value);
    // Rounded values share positions: moving the slider to "its" position would hold it there against arrow keys.
    if (!Object.is(pointed(), value)) slider.value = String(Math.round(position * scale.places));
    slider.style.setProperty('--filled', `${100 * position}%`);
    setAttributes(slider, { 'aria-valuetext': entry.shownText(value) });
  };
  entry.onShown(entry.value);
  slider.addEventListener('input', () => move(false));
  slider.addEventListener('change', () => move(true));
  return {
    rescale(next: SliderScale) {
      scale = next;
      setAttributes(slider, { max: next.places });
      entry.onShown(entry.value);
    },
  };
}
