import type { FigureSpec } from '../../document.ts';
import { createDrawing, placeMap } from './drawing.ts';
import type { Shape } from './layout.ts';
import { type EncodePng, paintMap } from './mapPicture.ts';
import { plainPalettes, type Scheme } from './palette.ts';
import { setAttributes, svgElement, toXml } from './svg.ts';
import { withUnit } from './text.ts';

/** What an export needs to know of a figure on the page. */
export interface ShownFigure {
  readonly element: HTMLElement;
  readonly spec: FigureSpec | undefined;
  readonly width: number;
  readonly shape: Shape;
}

/** How a picture for a file is drawn; light and wide by default. */
export interface PictureOptions {
  readonly scheme?: Scheme;
  readonly shape?: Shape;
}

/** Paper around the drawing in a file, px. */
const margin = 12;

/** The figure as SVG text that needs no page: plain colours and fonts, the map as a PNG inside. */
export function drawPicture(
  spec: FigureSpec,
  document: Document,
  width: number,
  encodePng: EncodePng,
  { scheme = 'light', shape = 'wide' }: PictureOptions = {},
): string {
  const palette = plainPalettes[scheme];
  const drawing = createDrawing(document, spec, width, shape, palette);
  drawing.update(spec);
  drawing.paint(scheme);
  if (spec.map) {
    const pixels = new Uint8ClampedArray(spec.map.columns * spec.map.rows * 4);
    paintMap(spec.map, scheme, pixels);
    placeMap(document, drawing, spec.map, encodePng(pixels, spec.map.columns, spec.map.rows));
  }
  const { svg } = drawing;
  const outer = { width: width + 2 * margin, height: drawing.layout.height + 2 * margin };
  const viewBox = `${-margin} ${-margin} ${outer.width} ${outer.height}`;
  setAttributes(svg, { xmlns: 'http://www.w3.org/2000/svg', ...outer, viewBox });
  svg.prepend(
    svgElement(document, 'title', {}, spec.title),
    svgElement(document, 'desc', {}, spec.summary),
    svgElement(document, 'rect', { x: -margin, y: -margin, ...outer, fill: palette.paper }),
  );
  return toXml(svg);
}

/** The figure on the page as an SVG file, in the light scheme, which papers and slides are made in. */
export function figureSvg(view: ShownFigure): string {
  const document = view.element.ownerDocument;
  return drawPicture(shownSpec(view), document, view.width, canvasPng(document), { shape: view.shape });
}

/** The figure as a PNG, `scale` px of picture for each px on the page. Browsers only. */
export async function figurePng(view: ShownFigure, scale = 2): Promise<Blob> {
  const document = view.element.ownerDocument;
  const url = URL.createObjectURL(new Blob([figureSvg(view)], { type: 'image/svg+xml' }));
  try {
    const image = document.createElement('img');
    image.src = url;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(image.naturalWidth * scale);
    canvas.height = Math.round(image.naturalHeight * scale);
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise<Blob>((resolve, reject) => {
      canvas.toBlob((blob) =>
        blob ? resolve(blob) : reject(new Error('The browser could not write the picture.')),
      );
    });
  } finally {
    URL.revokeObjectURL(url);
  }
}

function shownSpec(view: ShownFigure): FigureSpec {
  if (!view.spec) throw new Error('This figure has no values yet.');
  return view.spec;
}

/** Encodes with the browser's canvas; an empty picture where there is none. */
function canvasPng(document: Document): EncodePng {
  return (pixels, width, height) => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [width, height];
    const context = canvas.getContext('2d');
    if (!context) return 'data:,';
    const image = context.createImageData(width, height);
    image.data.set(pixels);
    context.putImageData(image, 0, 0);
    return canvas.toDataURL('image/png');
  };
}

interface Column {
  readonly name: string;
  readonly values: ArrayLike<number>;
}

/**
 * The numbers of a figure as CSV (RFC 4180, full precision). Curves that share their x share its column; a band has a
 * column for each of its sides; a map is x, y, value, a row for each point. What is not a number is left empty.
 */
export function figureCsv(spec: FigureSpec): string {
  const columns = [...(spec.map ? mapColumns(spec) : []), ...seriesColumns(spec)];
  const count = Math.max(0, ...columns.map(({ values }) => values.length));
  const lines = [columns.map(({ name }) => quoted(name)).join(',')];
  for (let row = 0; row < count; row++) lines.push(columns.map(({ values }) => cell(values[row])).join(','));
  return `${lines.join('\r\n')}\r\n`;
}

function seriesColumns({ series, x: xAxis, y: yAxis }: FigureSpec): Column[] {
  const columns: Column[] = [];
  let last: Float64Array | undefined;
  for (const { label, x, y, y2 } of series) {
    if (!last || !sameValues(last, x)) columns.push({ name: withUnit(xAxis.label, xAxis.unit), values: x });
    last = x;
    const name = (side: string) => withUnit(`${label}${side}`, yAxis.unit);
    columns.push({ name: name(y2 ? ', one side' : ''), values: y });
    if (y2) columns.push({ name: name(', other side'), values: y2 });
  }
  return columns;
}

function mapColumns({ map, x, y }: FigureSpec): Column[] {
  const { columns, rows, values, label, unit } = map!;
  const along = ([low, high]: readonly [number, number], index: number, count: number) =>
    count > 1 ? low + ((high - low) * index) / (count - 1) : low;
  const xs = Float64Array.from(values, (_, index) => along(x.domain, index % columns, columns));
  const ys = Float64Array.from(values, (_, index) => along(y.domain, Math.floor(index / columns), rows));
  return [
    { name: withUnit(x.label, x.unit), values: xs },
    { name: withUnit(y.label, y.unit), values: ys },
    { name: withUnit(label, unit), values },
  ];
}

function sameValues(a: Float64Array, b: Float64Array): boolean {
  return a === b || (a.length === b.length && a.every((value, index) => Object.is(value, b[index])));
}

function cell(value: number | undefined): string {
  return value === undefined || Number.isNaN(value) ? '' : String(value);
}

function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** File name from a title, in kebab case: "Fluence across the spot" → fluence-across-the-spot.csv. */
export function fileName(title: string, extension: string): string {
  const words = title
    .normalize('NFKD')
    .replaceAll('μ', 'u')
    .replace(/[\p{M}'’]/gu, '')
    .toLowerCase()
    .match(/[a-z0-9]+/g);
  return `${words?.join('-') ?? 'figure'}.${extension}`;
}

/** Hands a file to the person. */
export function download(name: string, blob: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  // The browser reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
