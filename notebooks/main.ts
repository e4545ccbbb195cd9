import '@fontsource-variable/source-serif-4';
import '@fontsource-variable/source-serif-4/wght-italic.css';
import '@fontsource-variable/source-sans-3';
import 'katex/dist/katex.min.css';
import './page/style.css';
import './page/choices.css';
import './page/figurePanels.css';
import './page/rows.css';
import './page/traceRows.css';
import './page/workLines.css';
import './page/figures/figures.css';
import './page/studies/studies.css';
import './page/studies/asked/requirements.css';
import './page/studies/own/own.css';
import './page/studies/offers.css';
import './page/studies/studyTools.css';
import './page/writeUp/writeUp.css';
import './page/lessons/lessons.css';
import './page/lectures/giving.css';
import './page/lectures/lectures.css';
import './page/words/words.css';
import './page/search/search.css';
import './page/reading/reading.css';
import './page/print.css';
import './page/writeUp/setUpSheet.css';
import './page/takenAlong/takenAlong.css';
import { designGraph } from '../lib/design/design.ts';
import { stepDiameter } from '../lib/design/plate.ts';
import { isInput } from '../lib/graph/quantity.ts';
import { initialState } from '../lib/graph/state.ts';
import { elementOf, type PathElementName } from './beamPathInputs.ts';
import { documents } from './contents.ts';
import type { PageContext } from './page/context.ts';
import { createDrafts } from './page/controls/drafts.ts';
import { createField } from './page/controls/inputPanel.ts';
import { keepOneHelpOpen } from './page/controls/openHelp.ts';
import { type DocumentView, renderDocument } from './page/documentView.ts';
import { focusInput } from './page/focusInput.ts';
import { createHeader } from './page/header.ts';
import { openWorker } from './page/heavy/openWorker.ts';
import { addressWords, readAddress, takeDesign } from './page/keeping/address.ts';
import { createDesignActions } from './page/keeping/designActions.ts';
import { openKeeping } from './page/keeping/keeping.ts';
import { showKeeping } from './page/keeping/keepingNotices.ts';
import { createNotices } from './page/keeping/notices.ts';
import { type OpenRead, readOpenable } from './page/keeping/openedDesign.ts';
import { showOpened } from './page/keeping/openedNotice.ts';
import { createPrinted } from './page/keeping/printed.ts';
import { type GivingView, renderGiving } from './page/lectures/givingView.ts';
import { lectureAt } from './page/lectures/lectureAt.ts';
import { createLive } from './page/live.ts';
import { createOwnPartsStore } from './page/ownPartsStore.ts';
import { openMeasuredFile, panelActions } from './page/pathView.ts';
import { createReadStore } from './page/reading/readStore.ts';
import { goWithin } from './page/search/goWithin.ts';
import { createPageSearch } from './page/search/pageSearch.ts';
import { renderStartPage } from './page/startPage.ts';
import { askTool } from './page/studies/toolMemory.ts';
import { keepPages } from './page/takenAlong/keepPages.ts';
import { createTakenAlong } from './page/takenAlong/takenAlongView.ts';
import { createTracePanel } from './page/trace.ts';
import { createWordPanel } from './page/words/wordPanel.ts';
import { plateDoor } from './startDoors.ts';

const live = createLive(designGraph, undefined, openWorker);
const drafts = createDrafts(live);
const firstLink = readLinked();
// A broken link brings no design: then the page shows what it would have shown without it.
const linked = await firstLink?.then(
  () => true,
  () => false,
);
const keeping = await openKeeping(window, linked);
keeping.start(live, drafts);
const notices = createNotices(document);
const search = createPageSearch(document, live, (quantity, from) => context.open(quantity, from), goTo);
const header = createHeader(
  document,
  live,
  (report) => createDesignActions(document, live, notices, report),
  search,
);
showKeeping(keeping, live, drafts, notices);
const takenAlong = createTakenAlong(document, keepPages(window, import.meta.env.MODE, keeping, notices));
const ownParts = createOwnPartsStore(window);
const read = createReadStore(window);
const context: PageContext = {
  document,
  live,
  ownParts,
  read,
  within: '',
  drafts,
  open: () => {},
  define: (word, from, bare) => wordPanel.open(word, from, bare),
  study: (tool, { id }) => {
    askTool(live, tool, id);
    trace.close();
    go('what-if');
  },
  report: header.report,
};
const trace = createTracePanel(context, (quantity, stops) => {
  if (!isInput(quantity)) return undefined;
  const field = createField(document, quantity, panelActions(context));
  stops.push(
    live.watch(quantity, {
      changed: (outcome) => {
        if ('value' in outcome) field.update(outcome.value as never);
      },
    }),
  );
  stops.push(drafts.onChange((id) => id === quantity.id && field.recall?.()));
  return field.element;
});
context.open = (quantity, from) => {
  if (wordPanel.element.contains(from)) wordPanel.close();
  trace.open(quantity, from);
};
const wordPanel = createWordPanel(context);

const printed = createPrinted(document, live);
const place = document.createElement('div');
place.className = 'page';
document
  .getElementById('page')!
  .replaceChildren(
    header.element,
    notices.element,
    printed.head,
    place,
    trace.element,
    wordPanel.element,
    printed.tail,
  );

let shown: DocumentView | undefined;
let giving: GivingView | undefined;
let routed = false;
/** The input that the next document opens with; the first one with what was typed last and not taken. */
let entry: { readonly element: PathElementName | undefined; readonly input: string } | undefined;

/** Shows what the address names: a step of a lecture, a document, or the start page. */
function route(): void {
  const address = readAddress(location.hash);
  const lecture = lectureAt(address, live.state());
  if (lecture && giving?.follow(lecture)) return;
  shown?.close();
  trace.close();
  wordPanel.close();
  giving = lecture && renderGiving(context, lecture);
  if (giving) {
    notices.show('address', '');
    shown = giving;
    place.replaceChildren(giving.element);
    routed = true;
    return;
  }
  const content = documents.find(({ id }) => id === address.document);
  notices.show('address', addressWords(location.hash, documents));
  shown = content && renderDocument({ ...context, within: address.within }, content, entry?.element);
  place.replaceChildren(shown?.element ?? startPage());
  document.title = content
    ? `${content.title} · Stepwell`
    : 'Stepwell: flat-topped and ring-shaped laser spots';
  if (content) read.add(content.id);
  window.scrollTo(0, 0);
  if (shown && entry) focusInput(shown.element, drafts, entry.input);
  else if (!goWithin(shown?.element ?? place, address.within, live.settled)) focusHeading();
  routed = true;
  entry = undefined;
}

/** Those who read with the keyboard or by ear go on at the top of what is new; the first page leaves the focus alone. */
function focusHeading(): void {
  const heading = place.querySelector<HTMLElement>('h1')!;
  heading.tabIndex = -1;
  if (routed) heading.focus({ preventScroll: true });
}

function startPage(): HTMLElement {
  return renderStartPage(document, {
    onMeasured: (file) => {
      openMeasuredFile(live, file).then(
        () => go('matching'),
        (error: Error) => header.report(error.message),
      );
    },
    onPlate: () => {
      live.set(plateDoor);
      entry = { element: 'plate', input: stepDiameter.id };
      go('matching');
    },
    onExample: () => {
      live.open(initialState(designGraph));
      go('matching');
    },
    takenAlong,
  });
}

function go(id: string): void {
  location.hash = id;
}

/** Goes to an address, also to the one that is shown: what it names may be far from what one sees. */
function goTo(address: string): void {
  if (location.hash === `#${address}`) route();
  else go(address);
}

/** Reads the design that the address brings, and takes it out of the address. */
function readLinked(): Promise<OpenRead> | undefined {
  const link = takeDesign(window);
  return link === undefined ? undefined : readOpenable(link);
}

/** Opens the design of a link; a bad one is told of and changes nothing. */
async function follow(link: Promise<OpenRead> | undefined): Promise<void> {
  if (!link) return;
  try {
    const open = await link;
    showOpened(live, notices, open(live));
  } catch (error) {
    header.report((error as Error).message);
  }
}

keepOneHelpOpen(document);
window.addEventListener('hashchange', () => {
  const link = readLinked();
  route();
  // A link may bring the lecture that it names.
  void follow(link).then(
    () => link && !giving && lectureAt(readAddress(location.hash), live.state()) && route(),
  );
});
await follow(firstLink);
const last = drafts.all().at(-1);
if (last) entry = { element: elementOf(last.input), input: last.input };
route();
// For checks from outside: the settled state of what is shown.
Object.assign(window, {
  stepwell: { settled: () => live.settled(), state: () => live.state(), set: live.set },
});
