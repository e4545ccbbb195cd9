import { focusRadius } from '../../../lib/design/focus.ts';
import { energyAfter } from '../../../lib/design/losses.ts';
import { radiusFrom, type WidthName, widthsOf } from '../../../lib/optics/widths.ts';
import {
  fluenceRows,
  fluenceSaid,
  type GaussianPulse,
  pulseValues,
  pulseWith,
  widthChoices,
} from '../../words/fluenceRows.ts';
import type { LinkedRow } from '../../words/linkedRows.ts';
import { widthRows } from '../../words/widthRows.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { labelledField, selectField } from '../studies/formField.ts';
import { createLinkedRows } from './linkedRowsView.ts';

/** What it begins with where the design has no spot. */
const elsewise: GaussianPulse = { energy: 10e-6, radius: 20e-6 };

/** Turns energy and width of a Gaussian pulse into its peak and mean fluence, and back. */
export function renderFluences({ document, live }: PageContext): HTMLElement {
  let pulse = today(live);
  let given: WidthName = 'diameter';
  const said = element(document, 'p', { class: 'linked-said', 'aria-live': 'polite' });
  const tell = () => setText(said, fluenceSaid(pulse));
  const rows = createLinkedRows(document, fluenceRows, {
    values: () => pulseValues(pulse),
    set: (key, value) => {
      pulse = pulseWith(pulse, key, value);
      tell();
    },
  });
  const row = (): LinkedRow<'width'> => ({
    ...widthRows.find(({ key }) => key === given)!,
    key: 'width',
    // Widths there are those of beams, here those of spots.
    bare: 'um',
    label: 'Width',
    about: 'Of the beam or spot, in the way chosen above; the fluences follow, the energy stays.',
  });
  const createWidth = () =>
    createLinkedRows(document, [row()], {
      values: () => ({ width: widthsOf(pulse.radius)[given] }),
      set: (_, value) => {
        pulse = { ...pulse, radius: radiusFrom(given, value) };
        rows.refresh();
        tell();
      },
    });
  let width = createWidth();
  const way = selectField(document, widthChoices, given, (name) => {
    given = name;
    const next = createWidth();
    width.element.replaceWith(next.element);
    width = next;
  });
  tell();
  return element(
    document,
    'section',
    { class: 'converter', 'aria-label': 'Fluence of a Gaussian pulse' },
    labelledField(document, 'The width is given as', way),
    width.element,
    rows.element,
    said,
  );
}

/** The pulse behind the losses in the focus of the plain beam. */
function today(live: PageContext['live']): GaussianPulse {
  try {
    const { energy, radius } = live.read({ energy: energyAfter, radius: focusRadius });
    return { energy: energy as number, radius: radius as number };
  } catch {
    return elsewise;
  }
}
