import { element } from '../element.ts';

/** A thing to do about a notice. */
export interface NoticeAction {
  readonly words: string;
  act(): void;
}

/** Quiet lines below the header, one a topic. */
export interface Notices {
  readonly element: HTMLElement;
  /**
   * Shows a text under its topic, in place of the former one; an empty text takes it away. What is returned takes this
   * text away, where it still stands.
   */
  show(topic: string, text: string, actions?: readonly NoticeAction[]): () => void;
}

/** Lines below the header, each with what can be done, and a way to close it. */
export function createNotices(document: Document): Notices {
  const place = element(document, 'div', { class: 'notices', role: 'status' });
  const lines = new Map<string, HTMLElement>();
  const show: Notices['show'] = (topic, text, actions = []) => {
    lines.get(topic)?.remove();
    lines.delete(topic);
    if (text === '') return () => {};
    const close = { words: 'Close', act: () => show(topic, '') };
    const buttons = [...actions, close].map(({ words, act }) => {
      const button = element(document, 'button', { type: 'button', class: 'plain' }, words);
      // A field that loses the focus takes what stands in it, and the line may go before the click has come.
      button.addEventListener('mousedown', (event) => event.preventDefault());
      button.addEventListener('click', act);
      return button;
    });
    const line = element(document, 'p', { class: 'notice', 'data-topic': topic }, text, ' ', ...buttons);
    lines.set(topic, line);
    place.append(line);
    return () => {
      if (lines.get(topic) === line) show(topic, '');
    };
  };
  return { element: place, show };
}
