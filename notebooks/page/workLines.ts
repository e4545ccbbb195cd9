import type { Quantity } from '../../lib/graph/quantity.ts';
import { requirementsOf } from '../../lib/studies/requirements.ts';
import { blockQuantities } from '../blockQuantities.ts';
import { conditionHolds } from '../condition.ts';
import type { Block } from '../document.ts';
import type { PageContext } from './context.ts';
import { element, setAttributes, setText } from './element.ts';
import { isTold, longWork, type Work } from './heavy/work.ts';
import { type WorkWords, workNews, workWords } from './workWords.ts';

/** A block that may rest on long work. */
export interface WorkPlace {
  readonly element: HTMLElement;
  readonly shows: readonly Quantity[];
  /** It is hidden while one of these has no value; the work on that is told of in its place. */
  readonly needs: readonly Quantity[];
  /** False while the design leaves the block out. */
  applies(): boolean;
}

/** The place of a block that is shown. */
export function workPlace({ live }: PageContext, element: HTMLElement, block: Block): WorkPlace {
  const { when, needs = [] } = block;
  const applies = () => when === undefined || conditionHolds(when, live.state().inputs);
  // What is asked of the design changes while its list is shown.
  const asked = () => requirementsOf(live.state()).flatMap(({ id }) => live.graph.quantities.get(id) ?? []);
  const isList = block.kind === 'tool' && block.tool === 'requirements';
  const shown = blockQuantities(block);
  return {
    element,
    get shows() {
      return isList ? asked() : shown;
    },
    needs,
    applies,
  };
}

/**
 * Above each block that rests on work of more than a second, a line with how far it is and how to stop it; after a stop,
 * how to go on. Short work shows nothing, so nothing jumps. Returns what says it aloud, once for the whole document.
 */
export function renderWork(
  context: PageContext,
  places: readonly WorkPlace[],
  stops: (() => void)[],
): HTMLElement {
  const { document, live } = context;
  const news = element(document, 'p', { class: 'off-screen', role: 'status' });
  const lines = new Map<WorkPlace, WorkLine>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let before: readonly Work[] = [];
  const update = () => {
    clearTimeout(timer);
    const now = performance.now();
    const under = live.works();
    const told = under.filter((work) => isTold(work, now));
    const soon = under
      .filter((work) => !told.includes(work))
      .flatMap(({ since }) => (since === undefined ? [] : [since + longWork - now]));
    if (soon.length > 0) timer = setTimeout(update, Math.min(...soon) + 1);
    const heard = workNews(before, told, under);
    if (heard !== '') setText(news, heard);
    before = told;
    if (told.length === 0 && lines.size === 0) return;
    const shown = worksToShow(context, places, now);
    for (const place of places) showLine(context, lines, place, shown.get(place) ?? []);
  };
  stops.push(live.onWork(update), live.onState(update), () => clearTimeout(timer));
  update();
  return news;
}

/** Work to tell of at each place. A hidden block says nothing where the one before it has said the same. */
function worksToShow(
  { live }: PageContext,
  places: readonly WorkPlace[],
  now: number,
): ReadonlyMap<WorkPlace, readonly Work[]> {
  const shown = new Map<WorkPlace, readonly Work[]>();
  let said = '';
  for (const place of places.filter((one) => one.applies())) {
    const { hidden } = place.element;
    const asked = hidden ? place.needs : place.shows;
    const works = live.works(asked.map(({ id }) => id)).filter((work) => isTold(work, now));
    const key = works.map(({ id }) => id).join(' ');
    // A block whose sentences have nothing to say takes no room, and its work none either.
    const isThere = hidden ? key !== said : place.element.getClientRects().length > 0;
    if (works.length > 0 && isThere) shown.set(place, works);
    if (isThere) said = key;
  }
  return shown;
}

function showLine(
  context: PageContext,
  lines: Map<WorkPlace, WorkLine>,
  place: WorkPlace,
  works: readonly Work[],
): void {
  const line = lines.get(place);
  if (works.length > 0) {
    const shown = line ?? createLine(context);
    if (!line) place.element.before(shown.element);
    lines.set(place, shown);
    shown.update(workWords(works));
    return;
  }
  if (!line) return;
  lines.delete(place);
  const focused = line.element.contains(context.document.activeElement);
  line.element.remove();
  if (!focused) return;
  // Whoever pressed the button goes on at what it was about.
  place.element.tabIndex = -1;
  place.element.focus({ preventScroll: true });
}

interface WorkLine {
  readonly element: HTMLElement;
  update(words: WorkWords): void;
}

function createLine({ document, live }: PageContext): WorkLine {
  const text = element(document, 'span', {});
  const button = element(document, 'button', { type: 'button', class: 'plain' });
  const line = element(document, 'div', { class: 'work-line' }, text, button);
  let acts: WorkWords['acts'] | undefined;
  button.addEventListener('click', () => {
    for (const id of acts?.on ?? []) live[acts!.what](id);
  });
  return {
    element: line,
    update(words) {
      acts = words.acts;
      setText(text, words.text);
      setText(button, words.button);
      setAttributes(button, { 'aria-label': words.label });
      setAttributes(line, {
        'data-part': words.part !== undefined,
        'data-stopped': words.acts.what === 'workOut',
      });
      line.style.setProperty('--part', `${words.part ?? 0}`);
    },
  };
}
