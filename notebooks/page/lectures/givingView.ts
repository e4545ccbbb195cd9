import { askedNext } from '../../lectures/askedNext.ts';
import {
  beginTime,
  choose,
  designsOf,
  type Giving,
  goBack,
  goOn,
  goTo,
  keepDesigns,
  leave,
  preparedDesign,
  roomOf,
  stepOf,
  toggleBlank,
  withholdAgain,
} from '../../lectures/giving.ts';
import type { GivingAct } from '../../lectures/givingKeys.ts';
import { stepHeard } from '../../lectures/givingWords.ts';
import { stepSaid } from '../../stepWords.ts';
import type { PageContext } from '../context.ts';
import { createDrafts } from '../controls/drafts.ts';
import type { DocumentView } from '../documentView.ts';
import { element, setText } from '../element.ts';
import { createTracePanel } from '../trace.ts';
import { createFitting } from './fitSlide.ts';
import { createFoot } from './givingFoot.ts';
import { recalled, remember } from './givingMemory.ts';
import { type LectureAt, lecturesDocument, stepAddress } from './lectureAt.ts';
import { lectureLive } from './lectureLive.ts';
import { createLecturerPages } from './lecturerWindow.ts';
import { takeKeys } from './pressedKeys.ts';
import { stepAhead } from './stepAhead.ts';
import { createStep, type StepView } from './stepView.ts';
import { keepAwake, toggleScreen } from './wholeScreen.ts';

/** A time after which a step is looked at, ms: who leafs through does not wait for the charts of each. */
const restsFor = 600;
/** What is said lies over the step, and goes once it has been read, ms. */
const readFor = 12_000;

/** A lecture as it is given: the whole page, step by step. */
export interface GivingView extends DocumentView {
  /** Goes to the step that an address names; false where that is one of another lecture. */
  follow(at: LectureAt): boolean;
}

/** Shows a lecture at a step, over a design of its own; the open one stays as it is. */
export function renderGiving(page: PageContext, at: LectureAt): GivingView {
  const { document } = page;
  const window = document.defaultView!;
  const live = lectureLive();
  const stops: (() => void)[] = [];
  const news = element(document, 'p', { class: 'giving-news', role: 'status' });
  let saying: ReturnType<typeof setTimeout> | undefined;
  const say = (text: string) => {
    clearTimeout(saying);
    setText(news, text);
    if (text !== '') saying = setTimeout(() => setText(news, ''), readFor);
  };
  const fitting = createFitting(window);
  const { study: _, result: __, ...rest } = page;
  const context: PageContext = {
    ...rest,
    live,
    within: '',
    drafts: createDrafts(live),
    report: say,
    frames: fitting.frames,
  };
  const trace = createTracePanel(context, () => undefined);
  context.open = trace.open;

  const title = element(document, 'h1', { tabindex: -1 });
  const problem = element(document, 'p', { class: 'problem' });
  const slide = element(document, 'div', { class: 'giving-slide' }, title, problem);
  const notes = element(document, 'section', {
    class: 'giving-notes',
    hidden: true,
    'aria-label': 'Lecturer’s page',
  });
  const dark = element(document, 'div', { class: 'giving-blank', hidden: true });
  const heard = element(document, 'p', { class: 'off-screen', role: 'status' });
  const main = element(document, 'main', { class: 'giving', id: 'giving' });
  const start = recalled(window, at, Date.now());
  let { giving } = start;
  let view: StepView | undefined;
  let shown: Giving | undefined;
  let resting: ReturnType<typeof setTimeout> | undefined;

  const isPrepared = () => {
    const { inputs } = preparedDesign(live.graph, at.design, stepOf(giving)).design;
    const now = live.state().inputs;
    return Object.keys(inputs).every((id) => Object.is(inputs[id], now[id]));
  };
  const foot = createFoot(document, take);
  const asked = (now: Giving) => askedNext(live.graph, at.design, now);
  main.append(slide, notes, news, heard, foot.element, foot.help, trace.element, dark);
  const pages = createLecturerPages(context, notes, { take, asked }, say);
  fitting.keep({ main, foot: foot.element, step: () => view }, stops);

  /** Opens the step that is shown now, with its design as it was left. */
  const openStep = () => {
    view?.close();
    trace.close();
    say('');
    const step = stepOf(giving)!;
    setText(problem, preparedDesign(live.graph, at.design, step).problem ?? '');
    live.resume(designsOf(live.graph, at.design, giving));
    setText(title, step.title);
    view = createStep(context, step, (option) => take({ act: 'choose', option }));
    slide.append(view.element);
    document.title = `${step.title} · ${giving.lecture.title}`;
    window.history.replaceState(window.history.state, '', stepAddress(giving.lecture, giving.place));
    window.scrollTo(0, 0);
  };
  const show = () => {
    const before = shown;
    shown = giving;
    const isOther = before === undefined || stepOf(before) !== stepOf(giving);
    if (isOther) openStep();
    view!.show(giving);
    dark.hidden = !giving.blank;
    foot.show(giving, isPrepared());
    pages.show(giving);
    pages.tick(giving, new Date());
    const isRedrawn = isOther || roomOf(before).revealed !== roomOf(giving).revealed;
    if (isRedrawn) fitting.again();
    if (!isOther) {
      if (isRedrawn && roomOf(giving).revealed) setText(heard, 'What was withheld is shown.');
      return;
    }
    setText(heard, stepHeard(giving));
    title.focus({ preventScroll: true });
    ahead();
  };
  /** Works the charts of the next step out while this one is looked at. */
  const ahead = () => {
    clearTimeout(resting);
    resting = setTimeout(() => {
      giving = stepAhead(live.graph, at.design, giving);
    }, restsFor);
  };
  /** What was moved in a step stays with it, before another takes the design. */
  const current = () => keepDesigns(giving, live.history());
  const become = (change: (now: Giving) => Giving) => {
    giving = change(current());
    show();
  };
  const travel = (step: () => void, word: string, none: string) => {
    const before = live.state();
    step();
    const now = live.state();
    say(now === before ? none : `${word}: ${stepSaid(live.graph, before, now)}.`);
  };
  const acts: Readonly<Record<Exclude<GivingAct['act'], 'choose'>, () => void>> = {
    on: () => become(goOn),
    back: () => become(goBack),
    first: () => become((now) => goTo(now, 0)),
    last: () => become((now) => goTo(now, now.lecture.steps.length - 1)),
    blank: () => become(toggleBlank),
    withhold: () => become(withholdAgain),
    time: () => {
      become((now) => beginTime(now, Date.now()));
      say('The time begins anew.');
    },
    prepared: () =>
      travel(
        () => live.open(preparedDesign(live.graph, at.design, stepOf(giving)).design),
        'As prepared again',
        'Everything is as it was prepared.',
      ),
    undo: () => travel(live.undo, 'Taken back', 'Nothing was moved in this step.'),
    redo: () => travel(live.redo, 'Done again', 'There is nothing to do again.'),
    notes: () => pages.toggle(giving),
    help: foot.toggleHelp,
    screen: () => void toggleScreen(document),
    leave() {
      if (!foot.help.hidden) foot.toggleHelp();
      else if (!trace.element.hidden) trace.close();
      else if (giving.blank) become(toggleBlank);
      else window.location.hash = lecturesDocument;
    },
  };
  function take(act: GivingAct): void {
    if (act.act === 'choose') become((now) => choose(now, act.option));
    else acts[act.act]();
  }

  stops.push(
    takeKeys(window, take, context.drafts),
    keepAwake(document),
    live.onState(() => {
      fitting.moving();
      foot.show(giving, isPrepared());
    }),
    pages.close,
  );
  let kept: unknown;
  const keep = () => {
    const now = current();
    if (now === kept) return;
    giving = kept = now;
    remember(window, now, at.design, pages.isOpen());
  };
  const clock = setInterval(() => {
    pages.tick(giving, new Date());
    keep();
  }, 1000);
  const hide = () => {
    remember(window, current(), at.design, pages.isOpen());
    pages.close();
  };
  window.addEventListener('pagehide', hide);
  document.documentElement.setAttribute('data-giving', '');
  stops.push(() => {
    clearInterval(clock);
    clearTimeout(resting);
    clearTimeout(saying);
    window.removeEventListener('pagehide', hide);
    document.documentElement.removeAttribute('data-giving');
  });
  // Sizes are measured, and the focus is taken, once it stands on the page.
  queueMicrotask(() => {
    fitting.again();
    title.focus({ preventScroll: true });
  });
  show();
  if (start.beside)
    say('The page was loaded again, and the lecture is as it was: press N for the lecturer’s page again.');
  return {
    element: main,
    follow(next) {
      if (next.lecture !== at.lecture || next.design !== at.design) return false;
      become((now) => goTo(now, next.place));
      return true;
    },
    close() {
      remember(window, leave(current(), Date.now()), at.design);
      for (const stop of stops.reverse()) stop();
      view?.close();
      trace.close();
      main.remove();
    },
  };
}
