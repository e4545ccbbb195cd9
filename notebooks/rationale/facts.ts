import { version } from '../version.ts';

/** What a paper says of how it was made. */
export interface Made {
  /** What the design is called. */
  readonly name: string;
  /** Year, month and day, "2026-03-01". */
  readonly date: string;
  /** Command that makes it again, without the file to write: "stepwell rationale rain-gauge-funnel.json". */
  readonly command: string;
}

/** The lines below the title: design, program, date and the command that makes it again. */
export function factsOf({ name, date, command }: Made): readonly (readonly [string, string])[] {
  return [
    ['Design', name],
    ['Made with', `Stepwell ${version}`],
    ['Date', date],
    ['Made again by', `${command} --to FILE.html`],
  ];
}

/** A command as it is typed: words with anything but plain letters in quotes. */
export function commandText(words: readonly string[]): string {
  return words
    .map((word) => (/^[\w./=-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`))
    .join(' ');
}

/** What a design without a name is called in writing. */
export const unnamed = 'Unnamed design';
