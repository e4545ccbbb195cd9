import { type Giving, roomOf, stepOf, withholds } from '../../lectures/giving.ts';
import type { GivingAct } from '../../lectures/givingKeys.ts';
import { roomSaid, stateSaid } from '../../lectures/givingWords.ts';
import { meantSaid, paceSaid, timeText } from '../../lectures/lectureTime.ts';
import { ownProse } from '../../ownProse.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { renderProse } from '../proseView.ts';

/** What the lecturer sees beside the room: what to say, what comes, and the time. */
export interface LecturerPanel {
  readonly element: HTMLElement;
  show(giving: Giving): void;
  tick(giving: Giving, now: Date): void;
  close(): void;
}

/** What it asks and does. */
export interface PanelActs {
  readonly take: (act: GivingAct) => void;
  /** What the next step asks, in words; empty where it asks nothing. */
  readonly asked: (giving: Giving) => string;
}

/**
 * Makes it in the document of `context`, which may be that of another window; its highest heading
 * is `level`.
 */
export function createLecturerPanel(
  context: PageContext,
  level: 'h1' | 'h2',
  { take, asked }: PanelActs,
): LecturerPanel {
  const { document, live } = context;
  const line = (name: string) => element(document, 'p', { class: `lecturer-${name}` });
  const [place, said, room, next, asks] = ['place', 'said', 'room', 'next', 'asks'].map(line);
  const title = element(document, level, { class: 'lecturer-title' });
  const notes = element(document, 'div', { class: 'lecturer-notes' });
  const [spent, pace, meant, clock] = ['spent', 'pace', 'meant', 'clock'].map((name) =>
    element(document, 'span', { class: `lecturer-${name}` }),
  );
  const button = (words: string, act: GivingAct) => {
    const made = element(document, 'button', { type: 'button', class: 'lecturer-button' }, words);
    made.addEventListener('click', () => take(act));
    return made;
  };
  const on = button('Next', { act: 'on' });
  const again = button('Withhold it again', { act: 'withhold' });
  const buttons = element(
    document,
    'div',
    { class: 'lecturer-buttons' },
    button('Back', { act: 'back' }),
    on,
    again,
    button('As prepared', { act: 'prepared' }),
    button('Blank screen', { act: 'blank' }),
    button('Begin the time anew', { act: 'time' }),
  );
  let stops: (() => void)[] = [];
  let shown: unknown;
  const clear = () => {
    for (const stop of stops) stop();
    stops = [];
  };
  const write = (giving: Giving) => {
    const text = (stepOf(giving)?.notes ?? '').trim();
    clear();
    notes.replaceChildren(
      text === ''
        ? element(document, 'p', { class: 'lecturer-none' }, 'No notes for this step.')
        : renderProse(context, ownProse(live.graph, text), stops),
    );
    // Here a number is read, not opened.
    for (const value of notes.querySelectorAll('.value')) {
      value.removeAttribute('tabindex');
      value.removeAttribute('role');
    }
  };
  return {
    element: element(
      document,
      'div',
      { class: 'lecturer' },
      element(document, 'p', { class: 'lecturer-time' }, spent!, ' ', pace!, ' ', clock!, ' ', meant!),
      place!,
      title,
      said!,
      room!,
      notes,
      next!,
      asks!,
      buttons,
    ),
    show(giving) {
      const { lecture, place: at } = giving;
      const step = stepOf(giving);
      const coming = lecture.steps[at + 1];
      if (shown !== step) {
        write(giving);
        const question = asked(giving);
        setText(asks!, question === '' ? '' : `It asks: ${question}`);
      }
      shown = step;
      setText(place!, `Step ${at + 1} of ${lecture.steps.length}`);
      setText(title, step?.title ?? '');
      setText(said!, stateSaid(giving));
      setText(room!, roomSaid(giving));
      setText(next!, coming ? `Next: ${coming.title}` : 'This is the last step.');
      const { revealed } = roomOf(giving);
      setText(on, step && withholds(step) && !revealed ? 'Show what is withheld' : 'Next');
      again.hidden = !revealed || !step || !withholds(step);
    },
    tick(giving, now) {
      const { lecture, place: at, began } = giving;
      const passed = now.getTime() - began;
      setText(spent!, timeText(passed));
      setText(pace!, paceSaid(lecture, at, passed));
      setText(meant!, meantSaid(lecture, at));
      const two = (count: number) => String(count).padStart(2, '0');
      setText(clock!, `It is ${two(now.getHours())}:${two(now.getMinutes())}.`);
    },
    close: clear,
  };
}
