/** What an address names behind its #: a document, and the design in a link. */
export interface Address {
  readonly document: string;
  /** Text of a design; undefined where the address brings none. */
  readonly design: string | undefined;
}

/** Reads `#DOCUMENT?design=TEXT`. */
export function readAddress(hash: string): Address {
  const [document = '', ...query] = hash.replace(/^#/, '').split('?');
  const design = new URLSearchParams(query.join('?')).get('design');
  return { document, design: design ?? undefined };
}

/** Takes the design out of the address, so that loading the page again does not open it over later changes. */
export function takeDesign({ location, history }: Pick<Window, 'location' | 'history'>): string | undefined {
  const { document, design } = readAddress(location.hash);
  if (location.hash.includes('?')) history.replaceState(history.state, '', `#${document}`);
  return design;
}
