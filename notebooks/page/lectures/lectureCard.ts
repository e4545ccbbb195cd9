import type { Lecture } from '../../../lib/graph/studies.ts';
import { writeLink } from '../../keeping/designLink.ts';
import { lectureSize } from '../../lectures/lectureWords.ts';
import { studentsDesign } from '../../lectures/studentsDesign.ts';
import type { PageContext } from '../context.ts';
import { element, setAttributes, setText } from '../element.ts';
import { copyAddress } from '../keeping/copyAddress.ts';
import { wordButton } from '../studies/own/labelledField.ts';
import { createGiveLinks } from './giveLinks.ts';
import { renderPrintedCopy } from './printedCopy.ts';

/** A lecture in the list, with what can be done with it. */
export interface LectureCard {
  readonly element: HTMLElement;
  refresh(lecture: Lecture): void;
  /** Brings it into view, its steps open. */
  show(): void;
  focus(): void;
}

/** What is done with a lecture of that id: one that comes with the program is copied, an own one arranged. */
export interface CardActs {
  readonly isShipped: boolean;
  copy(id: string): void;
  arrange(id: string): void;
}

export function createLectureCard(context: PageContext, id: string, acts: CardActs): LectureCard {
  const { document } = context;
  const title = element(document, 'h2', { tabindex: -1 });
  const about = element(document, 'p', { class: 'lecture-about' });
  const size = element(document, 'p', { class: 'own-small' });
  const give = createGiveLinks(context, id);
  const link = element(document, 'input', {
    type: 'text',
    class: 'field-text lecture-link',
    readonly: true,
    hidden: true,
    'aria-label': 'Link for students',
  });
  const said = element(document, 'p', { class: 'own-said', role: 'status' });
  const copyLink = wordButton(document, 'Copy link for students', () => {
    copyStudentsLink(context, id, acts.isShipped, link).then(
      (text) => setText(said, text),
      (error: Error) => setText(said, error.message),
    );
  });
  const change = acts.isShipped
    ? wordButton(document, 'Copy into the design, to change it', () => acts.copy(id))
    : wordButton(document, 'Arrange', () => acts.arrange(id));
  const list = element(document, 'ol');
  const outline = element(
    document,
    'details',
    { class: 'lecture-outline' },
    element(document, 'summary', {}, 'Its steps'),
    list,
  );
  let shown: Lecture | undefined;
  const printed = renderPrintedCopy(context, () => shown!);
  const buttons = element(document, 'div', { class: 'own-buttons' }, ...give.elements, copyLink, change);
  const card = element(
    document,
    'article',
    { class: 'lecture-card' },
    title,
    about,
    size,
    buttons,
    link,
    said,
    outline,
    printed,
  );
  card.dataset['lecture'] = id;
  return {
    element: card,
    refresh(lecture) {
      give.refresh(lecture);
      if (shown === lecture) return;
      shown = lecture;
      setText(title, lecture.title);
      setText(about, lecture.about ?? '');
      setText(size, `${lectureSize(lecture)}.${acts.isShipped ? ' Comes with the program.' : ''}`);
      setText(said, '');
      link.hidden = true;
      setAttributes(card, { 'aria-label': lecture.title });
      for (const button of [copyLink, change])
        setAttributes(button, { 'aria-label': `${button.textContent}: ${lecture.title}` });
      const empty = lecture.steps.length === 0;
      copyLink.hidden = empty;
      outline.hidden = empty;
      printed.hidden = empty;
      list.replaceChildren(
        ...lecture.steps.map((step, i) =>
          element(
            document,
            'li',
            {},
            element(document, 'a', { href: `#lectures/${id}/${i + 1}` }, step.title),
          ),
        ),
      );
    },
    show() {
      outline.open = true;
      title.focus({ preventScroll: true });
      card.scrollIntoView({ block: 'start' });
    },
    focus: () => (give.main() ?? change).focus(),
  };
}

/** What comes with the program comes whole, to whoever opens it. */
const notesForAll =
  'This lecture comes with the program, and so does the lecturer’s page with its answers: everybody can open it.';

/** Copies the address that opens at a lecture: what comes with the program needs no design. */
async function copyStudentsLink(
  { document, live }: PageContext,
  id: string,
  isShipped: boolean,
  field: HTMLInputElement,
): Promise<string> {
  if (isShipped) return `${await copyAddress(document, `lectures/${id}`, field)} ${notesForAll}`;
  const { text, leftOut } = await writeLink(studentsDesign(live.state(), id));
  const said = await copyAddress(document, `lectures/${id}?design=${text}`, field);
  return [said, 'It opens the design at this lecture, without your notes and your other lectures.', leftOut]
    .filter((words) => words !== '')
    .join(' ');
}
