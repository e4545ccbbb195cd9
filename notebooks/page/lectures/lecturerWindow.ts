import type { Giving } from '../../lectures/giving.ts';
import type { PageContext } from '../context.ts';
import { dressWindow } from './dressWindow.ts';
import { createLecturerPanel, type LecturerPanel, type PanelActs } from './lecturerPanel.ts';
import { takeKeys } from './pressedKeys.ts';

/** The lecturer's own page: in a second window, or below the step where the browser holds windows back. */
export interface LecturerPages {
  /** Opens it, or closes it where it is open. */
  toggle(giving: Giving): void;
  show(giving: Giving): void;
  tick(giving: Giving, now: Date): void;
  isOpen(): boolean;
  close(): void;
}

interface Opened {
  readonly panel: LecturerPanel;
  isOver(): boolean;
  close(): void;
}

const size = 'popup,width=900,height=760';

/** `below` takes it where there is no second window; `say` tells what came of it. */
export function createLecturerPages(
  context: PageContext,
  below: HTMLElement,
  acts: PanelActs,
  say: (text: string) => void,
): LecturerPages {
  let opened: Opened | undefined;
  const close = () => {
    opened?.panel.close();
    opened?.close();
    opened = undefined;
  };
  const open = (giving: Giving) => {
    const other = openWindow(context.document);
    opened = other ? inWindow(context, other, acts, close) : inPage(context, below, acts);
    say(
      other
        ? 'The lecturer’s page is open in a window of its own; move it to your own screen.'
        : 'The browser holds the second window back. Allow windows for this page to have it; until then your notes stand below the step.',
    );
    opened.panel.show(giving);
    opened.panel.tick(giving, new Date());
  };
  return {
    toggle(giving) {
      if (opened && !opened.isOver()) {
        close();
        say('The lecturer’s page is closed.');
      } else open(giving);
    },
    show: (giving) => opened?.panel.show(giving),
    tick(giving, now) {
      if (opened?.isOver()) close();
      opened?.panel.tick(giving, now);
    },
    isOpen: () => opened !== undefined && !opened.isOver(),
    close,
  };
}

function inPage(context: PageContext, below: HTMLElement, acts: PanelActs): Opened {
  const panel = createLecturerPanel(context, 'h2', acts);
  below.replaceChildren(panel.element);
  below.hidden = false;
  return {
    panel,
    isOver: () => false,
    close: () => {
      below.replaceChildren();
      below.hidden = true;
    },
  };
}

/** Drawn by this page into an empty one of the same origin: no address is loaded, so it works without network and from disk. */
function openWindow(document: Document): Window | undefined {
  const other = document.defaultView!.open('', 'stepwell-lecturer', size);
  try {
    // A window that was held back may still be an object.
    if (!other || other.closed || !other.document.body) return undefined;
    dress(document, other.document);
    return other;
  } catch {
    return undefined;
  }
}

function dress(from: Document, to: Document): void {
  to.title = 'Lecturer’s page · Stepwell';
  to.documentElement.lang = 'en';
  const scheme = from.documentElement.getAttribute('data-scheme');
  if (scheme) to.documentElement.setAttribute('data-scheme', scheme);
  else to.documentElement.removeAttribute('data-scheme');
  to.head.replaceChildren(to.querySelector('title')!);
  to.adoptedStyleSheets = [];
  dressWindow(from, to);
  to.body.className = 'lecturer-page';
}

function inWindow(context: PageContext, other: Window, acts: PanelActs, close: () => void): Opened {
  const panel = createLecturerPanel({ ...context, document: other.document, open: () => {} }, 'h1', acts);
  const main = other.document.createElement('main');
  main.append(panel.element);
  other.document.body.replaceChildren(main);
  // Escape ends the window here, not the lecture.
  const stop = takeKeys(other, (act) => (act.act === 'leave' ? close() : acts.take(act)));
  return {
    panel,
    isOver: () => other.closed,
    close: () => {
      stop();
      other.close();
    },
  };
}
