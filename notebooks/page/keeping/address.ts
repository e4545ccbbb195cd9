/** What an address names behind its #: a document, what is open in it, and the design in a link. */
export interface Address {
  readonly document: string;
  /** What is open within the document; empty where nothing is named. */
  readonly within: string;
  /** Text of a design; undefined where the address brings none. */
  readonly design: string | undefined;
}

/** Longer names are cut; signs. */
const longestShown = 40;

/** Reads `#DOCUMENT/WITHIN?design=TEXT`. */
export function readAddress(hash: string): Address {
  const [path = '', ...query] = hash.replace(/^#/, '').split('?');
  const [document = '', ...within] = path.split('/');
  const design = new URLSearchParams(query.join('?')).get('design');
  return { document, within: within.join('/'), design: design ?? undefined };
}

/** Takes the design out of the address, so that loading the page again does not open it over later changes. */
export function takeDesign({ location, history }: Pick<Window, 'location' | 'history'>): string | undefined {
  const { design } = readAddress(location.hash);
  const [path] = location.hash.split('?');
  if (location.hash.includes('?')) history.replaceState(history.state, '', path || '#');
  return design;
}

/** What is said where an address leads to no document; empty where it leads to one, or to the start page. */
export function addressWords(hash: string, documents: readonly { readonly id: string }[]): string {
  const { document } = readAddress(hash);
  if (document === '' || documents.some(({ id }) => id === document)) return '';
  const named = `‘#${document.length > longestShown ? `${document.slice(0, longestShown)}…` : document}’`;
  if (/^design=/.test(document))
    return `The address ends in ${named}, which brings no design: in a link it stands behind ‘?’, as in ‘#${documents[0]!.id}?design=…’. Copy the link again as a whole, or ask for a design file.`;
  return `The address ends in ${named}, and no document is called that. Choose one here.`;
}
