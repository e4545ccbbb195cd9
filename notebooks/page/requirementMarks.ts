import type { Outcome } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import { requirementsOf, type Verdict } from '../../lib/studies/requirements.ts';
import { markText, standingOf } from '../requirementWords.ts';
import { element, setAttributes, setText, svgElement } from './element.ts';
import type { Live } from './live.ts';

/** Signs drawn as paths: not every face has them, and shape tells them apart where colour does not. */
const signs: Readonly<Record<Verdict, string>> = {
  met: 'M3.5 8.5l3 3 6-7',
  'not met': 'M4 4l8 8M12 4l-8 8',
  'not known': 'M5.5 6a2.5 2.5 0 1 1 3.6 2.2c-.8.4-1.1.8-1.1 1.6M8 12.4v.6',
};

/** A small sign with its words for those who read by ear; `words` also show where it is pointed at. */
export function verdictSign(document: Document, verdict: Verdict, words: string): HTMLElement {
  const drawn = svgElement(
    document,
    'svg',
    { viewBox: '0 0 16 16', 'aria-hidden': 'true', focusable: 'false' },
    svgElement(document, 'path', { d: signs[verdict] }),
  );
  return element(
    document,
    'span',
    { class: 'requirement-mark', 'data-verdict': verdict, title: words },
    drawn,
    element(document, 'span', { class: 'off-screen' }, ` (${words})`),
  );
}

/** Puts the signs of requirements beside numbers, and keeps them true as values and requirements change. */
export interface RequirementMarks {
  /** Says what a number holds now. */
  show(place: HTMLElement, quantity: Quantity, outcome: Outcome): void;
  /** Whether what it holds is older than the design. */
  age(place: HTMLElement, older: boolean): void;
}

interface Marked {
  readonly quantity: Quantity;
  readonly outcome: Outcome;
  readonly older: boolean;
}

const made = new WeakMap<Live, RequirementMarks>();

/** The marks of a page: one set for each live design, since sentences come and go without a word. */
export function marksOf(document: Document, live: Live): RequirementMarks {
  const known = made.get(live) ?? createMarks(document, live);
  made.set(live, known);
  return known;
}

function createMarks(document: Document, live: Live): RequirementMarks {
  const places = new WeakMap<HTMLElement, Marked>();
  let requirements = requirementsOf(live.state());
  const write = (place: HTMLElement, marked: Marked) => {
    places.set(place, marked);
    const { quantity, outcome, older } = marked;
    const asked = requirements.find(({ id }) => id === quantity.id);
    const standing = asked && standingOf(asked, quantity, outcome, older);
    writeMark(document, place, standing && { verdict: standing.verdict, words: markText(standing) });
  };
  live.onState((state) => {
    const now = requirementsOf(state);
    if (now === requirements) return;
    requirements = now;
    for (const place of document.querySelectorAll<HTMLElement>('.value, .field-label')) {
      const marked = places.get(place);
      if (marked) write(place, marked);
    }
  });
  return {
    show: (place, quantity, outcome) =>
      write(place, { quantity, outcome, older: places.get(place)?.older ?? false }),
    age(place, older) {
      const marked = places.get(place);
      if (marked && marked.older !== older) write(place, { ...marked, older });
    },
  };
}

function writeMark(
  document: Document,
  place: HTMLElement,
  told: { readonly verdict: Verdict; readonly words: string } | undefined,
): void {
  const mark = [...place.children].find(({ className }) => className === 'requirement-mark') as
    | HTMLElement
    | undefined;
  if (!told) mark?.remove();
  else if (mark?.dataset['verdict'] === told.verdict) {
    setAttributes(mark, { title: told.words });
    setText(mark.lastElementChild!, ` (${told.words})`);
  } else {
    const next = verdictSign(document, told.verdict, told.words);
    if (mark) mark.replaceWith(next);
    else place.append(next);
  }
}
