import type { FigureSpec } from '../../document.ts';
import { setAttributes, svgElement } from '../element.ts';
import { createDrawing, placeMap } from './drawing.ts';
import type { Shape } from './layout.ts';
import { type EncodePng, paintMap, pixelRows } from './mapPicture.ts';
import { type Palette, plainPalettes, type Scheme } from './palette.ts';
import { captionAbove, textBelow } from './pictureText.ts';
import { toXml } from './svg.ts';

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
  /** Without title and summary, on white by day: where a paper says both in its own words. */
  readonly bare?: boolean;
}

/** Paper around the drawing in a file, px. */
const margin = 12;

/** The figure as SVG text that needs no page: title and summary in it, plain colours and fonts, the map as a PNG inside. */
export function drawPicture(
  spec: FigureSpec,
  document: Document,
  width: number,
  encodePng: EncodePng,
  { scheme = 'light', shape = 'wide', bare = false }: PictureOptions = {},
): string {
  const palette = paletteOf(scheme, bare);
  const drawing = createDrawing(document, spec, width, shape, palette);
  drawing.update(spec);
  drawing.paint(scheme);
  if (spec.map) {
    const rows = pixelRows(spec.map);
    const pixels = new Uint8ClampedArray(spec.map.columns * rows * 4);
    paintMap(spec.map, scheme, pixels);
    placeMap(document, drawing, spec.map, encodePng(pixels, spec.map.columns, rows));
  }
  const { svg } = drawing;
  const { above, below } = bare
    ? { above: undefined, below: undefined }
    : {
        above: captionAbove(document, spec.title, width, palette),
        below: textBelow(document, spec.summary, width, drawing.layout.height, palette),
      };
  const top = -margin - (above?.height ?? 0);
  const outer = {
    width: width + 2 * margin,
    height: drawing.layout.height + (below?.height ?? 0) + margin - top,
  };
  const viewBox = `${-margin} ${top} ${outer.width} ${outer.height}`;
  setAttributes(svg, { xmlns: 'http://www.w3.org/2000/svg', ...outer, viewBox });
  svg.prepend(
    svgElement(document, 'title', {}, spec.title),
    svgElement(document, 'desc', {}, spec.summary),
    svgElement(document, 'rect', { x: -margin, y: top, ...outer, fill: palette.paper }),
  );
  for (const words of [above, below]) if (words) svg.append(words.element);
  return toXml(svg);
}

/** Papers are white. */
function paletteOf(scheme: Scheme, bare: boolean): Palette {
  const palette = plainPalettes[scheme];
  return bare && scheme === 'light' ? { ...palette, paper: '#ffffff' } : palette;
}

/** The figure on the page as an SVG file, in the light scheme, which papers and slides are made in. */
export function figureSvg(view: ShownFigure): string {
  const document = view.element.ownerDocument;
  return drawPicture(shownSpec(view), document, view.width, canvasPng(document), { shape: view.shape });
}

/** The figure as a PNG, `scale` px of picture for each px on the page. Browsers only. */
export async function figurePng(view: ShownFigure, scale = 2): Promise<Blob> {
  return svgPng(view.element.ownerDocument, figureSvg(view), scale);
}

/** SVG text as a PNG, `scale` px of picture for each of its own. Browsers only. */
export async function svgPng(document: Document, svg: string, scale = 2): Promise<Blob> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
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
export function canvasPng(document: Document): EncodePng {
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
