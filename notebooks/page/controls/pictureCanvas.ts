import type { CameraImage } from '../../../lib/measured/cameraImage.ts';
import { type ImagePreview, previewImage } from '../../../lib/measured/imagePreview.ts';
import { element, setAttributes, svgElement } from '../element.ts';
import type { Drawn } from './pictureHandles.ts';

/** A picture with what is drawn on it. */
export interface PictureCanvas {
  readonly element: HTMLElement;
  show(image: CameraImage, region: Drawn | undefined, line: Drawn | undefined): void;
}

/** Larger pictures are averaged to this many blocks along their longer side. */
const mostBlocks = 760;
/** The stage is no higher than this share of the window, so that a drag has room. */
const mostHeight = 70;

export function createPictureCanvas(document: Document): PictureCanvas {
  const canvas = element(document, 'canvas', { class: 'picture-canvas', role: 'img' });
  const shade = svgElement(document, 'path', { class: 'picture-shade', 'fill-rule': 'evenodd' });
  // Twice, in light beneath and in the accent above, so that it shows on dark and bright.
  const twice = (name: string) =>
    ['casing', 'stroke'].map((part) =>
      svgElement(document, 'path', { class: `picture-${name} picture-${part}` }),
    );
  const [frames, lines] = [twice('frame'), twice('line')];
  const over = svgElement(
    document,
    'svg',
    { class: 'picture-over', preserveAspectRatio: 'none', 'aria-hidden': 'true' },
    shade,
    ...frames,
    ...lines,
  );
  const holder = element(document, 'div', { class: 'picture-holder' }, canvas, over);
  let painted: CameraImage | undefined;
  return {
    element: holder,
    show(image, region, line) {
      const { width, height, name } = image;
      if (painted !== image) {
        painted = image;
        paint(canvas, previewImage(image, mostBlocks));
        setAttributes(canvas, { 'aria-label': `${name}, ${width} × ${height} pixels` });
        setAttributes(over, { viewBox: `0 0 ${width} ${height}` });
        Object.assign(holder.style, {
          aspectRatio: `${width} / ${height}`,
          width: `min(100%, ${(mostHeight * width) / height}vh)`,
        });
      }
      const frame = region?.kind === 'region' ? framePath(region.region) : '';
      setAttributes(shade, { d: frame && `M0,0H${width}V${height}H0Z${frame}` });
      for (const path of frames) setAttributes(path, { d: frame });
      for (const path of lines) setAttributes(path, { d: line?.kind === 'line' ? linePath(line.line) : '' });
    },
  };
}

function framePath({ left, top, width, height }: Extract<Drawn, { kind: 'region' }>['region']): string {
  return `M${left},${top}h${width}v${height}h${-width}Z`;
}

function linePath({ start, end }: Extract<Drawn, { kind: 'line' }>['line']): string {
  return `M${start.x},${start.y}L${end.x},${end.y}`;
}

/** Greys from the darkest value, black, to the brightest, white. */
function paint(canvas: HTMLCanvasElement, { columns, rows, values }: ImagePreview): void {
  [canvas.width, canvas.height] = [columns, rows];
  const context = canvas.getContext?.('2d');
  if (!context) return;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) [low, high] = [Math.min(low, value), Math.max(high, value)];
  const pixels = context.createImageData(columns, rows);
  const scale = high > low ? 255 / (high - low) : 0;
  for (let i = 0; i < values.length; i++) {
    const row = rows - 1 - Math.floor(i / columns);
    const grey = (values[i]! - low) * scale;
    pixels.data.set([grey, grey, grey, 255], 4 * (row * columns + (i % columns)));
  }
  context.putImageData(pixels, 0, 0);
}
