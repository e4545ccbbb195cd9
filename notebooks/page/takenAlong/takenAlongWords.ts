/**
 * How the pages are there without network: `file`: all of them are one file from disk; `coming`: the browser is taking
 * them in; `kept`: it has them; `insecure`: it may not at this address; `network`: it does not.
 */
export type TakenAlong = 'file' | 'coming' | 'kept' | 'insecure' | 'network';

/** What the start page says of it. */
export function takenAlongWords(taken: TakenAlong): string {
  switch (taken) {
    case 'file':
      return 'This one file holds all the pages: it opens from disk, without network. Nothing you enter leaves this computer.';
    case 'coming':
      return 'Nothing you enter leaves this browser. It is taking the pages in, so that they open without network.';
    case 'kept':
      return 'Nothing you enter leaves this browser. It has all the pages now: they open without network, and its menu can install them like a program.';
    case 'insecure':
      return 'Nothing you enter leaves this browser. It takes the pages in for use without network only from an address that begins with https or localhost.';
    case 'network':
      return 'Nothing you enter leaves this browser.';
  }
}

/** What is said where a newer version waits; `kept`: the browser keeps the open design. */
export function newerWords(kept: boolean): string {
  return kept
    ? 'A newer version of these pages is here. Your design comes back in it, with its undo and what you are typing.'
    : 'A newer version of these pages is here. This browser does not keep your design: save it to a file first.';
}

/** What is said where the newer version was taken in another tab, and this one still shows the former. */
export const newerElsewhere =
  'A newer version of these pages was opened in another tab. Load this one again when it suits you; until then parts of it may not open.';
