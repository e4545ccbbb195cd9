import type { Lecture } from '../../../lib/graph/studies.ts';
import { isShipped } from '../../lectures/allLectures.ts';
import { commandText, type Made, unnamed } from '../../rationale/facts.ts';
import type { PageContext } from '../context.ts';
import { freshId } from '../controls/field.ts';
import { element, setText } from '../element.ts';
import { fileName } from '../figures/exportFigure.ts';
import { createStudyProgress } from '../studies/studyProgress.ts';
import { openPaperWorker } from '../writeUp/openPaperWorker.ts';
import { handOver, type PaperKind, paperKinds } from '../writeUp/paperKinds.ts';
import { startPaper } from '../writeUp/startPaper.ts';
import { designOf } from './lectureAt.ts';

/** The printed copy of a lecture as files, that of the students or the lecturer’s own; once begun it is worked out to its end. */
export function renderPrintedCopy(context: PageContext, lectureNow: () => Lecture): HTMLElement {
  const { document, live } = context;
  const news = element(document, 'p', { class: 'study-news', role: 'status' });
  const withNotes = element(document, 'input', { type: 'checkbox', id: `notes-${freshId()}` });
  let pressed: HTMLElement | undefined;
  let stop = () => {};
  const progress = createStudyProgress(document, () => {
    progress.end();
    setText(news, 'Stopped. No file was written.');
    pressed?.focus();
  });
  const write = async (kind: PaperKind) => {
    setText(news, '');
    stop();
    const [lecture, notes] = [lectureNow(), withNotes.checked];
    const { revision: _, kept: __, ...design } = designOf(lecture, live.state());
    const request = {
      name: 'lecture',
      lecture,
      design,
      notes,
      made: madeOf(lecture, design.name, notes),
    } as const;
    const study = startPaper(request, openPaperWorker, (part) => progress.told(part));
    stop = study.stop;
    progress.begin(study, 'Working the lecture out');
    const outcome = await study.answer;
    if ('problem' in outcome && outcome.problem.kind === 'stopped') return;
    progress.end();
    if ('problem' in outcome) return setText(news, outcome.problem.message);
    try {
      setText(news, 'Drawing and packing …');
      const title = `${lecture.title}${notes ? ' with notes' : ''}`;
      setText(news, `Saved as ${await handOver(outcome.value, kind, title, document)}.`);
    } catch (error) {
      setText(news, `The file could not be made: ${(error as Error).message}`);
    }
  };
  const buttons = paperKinds
    .filter(({ ending }) => ending !== 'bib')
    .map((kind) => {
      const button = element(
        document,
        'button',
        { type: 'button', class: 'study-go', 'aria-label': `Printed copy: ${kind.words}` },
        kind.words,
      );
      button.addEventListener('click', () => {
        pressed = button;
        void write(kind);
      });
      return button;
    });
  const notes = element(document, 'label', { for: withNotes.id }, 'with the lecturer’s notes');
  return element(
    document,
    'details',
    { class: 'printed-copy' },
    element(document, 'summary', {}, 'Printed copy'),
    element(document, 'p', {}, withNotes, ' ', notes),
    element(
      document,
      'div',
      { class: 'write-up-files', role: 'group', 'aria-label': 'Printed copy' },
      ...buttons,
    ),
    progress.element,
    news,
  );
}

/** What the copy says of itself; the file is the one that the page saves the design as. */
function madeOf({ id, title }: Lecture, called = '', notes: boolean): Made {
  const named = called.trim() !== '';
  const now = new Date();
  const here = new Date(now.getTime() - now.getTimezoneOffset() * 60_000);
  const file = isShipped(id) ? [] : [fileName(named ? called : 'design', 'json')];
  return {
    name: named ? called : isShipped(id) ? title : unnamed,
    date: here.toISOString().slice(0, 10),
    command: commandText(['stepwell', 'lecture', ...file, id, ...(notes ? ['--notes'] : [])]),
  };
}
