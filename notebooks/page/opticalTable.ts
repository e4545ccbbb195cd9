import { element, svgElement } from './element.ts';

/** A document and its place on the table. */
export interface TablePlace {
  readonly name: string;
  /** What it is about, a few words. */
  readonly about: string;
  /** Percent of the picture's width and height. */
  readonly at: readonly [x: number, y: number];
  /** Address of the document; without one it comes later. */
  readonly href?: string;
}

const width = 640;
const height = 352;
const upper = 92;
const lower = 264;
const right = 578;

/** The optical table seen from above, with a numbered place for each document, those that can be opened filled in. */
export function createOpticalTable(document: Document, places: readonly TablePlace[]): HTMLElement {
  const markers = places.map(({ at, href }, i) => {
    const marker = element(
      document,
      'span',
      { class: 'table-marker', 'aria-hidden': 'true', 'data-open': href !== undefined },
      String(i + 1),
    );
    marker.style.left = `${at[0]}%`;
    marker.style.top = `${at[1]}%`;
    return marker;
  });
  const picture = element(document, 'div', { class: 'table-picture' }, drawTable(document), ...markers);
  const list = element(
    document,
    'ol',
    { class: 'table-places' },
    ...places.map((place) => placeItem(document, place)),
  );
  return element(
    document,
    'figure',
    { class: 'optical-table' },
    picture,
    element(document, 'figcaption', {}, list),
  );
}

function placeItem(document: Document, { name, about, href }: TablePlace): HTMLElement {
  if (href === undefined)
    return element(document, 'li', { class: 'table-later' }, `${name}: ${about} (later)`);
  return element(document, 'li', {}, element(document, 'a', { href }, name), `: ${about}`);
}

function drawTable(document: Document): SVGSVGElement {
  const path = (name: string, d: string) => svgElement(document, 'path', { class: name, d });
  const word = (x: number, y: number, text: string) =>
    svgElement(document, 'text', { class: 'table-word', x, y, 'text-anchor': 'middle' }, text);
  return svgElement(
    document,
    'svg',
    {
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-label':
        'Optical table from above: laser, expander, two mirrors, plate with stop, lens and workpiece, joined by the beam',
    },
    path('table-top', `M1,1H${width - 1}V${height - 1}H1Z`),
    path('table-holes', holes()),
    path('table-beam', beam()),
    path('beam-body', `M30,${upper - 34}H186V${upper + 34}H30Z`),
    path('beam-glass', `M268,${upper - 14}H344V${upper + 14}H268Z`),
    path(
      'table-mirror',
      `M${right - 20},${upper - 20}L${right + 20},${upper + 20}M${right - 20},${lower + 20}L${right + 20},${lower - 20}`,
    ),
    path('beam-glass', `M430,${lower - 40}h8v16h5v48h-5v16h-8Z`),
    path('beam-stop', `M416,${lower - 44}v16h5v-16ZM416,${lower + 44}v-16h5v16Z`),
    path('beam-glass', `M276,${lower - 36}Q262,${lower} 276,${lower + 36}Q290,${lower} 276,${lower - 36}Z`),
    path('beam-body', `M58,${lower - 38}h54v76h-54Z`),
    path('beam-surface', `M112,${lower - 38}v76`),
    word(108, upper + 6, 'laser'),
    word(306, upper + 42, 'expander'),
    word(430, lower + 68, 'plate'),
    word(276, lower + 68, 'lens'),
    word(85, lower + 68, 'workpiece'),
  );
}

/** Threaded holes every 32 units. */
function holes(): string {
  const rows = Array.from({ length: 11 }, (_, row) => 16 + 32 * row);
  return rows
    .flatMap((y) => Array.from({ length: 20 }, (_, column) => `M${16 + 32 * column},${y}h0.01`))
    .join('');
}

/** Narrow from the laser, wide behind the expander, round by two mirrors, and down to the focus. */
function beam(): string {
  const [thin, wide] = [5, 16];
  const narrow = `M186,${upper - thin}H268V${upper + thin}H186Z`;
  const round = `M344,${upper - wide}H${right - wide}L${right + wide},${upper + wide}V${lower - wide}L${right - wide},${lower + wide}H276`;
  return `${narrow}${round}L112,${lower}L276,${lower - wide}H${right - wide}V${upper + wide}H344Z`;
}
