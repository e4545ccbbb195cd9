import type { ToolBlock } from '../../document.ts';
import type { PageContext, RenderBlock } from '../context.ts';
import { renderLectures } from '../lectures/lecturesView.ts';
import { renderLessons } from '../lessons/lessonsView.ts';
import { renderPaths } from '../reading/pathsView.ts';
import { renderFluences } from '../words/fluencesView.ts';
import { renderGlossary } from '../words/glossaryView.ts';
import { renderWidths } from '../words/widthsView.ts';
import { renderOwnWords } from '../writeUp/ownWordsView.ts';
import { renderWriteUp } from '../writeUp/writeUpView.ts';
import { renderRequirements } from './asked/requirementsView.ts';
import { renderChange } from './changeView.ts';
import { renderCompare } from './compareView.ts';
import { renderOwnPages } from './own/ownPagesView.ts';
import { renderOwnQuantities } from './own/ownQuantitiesView.ts';
import { renderSolve } from './solve/solveView.ts';
import { renderVary } from './vary/varyView.ts';

/** The page's part for each tool of a document. */
export const tools: Readonly<
  Record<
    ToolBlock['tool'],
    (context: PageContext, stops: (() => void)[], renderBlock: RenderBlock) => HTMLElement
  >
> = {
  compare: renderCompare,
  change: renderChange,
  requirements: renderRequirements,
  solve: renderSolve,
  vary: renderVary,
  'own-quantities': renderOwnQuantities,
  'own-words': renderOwnWords,
  'write-up': renderWriteUp,
  'own-pages': renderOwnPages,
  lectures: renderLectures,
  lessons: renderLessons,
  words: renderGlossary,
  widths: renderWidths,
  fluences: renderFluences,
  paths: renderPaths,
};
