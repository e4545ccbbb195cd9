import type { Outcome } from '../../../lib/graph/outcome.ts';
import type { Paper } from '../../paper/paper.ts';
import { unnamed } from '../../rationale/facts.ts';
import { type PaperName, paperNames } from '../../rationale/writePapers.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import type { Study } from '../studies/desk/studyDesk.ts';
import { createStudyProgress } from '../studies/studyProgress.ts';
import { renderOutline } from './outlineView.ts';
import { handOver, type PaperKind, paperKinds } from './paperKinds.ts';
import { makePaper } from './paperMaker.ts';
import { createPreview } from './previewView.ts';
import { renderUses } from './usesView.ts';

/** What will be in the write-up, its preview, and the files it can be handed over as. */
export function renderWriteUp(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const news = element(document, 'p', { class: 'study-news', role: 'status' });
  let pressed: HTMLElement | undefined;
  let underWay: Study<Paper> | undefined;
  stops.push(() => underWay?.stop());
  const progress = createStudyProgress(document, () => {
    progress.end();
    setText(news, 'Stopped. No file was written.');
    pressed?.focus();
  });
  const preview = createPreview(context, stops);

  /** Works a paper out with progress; what went wrong is said. */
  const made = async (name: PaperName): Promise<Paper | undefined> => {
    setText(news, '');
    const outcome: Outcome<Paper> = await makePaper(live, name, {
      begin: (study) => {
        underWay?.stop();
        underWay = study;
        progress.begin(study, 'Working it out');
      },
      told: (part) => progress.told(part),
    });
    if ('problem' in outcome && outcome.problem.kind === 'stopped') return undefined;
    progress.end();
    if ('value' in outcome) return outcome.value;
    setText(news, outcome.problem.message);
    return undefined;
  };
  const write = async (name: PaperName, kind: PaperKind) => {
    const paper = await made(name);
    if (!paper) return;
    const { name: called = '' } = live.state();
    const title = `${called.trim() === '' ? unnamed : called} ${paperNames[name]}`;
    try {
      setText(news, 'Drawing and packing …');
      setText(news, `Saved as ${await handOver(paper, kind, title, document)}.`);
    } catch (error) {
      setText(news, `The file could not be made: ${(error as Error).message}`);
    }
  };
  const button = (words: string, label: string, act: () => Promise<void>) => {
    const one = element(
      document,
      'button',
      { type: 'button', class: 'study-go', 'aria-label': label },
      words,
    );
    one.addEventListener('click', () => {
      pressed = one;
      void act();
    });
    return one;
  };
  const groups = (Object.keys(paperNames) as PaperName[]).map((name) =>
    element(
      document,
      'div',
      { class: 'write-up-files', role: 'group', 'aria-label': paperNames[name] },
      element(document, 'h3', {}, paperNames[name]),
      button('Show it here', `Show the ${paperNames[name].toLowerCase()} here`, async () => {
        const paper = await made(name);
        if (paper) preview.show(paper);
      }),
      // The sheet cites nothing.
      ...paperKinds
        .filter(({ ending }) => name === 'rationale' || ending !== 'bib')
        .map((kind) => button(kind.words, `${paperNames[name]}: ${kind.words}`, () => write(name, kind))),
    ),
  );
  return element(
    document,
    'section',
    { class: 'study-tool write-up', 'aria-label': 'Write-up' },
    renderUses(context, stops),
    renderOutline(context, stops),
    ...groups,
    progress.element,
    news,
    preview.element,
  );
}
