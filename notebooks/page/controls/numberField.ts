import type { NumberInput } from '../../../lib/graph/quantity.ts';
import { element, setAttributes } from '../element.ts';
import type { Drafts } from './drafts.ts';
import { createFrame, type Field, type FieldFrame } from './field.ts';
import { NumberEntry, type SetNumber } from './numberEntry.ts';
import { type SliderScale, sliderScale } from './steps.ts';

/**
 * A text field that takes any unit, keeps what was typed until the value changes from elsewhere (a bare number gets
 * its unit), and explains beside itself what it cannot take; with a slider where the input has a typical span. Enter, leaving the field and the
 * slider's release are final; a slider's drag and held arrow keys are not until they end. What is typed and not taken
 * goes into `drafts`.
 */
export function createNumberField(
  document: Document,
  input: NumberInput,
  onSet: SetNumber,
  drafts?: Drafts,
): Field {
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
  const entry = new NumberEntry(input, text, frame, onSet, drafts);
  const slider = scale && addSlider(document, frame, entry, scale);
  return {
    element: frame.element,
    update: (value, typed) => entry.update(value as number, typed),
    explain: frame.explain,
    recall: () => entry.recall(),
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
