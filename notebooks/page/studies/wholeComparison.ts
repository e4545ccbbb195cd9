import type { ComparedDesign, Comparison } from '../../../lib/studies/compare.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { studiesUntil } from './desk/studiesUntil.ts';
import { actButton } from './formField.ts';
import { createStudyProgress } from './studyProgress.ts';

/** The way to the numbers that take a longer computation: a button, then progress with a stop. */
export interface WholeComparison {
  readonly element: HTMLElement;
  /** Offers it for these designs; nothing where `left` is 0. What goes on for others is ended. */
  offer(designs: readonly ComparedDesign[], ids: readonly string[], left: number): void;
}

/** `shown` gets the comparison with all numbers in it; `tool` tells one place of a page from another. */
export function createWholeComparison(
  { document, live }: PageContext,
  stops: (() => void)[],
  tool: string,
  shown: (comparison: Comparison) => void,
): WholeComparison {
  const startStudy = studiesUntil(stops);
  const news = element(document, 'p', { class: 'problem', role: 'status' });
  let asked: { readonly designs: readonly ComparedDesign[]; readonly ids: readonly string[] } | undefined;
  let stop = () => {};
  const button = actButton(document, 'Work them out', () => {
    if (!asked) return;
    const own = live.state().studies?.ownLines ?? [];
    const request = { kind: 'compare', ...asked, all: true, own } as const;
    const study = startStudy(request, { tool, progressed: (part) => progress.told(part) });
    ({ stop } = study);
    button.hidden = true;
    progress.begin(study, 'Working them out');
    void study.answer.then((outcome) => {
      if ('problem' in outcome && outcome.problem.kind === 'stopped') return;
      progress.end();
      if ('problem' in outcome) setText(news, outcome.problem.message);
      else shown(outcome.value);
    });
  });
  const progress = createStudyProgress(document, () => {
    progress.end();
    button.hidden = false;
    button.focus();
  });
  return {
    element: element(document, 'div', { class: 'compare-whole' }, button, progress.element, news),
    offer(designs, ids, left) {
      stop();
      progress.end();
      setText(news, '');
      asked = { designs, ids };
      button.hidden = left === 0;
      setText(button, left === 1 ? 'Work it out' : 'Work them out');
    },
  };
}
