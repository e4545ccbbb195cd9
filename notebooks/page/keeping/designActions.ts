import { designGraph } from '../../../lib/design/design.ts';
import { writeDesignFile } from '../../../lib/design/designFile.ts';
import { writeLink } from '../../keeping/designLink.ts';
import { element, setText } from '../element.ts';
import { download, fileName } from '../figures/exportFigure.ts';
import type { Live } from '../live.ts';
import { copyAddress } from './copyAddress.ts';
import { createDesignMenu, createDesignTexts } from './designPanel.ts';
import { acceptDesigns } from './dropDesign.ts';
import type { Notices } from './notices.ts';
import { openDesignFile } from './openedDesign.ts';
import { showOpened } from './openedNotice.ts';

/** Says what went wrong, where no field is near. */
type Report = (message: string) => void;

/** The menu of the design: name and notes, save, open, copy a link, print. Ctrl+S saves; a file dropped anywhere opens. */
export function createDesignActions(
  document: Document,
  live: Live,
  notices: Notices,
  report: Report,
): HTMLElement {
  const status = element(document, 'p', { class: 'design-status', role: 'status' });
  const link = element(document, 'input', {
    type: 'text',
    class: 'field-text',
    readonly: true,
    hidden: true,
    'aria-label': 'Link to this design',
  });
  const say = (text: string) => setText(status, text);
  const open = (file: File) => {
    openDesignFile(live, file).then(
      (words) => {
        menu.open = false;
        showOpened(live, notices, words);
      },
      (error: Error) => report(error.message),
    );
  };
  const save = () => say(saveDesign(live));
  const copy = () => {
    copyLink(document, live, link).then(say, (error: Error) => say(error.message));
  };
  const button = (words: string, act: () => void) => {
    const made = element(document, 'button', { type: 'button', class: 'plain' }, words);
    made.addEventListener('click', act);
    return made;
  };
  const buttons = element(
    document,
    'div',
    { class: 'design-buttons' },
    button('Save to a file', save),
    ...openButton(document, open),
    button('Copy link', copy),
    button('Print', () => document.defaultView!.print()),
  );
  const menu = createDesignMenu(document, live, createDesignTexts(document, live), buttons, link, status);
  live.onState(() => {
    say('');
    link.hidden = true;
  });
  document.addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.key.toLowerCase() !== 's') return;
    event.preventDefault();
    notices.show('opened', saveDesign(live));
  });
  acceptDesigns(document, open);
  return menu;
}

function openButton(document: Document, open: (file: File) => void): HTMLElement[] {
  const picker = element(document, 'input', {
    type: 'file',
    id: 'design-file',
    class: 'off-screen',
    accept: '.json,application/json',
  });
  picker.addEventListener('change', () => {
    const file = picker.files?.[0];
    picker.value = '';
    if (file) open(file);
  });
  return [picker, element(document, 'label', { class: 'design-open', for: 'design-file' }, 'Open a file')];
}

/** Hands the design to the person as a file; returns what to say. */
function saveDesign(live: Live): string {
  const { name = '' } = live.state();
  const file = fileName(name.trim() === '' ? 'design' : name, 'json');
  download(file, new Blob([writeDesignFile(designGraph, live.state())], { type: 'application/json' }));
  return `The design was saved as ${file}.`;
}

/** Copies a link to this document with the design in it, and shows it; resolves with what to say. */
async function copyLink(document: Document, live: Live, field: HTMLInputElement): Promise<string> {
  const { text, leftOut } = await writeLink(live.state());
  const [path] = document.location.hash.slice(1).split('?');
  const said = await copyAddress(document, `${path}?design=${text}`, field);
  return leftOut === '' ? said : `${said} ${leftOut}`;
}
