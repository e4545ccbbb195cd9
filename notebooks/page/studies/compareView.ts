import {
  alternativesOf,
  forgetAlternative,
  freeName,
  keepAlternative,
  takeAlternative,
} from '../../../lib/studies/alternatives.ts';
import { type Comparison, compareDesigns } from '../../../lib/studies/compare.ts';
import { comparisonSaid } from '../../compareWords.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { createJudgedView } from './asked/judgedView.ts';
import { comparedTable, createDocumentChoice } from './comparedTable.ts';
import { keptDesigns } from './keptDesigns.ts';
import { toolMemory } from './toolMemory.ts';
import { createWholeComparison } from './wholeComparison.ts';

/** A pause of the hand after which numbers are compared, ms: an engine a design takes some tenths of a second. */
const restsFor = 150;
/** Designs beside today's for which a table has room. */
const mostShown = 4;

/** Keeps designs beside today's and shows where they differ. */
export function renderCompare(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const keep = createKeepForm(context);
  const kept = element(document, 'div', { class: 'compare-kept' });
  const choose = createDocumentChoice(document, 'compare-document');
  const said = element(document, 'p', { class: 'choices-summary', 'aria-live': 'polite' });
  const tables = element(document, 'div', { class: 'compare-tables' });
  const judged = createJudgedView(context, stops);
  const whole = createWholeComparison(context, stops, 'compare-whole', (comparison) => tell(comparison));
  const below = element(document, 'div', {}, judged.element, choose.holder, said, whole.element, tables);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const designsNow = () => {
    const state = live.state();
    return [{ name: 'today', inputs: state.inputs }, ...alternativesOf(state).slice(0, mostShown)];
  };
  const tell = (comparison: Comparison) => {
    const { title } = choose.chosen();
    const names = designsNow().map(({ name }) => name);
    setText(said, comparisonSaid(comparison, title));
    tables.replaceChildren(
      comparedTable(context, 'Inputs that differ', names, comparison.inputs),
      comparedTable(context, `Numbers of ‘${title}’ that differ`, names, comparison.results),
    );
  };
  const compare = () => {
    const { ids } = choose.chosen();
    const designs = designsNow();
    const comparison = compareDesigns(live.graph, designs, ids);
    tell(comparison);
    judged.show(designs);
    whole.offer(designs, ids, comparison.heavy.length);
    for (const part of [judged.element, tables]) part.removeAttribute('data-older');
  };
  const follow = () => {
    const alternatives = alternativesOf(live.state());
    kept.replaceChildren(...alternatives.map((_, place) => keptRow(context, place)));
    below.hidden = alternatives.length === 0;
    keep.follow();
    clearTimeout(timer);
    if (alternatives.length === 0) return;
    for (const part of [judged.element, tables]) part.setAttribute('data-older', '');
    timer = setTimeout(compare, restsFor);
  };
  choose.select.addEventListener('change', compare);
  stops.push(live.onState(follow) as () => void, () => clearTimeout(timer));
  follow();
  return element(
    document,
    'section',
    { class: 'compare', 'aria-label': 'Alternatives' },
    keep.form,
    kept,
    below,
  );
}

function createKeepForm({ document, live }: PageContext) {
  const name = element(document, 'input', {
    type: 'text',
    id: 'alternative-name',
    class: 'field-text',
    autocomplete: 'off',
    maxlength: 120,
  });
  const memory = toolMemory(live);
  name.value = memory.alternative;
  name.addEventListener('input', () => {
    memory.alternative = name.value;
  });
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const form = element(
    document,
    'form',
    { class: 'compare-keep' },
    element(document, 'label', { for: 'alternative-name' }, 'Name of what is kept'),
    name,
    element(document, 'button', { type: 'submit' }, 'Keep the design as it stands'),
    problem,
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    try {
      live.open(keepAlternative(live.state(), name.value));
      problem.textContent = '';
    } catch (error) {
      problem.textContent = (error as Error).message;
    }
  });
  let offered = '';
  /** Offers a free name, unless the person has typed one. */
  const follow = () => {
    const free = freeName(live.state());
    if (name.value === offered || alternativesOf(live.state()).some((one) => one.name === name.value)) {
      name.value = free;
      memory.alternative = '';
    }
    offered = free;
  };
  return { form, follow };
}

function keptRow({ document, live, report }: PageContext, place: number): HTMLElement {
  const { name, inputs } = alternativesOf(live.state())[place]!;
  const today = live.state().inputs;
  const differing = Object.keys(inputs).filter((id) => !Object.is(inputs[id], today[id])).length;
  const differs =
    differing === 0 ? 'as today' : `differs in ${differing} ${differing === 1 ? 'input' : 'inputs'}`;
  const act = (words: string, about: string, run: () => void) => {
    const button = element(
      document,
      'button',
      { type: 'button', class: 'plain', 'aria-label': about },
      words,
    );
    button.addEventListener('click', run);
    return button;
  };
  return element(
    document,
    'p',
    { class: 'compare-row' },
    element(document, 'strong', {}, name),
    ` ${differs} `,
    inChartsBox(document, live, name, report),
    ...(differing === 0
      ? []
      : [act('Take over', `Take over ${name}`, () => live.open(takeAlternative(live.state(), place)))]),
    act('Take out', `Take ${name} out of the list`, () => live.open(forgetAlternative(live.state(), place))),
  );
}

/** Whether charts show a kept design beside today's. */
function inChartsBox(
  document: Document,
  live: PageContext['live'],
  name: string,
  report: PageContext['report'],
): HTMLElement {
  const kept = keptDesigns(live);
  const tick = element(document, 'input', { type: 'checkbox', 'aria-label': `Show ${name} in charts` });
  tick.checked = kept.isShown(name);
  tick.addEventListener('change', () => {
    try {
      kept.show(name, tick.checked);
    } catch (error) {
      tick.checked = false;
      report((error as Error).message);
    }
  });
  return element(document, 'label', { class: 'field-option compare-shown' }, tick, ' show in charts');
}
