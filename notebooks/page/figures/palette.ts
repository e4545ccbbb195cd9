import type { SeriesRole } from '../../document.ts';

export type Scheme = 'light' | 'dark';

/** Paints of a figure: CSS variables on the page, plain colours in a file. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  readonly muted: string;
  readonly line: string;
  readonly accent: string;
  readonly main: string;
  readonly second: string;
  readonly third: string;
  readonly reference: string;
  readonly band: string;
  /** Opacity that `band` still needs: a file states it apart, because not every drawing program reads #rrggbbaa. */
  readonly bandOpacity: number;
  readonly font: string;
}

/** Paints that follow the page. */
export const pagePalette: Palette = {
  paper: 'var(--paper)',
  ink: 'var(--ink)',
  muted: 'var(--muted)',
  line: 'var(--line)',
  accent: 'var(--accent)',
  main: 'var(--series-main)',
  second: 'var(--series-second)',
  third: 'var(--series-third)',
  reference: 'var(--series-reference)',
  band: 'var(--series-band)',
  bandOpacity: 1,
  font: 'var(--sans)',
};

const plainFont = "'Source Sans 3', 'Helvetica Neue', Helvetica, Arial, sans-serif";

/** The colours of tokens.css written out (a test compares them), for files that leave the page. */
export const plainPalettes: Readonly<Record<Scheme, Palette>> = {
  light: {
    paper: '#fbfaf6',
    ink: '#22262b',
    muted: '#62676e',
    line: '#dcd8ce',
    accent: '#a83c14',
    main: '#1d4f7c',
    second: '#5b7f3a',
    third: '#7a4a86',
    reference: '#8a8d92',
    band: '#1d4f7c',
    bandOpacity: 0x22 / 255,
    font: plainFont,
  },
  dark: {
    paper: '#17191c',
    ink: '#e6e3dc',
    muted: '#a3a6ab',
    line: '#383d43',
    accent: '#ff9a70',
    main: '#8fc1ee',
    second: '#b3d48f',
    third: '#d0a6dc',
    reference: '#8d9197',
    band: '#8fc1ee',
    bandOpacity: 0x2e / 255,
    font: plainFont,
  },
};

/** How a curve is drawn: paint, width in px and dashes, which also tell the curves apart in black and white. */
export interface Stroke {
  readonly paint: string;
  readonly width: number;
  readonly dashes: string | undefined;
}

const widths: Readonly<Record<SeriesRole, number>> = {
  main: 2,
  second: 1.75,
  third: 1.75,
  reference: 1.25,
  band: 1,
  kept: 1.25,
};
/** Dashes of the first, second, … curve of the same role. */
const dashes: Readonly<Record<SeriesRole, readonly (string | undefined)[]>> = {
  main: [undefined, '12 3 2 3'],
  second: ['8 3', '8 3 2 3'],
  third: ['2.5 2.5', '5 2 2 2'],
  reference: [undefined, '4 3', '1.5 3'],
  band: [undefined, '4 3'],
  // Never a whole line: that is the design as it stands.
  kept: ['6 3', '2 2.5', '10 3 2 3', '6 3 2 3 2 3'],
};

/** Stroke of the curve that has `earlier` curves of its role before it. */
export function strokeOf(role: SeriesRole, earlier: number, palette: Palette): Stroke {
  const patterns = dashes[role];
  // Faint, but as easy to read as words: three to one against the paper at least.
  const paint = role === 'kept' ? palette.muted : palette[role];
  return { paint, width: widths[role], dashes: patterns[earlier % patterns.length] };
}

/** The scheme the page shows: the person's choice on the root element, else the system's. */
export function schemeOf(document: Document): Scheme {
  const chosen = document.documentElement?.getAttribute('data-scheme');
  if (chosen === 'light' || chosen === 'dark') return chosen;
  const view = document.defaultView as Partial<Window> | null;
  return view?.matchMedia?.('(prefers-color-scheme: dark)')?.matches ? 'dark' : 'light';
}
