import { readSolveForm } from '../../../solveForm.ts';
import { findNamed, isNumberResult, labelled } from '../../../studyNames.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { studiesUntil } from '../desk/studiesUntil.ts';
import { createStudyProgress } from '../studyProgress.ts';
import { onAsked, toolMemory } from '../toolMemory.ts';
import { createProposal } from './proposalView.ts';
import { createSolveForm } from './solveFormView.ts';

/** A pause of the hand after which today's values are worked out, ms. */
const restsFor = 300;
/** Inputs that are offered, the strongest first. */
const mostOffered = 6;

/** Finds inputs that give what is wanted, and proposes them. */
export function renderSolve(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const memory = toolMemory(live);
  const news = element(document, 'p', { class: 'study-news', role: 'status' });
  const startStudy = studiesUntil(stops);
  const own = () => live.state().studies?.ownLines ?? [];
  const wanted = () => {
    const names = labelled([...live.graph.quantities.values()].filter(isNumberResult));
    return memory.solve.wants.flatMap(({ search }) => findNamed(names, search) ?? []);
  };
  const showToday = () => {
    const results = wanted();
    if (results.length === 0) return form.suggest('', []);
    const { inputs } = live.state();
    const ids = results.map(({ id }) => id);
    const values = startStudy({ kind: 'evaluate', inputs, ids, own: own() }, { tool: 'solve-today' });
    const [first] = results;
    void values.answer.then((outcome) => {
      if ('value' in outcome) form.today(outcome.value);
      if ('value' in outcome) offer(first!.id, first!.name);
    });
  };
  const offer = (id: string, name: string) => {
    const { inputs } = live.state();
    const asked = startStudy({ kind: 'influence', inputs, id, own: own() }, { tool: 'solve-influence' });
    void asked.answer.then((outcome) => {
      const found = 'value' in outcome ? outcome.value.slice(0, mostOffered) : [];
      if (!('problem' in outcome) || outcome.problem.kind !== 'stopped')
        form.suggest(
          name,
          found.map((one) => one.id),
        );
    });
  };
  const look = () => {
    setText(news, '');
    const read = readSolveForm(live.graph, memory.solve, context.ownParts.value());
    if (read.faults) {
      if (memory.proposal) setText(news, 'What stands below was found before, for something else.');
      return form.fault(read.faults);
    }
    const { inputs } = live.state();
    const { request } = read;
    const study = startStudy(
      { kind: 'solve', inputs, request, own: own() },
      { progressed: (part) => progress.told(part) },
    );
    progress.begin(study, 'Looking for it');
    void study.answer.then((outcome) => {
      if ('problem' in outcome && outcome.problem.kind === 'stopped') return;
      progress.end();
      if ('problem' in outcome)
        return form.fault([{ place: 'form', index: 0, message: outcome.problem.message }]);
      memory.proposal = { inputs, request, result: outcome.value, chosen: 0 };
      proposal.show();
    });
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const rest = () => {
    clearTimeout(timer);
    timer = setTimeout(showToday, restsFor);
  };
  const form = createSolveForm(context, stops, { changed: rest, submitted: look });
  const go = () => form.element.querySelector<HTMLElement>('.study-go')!;
  const progress = createStudyProgress(document, () => {
    progress.end();
    setText(news, 'Stopped. Nothing has been changed.');
    go().focus();
  });
  const proposal = createProposal(context, stops, {
    again: look,
    left: (words) => {
      setText(news, words);
      go().focus();
    },
  });
  const followed = live.onState(() => {
    proposal.follow();
    form.follow();
    rest();
  });
  stops.push(followed as () => void, () => clearTimeout(timer));
  proposal.show();
  if (wanted().length > 0) rest();
  // The page puts the focus on its heading first.
  stops.push(onAsked(live, 'solve', (id) => setTimeout(() => form.want(id))));
  return element(
    document,
    'section',
    { class: 'study-tool', 'aria-label': 'Find inputs' },
    form.element,
    progress.element,
    news,
    proposal.element,
  );
}
