import { longestTitle } from '../../../lib/studies/freshNames.ts';
import {
  describeLecture,
  lectureOf,
  lecturesOf,
  longestAbout,
  takeOutLecture,
} from '../../../lib/studies/lectures.ts';
import { lectureSize } from '../../lectures/lectureWords.ts';
import type { PageContext, RenderBlock } from '../context.ts';
import { element, setAttributes, setText } from '../element.ts';
import { textInput, wordButton } from '../studies/own/labelledField.ts';
import { createGiveLinks } from './giveLinks.ts';
import { createLectureList } from './lectureList.ts';
import { lectureMemory } from './lectureMemory.ts';
import { createKeptField, type KeptField } from './making/keptField.ts';
import { createMaking, type MakingView } from './making/makingView.ts';

/** One lecture that is arranged, by its id. */
interface Arranged {
  readonly id: string;
  readonly element: HTMLElement;
  readonly making: MakingView;
  readonly fields: readonly KeptField[];
  refresh(): void;
}

/** The lectures: their list, or the one that is arranged. */
export function renderLectures(
  context: PageContext,
  stops: (() => void)[],
  renderBlock: RenderBlock,
): HTMLElement {
  const { document, live } = context;
  const memory = lectureMemory(live, document.defaultView!);
  // An address that names a lecture leads to it in the list.
  if (context.within !== '') memory.arranging = undefined;
  const status = element(document, 'p', { class: 'own-said', role: 'status' });
  const said = (text: string) => setText(status, text);
  const place = element(document, 'div');
  let arranged: Arranged | undefined;
  const leave = () => {
    if (!finish()) return;
    const id = memory.arranging!;
    memory.arranging = undefined;
    said('');
    follow();
    list.focus(id);
  };
  const takeOut = (id: string) => {
    const { title } = lectureOf(live.state(), id);
    memory.arranging = undefined;
    live.open(takeOutLecture(live.state(), id));
    said(`‘${title}’ has been taken out. Undo brings it back.`);
    list.focus('');
  };
  const finish = () =>
    !arranged || [...arranged.fields.map((field) => field.take()), arranged.making.finish()].every(Boolean);
  const list = createLectureList(
    context,
    memory,
    (id) => {
      if (memory.arranging !== id) memory.step = undefined;
      memory.arranging = id;
      said('');
      follow();
      arranged?.element.querySelector<HTMLElement>('h2')?.focus();
    },
    said,
  );
  const closeArranged = () => {
    for (const field of arranged?.fields ?? []) field.take();
    arranged?.making.close();
    arranged = undefined;
  };
  const follow = () => {
    const id = lecturesOf(live.state()).find((one) => one.id === memory.arranging)?.id;
    if (arranged && arranged.id !== id) closeArranged();
    if (id !== undefined) arranged ??= createArranged(context, id, renderBlock, said, { leave, takeOut });
    list.refresh();
    arranged?.refresh();
    const shown = arranged?.element ?? list.element;
    if (place.firstChild !== shown) place.replaceChildren(shown);
  };
  stops.push(
    live.onState(() => {
      // What was said belongs to the design as it was then; whoever changes it here says so afterwards.
      said('');
      follow();
    }),
    closeArranged,
  );
  follow();
  return element(document, 'section', { class: 'lectures', 'aria-label': 'All lectures' }, status, place);
}

function createArranged(
  context: PageContext,
  id: string,
  renderBlock: RenderBlock,
  said: (text: string) => void,
  { leave, takeOut }: { leave(): void; takeOut(id: string): void },
): Arranged {
  const { document, live } = context;
  const memory = lectureMemory(live, document.defaultView!);
  const held = () => lectureOf(live.state(), id);
  const heading = element(document, 'h2', { class: 'own-page-title', tabindex: -1 });
  const size = element(document, 'p', { class: 'own-small' });
  const put = (title: string, about: string) => live.open(describeLecture(live.state(), id, title, about));
  const fields = [
    createKeptField(document, memory.drafts, {
      key: `${id}/title`,
      label: 'Title of this lecture',
      control: textInput(document, longestTitle),
      value: () => held().title,
      put: (text) => put(text, held().about ?? ''),
    }),
    createKeptField(document, memory.drafts, {
      key: `${id}/about`,
      label: 'What it is about',
      control: textInput(document, longestAbout),
      help: 'May stay empty.',
      value: () => held().about ?? '',
      put: (text) => put(held().title, text),
    }),
  ];
  const give = createGiveLinks(context, id);
  const making = createMaking(context, id, memory, renderBlock, said);
  const article = element(
    document,
    'article',
    { class: 'lecture-arranged' },
    element(document, 'div', { class: 'own-buttons' }, wordButton(document, 'All lectures', leave)),
    heading,
    size,
    element(
      document,
      'div',
      { class: 'own-buttons own-page-tools' },
      ...give.elements,
      wordButton(document, 'Take the lecture out', () => takeOut(id)),
    ),
    element(document, 'div', { class: 'lecture-head' }, ...fields.map((field) => field.element)),
    making.element,
  );
  return {
    id,
    element: article,
    making,
    fields,
    refresh() {
      const lecture = held();
      setText(heading, lecture.title);
      setText(size, `${lectureSize(lecture)}.`);
      setAttributes(article, { 'aria-label': lecture.title });
      give.refresh(lecture);
      for (const field of fields) field.refresh();
      making.refresh(lecture);
    },
  };
}
