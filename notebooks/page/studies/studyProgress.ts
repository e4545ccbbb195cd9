import { element, setText } from '../element.ts';
import type { Study } from './desk/studyDesk.ts';

/** A line that says how far a study is, with a button that stops it; nothing while none goes on. */
export interface StudyProgress {
  readonly element: HTMLElement;
  /** Shows a study until it has answered or `end` is called. */
  begin(study: Study<unknown>, words: string): void;
  told(part: number): void;
  end(): void;
}

/** `stopped` is called after the person has stopped a study; the focus goes on there. */
export function createStudyProgress(document: Document, stopped: () => void): StudyProgress {
  const text = element(document, 'span', {});
  const button = element(document, 'button', { type: 'button', class: 'plain' }, 'Stop');
  const line = element(document, 'div', { class: 'work-line study-progress', hidden: true }, text, button);
  let study: Study<unknown> | undefined;
  let doing = '';
  button.addEventListener('click', () => {
    study?.stop();
    stopped();
  });
  return {
    element: line,
    begin(next, words) {
      study = next;
      doing = words;
      setText(text, `${words} …`);
      line.removeAttribute('data-part');
      line.hidden = false;
    },
    told(part) {
      setText(text, `${doing}: ${Math.round(100 * part)}\u202f% done`);
      line.setAttribute('data-part', '');
      line.style.setProperty('--part', String(part));
    },
    end() {
      study = undefined;
      line.hidden = true;
    },
  };
}
