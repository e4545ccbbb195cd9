/** What a key does while a lecture is given. */
export type GivingAct =
  | { readonly act: 'on' | 'back' | 'first' | 'last' | 'leave' | 'blank' | 'prepared' | 'undo' | 'redo' }
  | { readonly act: 'notes' | 'help' | 'time' | 'withhold' | 'screen' }
  | { readonly act: 'choose'; readonly option: number };

/** What has the focus when a key is pressed. */
export type KeyPlace =
  | 'page'
  /** Text is typed there on one line. */
  | 'field'
  /** The same, with nothing half typed: it shows what the design holds. */
  | 'settledField'
  /** Text of several lines, or a list of the browser's: every key is its own. */
  | 'list'
  /** Arrows move it. */
  | 'slider'
  /** Space and Enter press it. */
  | 'button';

export interface PressedKey {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

const acts: Readonly<Record<string, GivingAct>> = {
  ArrowRight: { act: 'on' },
  PageDown: { act: 'on' },
  ' ': { act: 'on' },
  Enter: { act: 'on' },
  ArrowLeft: { act: 'back' },
  PageUp: { act: 'back' },
  Home: { act: 'first' },
  End: { act: 'last' },
  Escape: { act: 'leave' },
  b: { act: 'blank' },
  '.': { act: 'blank' },
  r: { act: 'prepared' },
  n: { act: 'notes' },
  t: { act: 'time' },
  h: { act: 'withhold' },
  f: { act: 'screen' },
  '?': { act: 'help' },
};

const isTyped = (key: string) => key !== 'PageDown' && key !== 'PageUp';

/** Keys that what has the focus needs for itself. Clickers send the page keys, which go on wherever they can. */
const own: Readonly<Record<KeyPlace, (key: string) => boolean>> = {
  page: () => false,
  field: isTyped,
  settledField: isTyped,
  list: () => true,
  slider: (key) => /^Arrow|^Home$|^End$/.test(key),
  button: (key) => key === ' ' || key === 'Enter',
};

/** What a key does, or nothing where it is not for the lecture. */
export function actOf(pressed: PressedKey, place: KeyPlace): GivingAct | undefined {
  const { key } = pressed;
  if (pressed.ctrlKey || pressed.metaKey)
    return place === 'field' || place === 'list' ? undefined : undoing(pressed);
  if (pressed.altKey || own[place](key)) return undefined;
  if (/^[1-9]$/.test(key)) return { act: 'choose', option: Number(key) - 1 };
  const known = key.length === 1 ? key.toLowerCase() : key;
  return Object.hasOwn(acts, known) ? acts[known] : undefined;
}

function undoing({ key, shiftKey, altKey }: PressedKey): GivingAct | undefined {
  if (key.toLowerCase() !== 'z' || altKey) return undefined;
  return { act: shiftKey ? 'redo' : 'undo' };
}

/** The keys in words, for those who ask. */
export const keysSaid: readonly (readonly [keys: string, does: string])[] = [
  ['→, Page Down, Space or Enter', 'goes on: first to what is withheld, then to the next step'],
  ['← or Page Up', 'goes back, with everything as it was left'],
  ['Home, End', 'to the first or the last step'],
  ['1 … 9', 'marks what the room takes for right'],
  ['H', 'withholds the answer again'],
  ['R', 'sets everything as it was prepared for this step'],
  ['Ctrl+Z', 'takes back one change of a value'],
  ['B or full stop', 'blanks the screen, and shows it again'],
  ['N', 'opens the lecturer’s own page, or closes it'],
  ['T', 'begins the time anew'],
  ['F', 'fills the whole screen'],
  ['Esc', 'leaves a field, else the lecture; it waits as it is'],
];
