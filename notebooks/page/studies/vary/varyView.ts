import { findNamed, isNumberResult, labelled } from '../../../studyNames.ts';
import { overOf, readVaryForm, type VaryPlan } from '../../../varyForm.ts';
import { variedTitle } from '../../../varyWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { studiesUntil } from '../desk/studiesUntil.ts';
import { createStudyProgress } from '../studyProgress.ts';
import { onAsked, toolMemory } from '../toolMemory.ts';
import { createVariedView } from './variedView.ts';
import { createVaryForm } from './varyFormView.ts';

/** A pause of the hand after which charts are worked out again, ms. */
const restsFor = 400;

/** Results over one or two inputs, everything else as today. */
export function renderVary(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const memory = toolMemory(live);
  const startStudy = studiesUntil(stops);
  const news = element(document, 'p', { class: 'study-news', role: 'status' });
  /** Said aloud alone: the chart shows it. */
  const drawn = element(document, 'p', { class: 'off-screen', role: 'status' });
  const own = () => live.state().studies?.ownLines ?? [];
  const shown = createVariedView(context, stops);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const rank = () => {
    const names = labelled([...live.graph.quantities.values()].filter(isNumberResult));
    const search = memory.vary.results.find((row) => row.search.trim() !== '')?.search ?? '';
    const result = findNamed(names, search);
    if (!result) return form.influences.say('');
    const { inputs } = live.state();
    const study = startStudy(
      { kind: 'influence', inputs, id: result.id, own: own() },
      { tool: 'vary-influence' },
    );
    void study.answer.then((outcome) => {
      if ('value' in outcome) form.influences.show(result.name, outcome.value);
      else if (outcome.problem.kind !== 'stopped') form.influences.say(outcome.problem.message);
    });
  };
  const work = (plan: VaryPlan) => {
    setText(news, '');
    setText(drawn, '');
    const { inputs } = live.state();
    const ids = plan.results.map(({ id }) => id);
    const study = startStudy(
      { kind: 'vary', inputs, over: overOf(plan), ids, own: own() },
      { progressed: (part) => progress.told(part) },
    );
    progress.begin(study, 'Working it out');
    const today = startStudy({ kind: 'evaluate', inputs, ids, own: own() }, { tool: 'vary-today' });
    void Promise.all([study.answer, today.answer]).then(([found, now]) => {
      if ('problem' in found && found.problem.kind === 'stopped') return;
      progress.end();
      if ('problem' in found) return fail(found.problem.message);
      const names = plan.results.map(({ name }) => name);
      memory.varied = { plan, columns: found.value, inputs, today: 'value' in now ? now.value : {} };
      shown.show(memory.varied);
      shown.element.removeAttribute('data-older');
      setText(drawn, `${variedTitle(names, plan.axes)} is drawn.`);
    });
  };
  const fail = (message: string) => form.fault([{ place: 'form', index: 0, message }]);
  const ask = () => {
    const read = readVaryForm(live.graph, memory.vary);
    if (read.faults) {
      setText(drawn, '');
      return form.fault(read.faults);
    }
    work(read.plan);
  };
  const follow = () => {
    clearTimeout(timer);
    form.follow();
    const { varied } = memory;
    const { inputs } = live.state();
    const isOlder = varied && Object.keys(inputs).some((id) => !Object.is(inputs[id], varied.inputs[id]));
    shown.element.toggleAttribute('data-older', isOlder ?? false);
    timer = setTimeout(() => {
      rank();
      if (isOlder) work(varied.plan);
    }, restsFor);
  };
  const form = createVaryForm(context, { chosen: rank, submitted: ask });
  const progress = createStudyProgress(document, () => {
    progress.end();
    setText(news, memory.varied ? 'Stopped. What was drawn before stays.' : 'Stopped. Nothing is drawn.');
    form.element.querySelector<HTMLElement>('.study-go')!.focus();
  });
  stops.push(live.onState(follow) as () => void, () => clearTimeout(timer));
  if (memory.varied) shown.show(memory.varied);
  follow();
  // The page puts the focus on its heading first.
  stops.push(onAsked(live, 'vary', (id) => setTimeout(() => form.look(id))));
  return element(
    document,
    'section',
    { class: 'study-tool', 'aria-label': 'Vary' },
    form.element,
    progress.element,
    news,
    drawn,
    shown.element,
  );
}
