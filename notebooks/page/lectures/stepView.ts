import type { Graph } from '../../../lib/graph/graph.ts';
import type { LectureStep } from '../../../lib/graph/studies.ts';
import { type Giving, isWithheld, roomOf } from '../../lectures/giving.ts';
import { isChart, stepContents, withheldContent } from '../../lectures/lectureContents.ts';
import type { OwnContent } from '../../ownBlocks.ts';
import type { PageContext } from '../context.ts';
import { freshId } from '../controls/field.ts';
import { renderBlock } from '../documentView.ts';
import { element } from '../element.ts';
import { createPiece, type PieceView } from '../studies/own/pieceView.ts';
import { renderWork } from '../workLines.ts';
import { createRoomQuestion } from './roomQuestion.ts';

/** A step as the room sees it, live until it is closed. */
export interface StepView {
  readonly element: HTMLElement;
  /** What is to be read, and what is to be looked at beside it; alone where a step has only one of them. */
  readonly words: HTMLElement | undefined;
  readonly charts: HTMLElement | undefined;
  /** Follows what was revealed and chosen. */
  show(giving: Giving): void;
  close(): void;
}

interface Place {
  readonly holder: HTMLElement;
  readonly content: OwnContent;
  view: PieceView | undefined;
  withheld: boolean | undefined;
  /** What stands there is the axes of a chart. */
  isBare: boolean;
}

/** Draws a step; `chosen` hears of the option that is pressed. */
export function createStep(
  context: PageContext,
  step: LectureStep,
  chosen: (option: number) => void,
): StepView {
  const { document, live } = context;
  const places = placesOf(document, live.graph, step);
  const question = step.ask && createRoomQuestion(context, step.ask, chosen);
  const from = step.ask?.from ?? places.length;
  const read = places.filter(({ content }) => !isChart(content));
  const looked = places.filter(({ content }) => isChart(content));
  const isBeside = looked.length > 0 && (read.length > 0 || question !== undefined);
  const withQuestion = (some: readonly Place[]): HTMLElement[] => {
    const before = some.filter((place) => places.indexOf(place) < from);
    const after = some.filter((place) => !before.includes(place));
    return [...before, ...(question ? [question] : []), ...after].map((one) =>
      'holder' in one ? one.holder : one.element,
    );
  };
  const words = isBeside
    ? element(document, 'div', { class: 'giving-words' }, ...withQuestion(read))
    : undefined;
  const charts = isBeside
    ? element(document, 'div', { class: 'giving-charts' }, ...looked.map(({ holder }) => holder))
    : undefined;
  const body = isBeside
    ? element(document, 'div', { class: 'giving-body giving-beside' }, words!, charts!)
    : element(
        document,
        'div',
        { class: looked.length > 0 ? 'giving-body giving-charts' : 'giving-body' },
        ...withQuestion(places),
      );
  if (question) question.element.style.order = String(2 * from);
  let work: (() => void)[] = [];
  let news: HTMLElement | undefined;
  const tellWork = () => {
    for (const stop of work) stop();
    work = [];
    news?.remove();
    news = renderWork(
      context,
      places.flatMap(({ view }) => view?.place ?? []),
      work,
    );
    body.append(news);
  };
  return {
    element: body,
    words: words ?? (looked.length === 0 ? body : undefined),
    charts: charts ?? (looked.length > 0 ? body : undefined),
    show(giving) {
      question?.show(roomOf(giving));
      const changed = places.map((place, i) => follow(context, place, isWithheld(giving, i)));
      if (changed.includes(true)) tellWork();
    },
    close() {
      for (const stop of work) stop();
      for (const { view } of places) view?.close();
      question?.close();
      body.remove();
    },
  };
}

function placesOf(document: Document, graph: Graph, step: LectureStep): Place[] {
  return stepContents(graph, step, () => `own-${freshId()}`).map((content, i) => {
    const holder = element(document, 'div', { class: 'giving-piece' });
    // Where all stand below each other, words and charts take turns again.
    holder.style.order = String(2 * i + 1);
    return { holder, content, view: undefined, withheld: undefined, isBare: false };
  });
}

/**
 * Draws a piece as it is to be seen now; false where it is seen so already. What is withheld as a whole keeps its room, out
 * of sight of all, so that nothing changes its size or its place when it is shown.
 */
function follow(context: PageContext, place: Place, withheld: boolean): boolean {
  if (place.withheld === withheld) return false;
  const wasWithheld = place.withheld;
  place.withheld = withheld;
  const bare = withheld ? withheldContent(place.content) : undefined;
  if (!place.view || place.isBare || bare) {
    place.view?.close();
    place.view = createPiece(context, bare ?? place.content, renderBlock);
    place.holder.replaceChildren(place.view.element);
  }
  place.isBare = bare !== undefined;
  place.holder.toggleAttribute('data-withheld', withheld);
  place.holder.toggleAttribute('data-unseen', withheld && !bare);
  place.holder.toggleAttribute('data-revealed', wasWithheld === true && !withheld);
  return true;
}
