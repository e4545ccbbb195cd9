import { documents } from '../../contents.ts';
import { shippedLectures } from '../../lectures/shipped.ts';
import {
  documentOf,
  lessonsAt,
  pathMinutes,
  pathsThrough,
  type ReadingPath,
  type Stop,
  timeSaid,
} from '../../reading/paths.ts';
import type { PageContext } from '../context.ts';
import { element } from '../element.ts';

/** The ways through all documents, with what this browser remembers of them. */
export function renderPaths({ document, read }: PageContext): HTMLElement {
  const holder = element(document, 'div', { class: 'paths' });
  const paths = pathsThrough(documents);
  const show = () => {
    const begun = paths.some(({ stops }) => stops.some(({ to }) => read?.has(documentOf(to))));
    const forget = element(document, 'button', { type: 'button', class: 'plain' }, 'Forget what I have read');
    forget.addEventListener('click', () => {
      read?.forget();
      show();
      holder.querySelector('h2')!.focus();
    });
    const line = begun
      ? ['What you have opened is marked, in this browser only. ', forget]
      : ['What you open will be marked here, in this browser only.'];
    holder.replaceChildren(
      ...paths.map((path) => pathPart(document, path, (to) => read?.has(documentOf(to)) ?? false)),
      element(document, 'p', { class: 'paths-memory' }, ...line),
    );
  };
  show();
  return holder;
}

function pathPart(document: Document, path: ReadingPath, isRead: (to: string) => boolean): HTMLElement {
  const { id, title, about, stops } = path;
  const done = stops.filter(({ to }) => isRead(to)).length;
  const next = stops.find(({ to }) => !isRead(to));
  const progress = done === 0 ? '' : `, ${done} of ${stops.length} opened`;
  const heading = element(document, 'h2', { id: `path-${id}`, tabindex: -1 }, title);
  return element(
    document,
    'section',
    { class: 'path', 'data-within': id, 'aria-labelledby': heading.id },
    heading,
    element(
      document,
      'p',
      {},
      `${about} `,
      element(document, 'span', { class: 'path-time' }, `In all ${timeSaid(pathMinutes(path))}${progress}.`),
    ),
    element(
      document,
      'ol',
      { class: 'path-stops' },
      ...stops.map((stop) => stopItem(document, stop, isRead(stop.to), done > 0 && stop === next)),
    ),
  );
}

function stopItem(document: Document, stop: Stop, read: boolean, next: boolean): HTMLElement {
  const { to, why, minutes } = stop;
  const [name = '', within] = to.split('/');
  const { title } = documents.find(({ id }) => id === name)!;
  const lecture = name === 'lectures' && shippedLectures.find(({ id }) => id === within);
  const mark = read ? 'opened' : next ? 'go on here' : '';
  return element(
    document,
    'li',
    { 'data-read': read, 'data-next': next },
    element(
      document,
      'p',
      { class: 'path-name' },
      element(document, 'a', { href: `#${to}` }, lecture ? `${title}: ${lecture.title}` : title),
      ' ',
      element(document, 'small', {}, `${minutes} min${mark === '' ? '' : ` · ${mark}`}`),
    ),
    element(document, 'p', {}, why),
    ...lessonLine(document, stop),
  );
}

/** The lessons that belong to a page, each with its time. */
function lessonLine(document: Document, stop: Stop): HTMLElement[] {
  const taken = lessonsAt(stop);
  if (taken.length === 0) return [];
  const links = taken.flatMap(({ id, title, minutes }, i) => [
    i === 0 ? '' : ', ',
    element(document, 'a', { href: `#lessons/${id}` }, title),
    ` (${minutes} min)`,
  ]);
  const begin = taken.length === 1 ? 'Then the lesson ' : 'Then the lessons ';
  return [element(document, 'p', { class: 'path-lessons' }, begin, ...links, '.')];
}
