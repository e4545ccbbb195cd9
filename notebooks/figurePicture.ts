import { encode } from 'fast-png';
import type { FigureSpec } from './document.ts';
import { drawPicture, type PictureOptions } from './page/figures/exportFigure.ts';
import type { EncodePng } from './page/figures/mapPicture.ts';

const encodePng: EncodePng = (data, width, height) => {
  const bytes = encode({ width, height, data, channels: 4, depth: 8 });
  return `data:image/png;base64,${Buffer.from(bytes).toString('base64')}`;
};

/**
 * A figure as SVG text that stands alone, without a browser: `document` may be a parsed one in Node. Width in px,
 * light and wide by default. Colours are plain and the font has fallbacks; the map is a PNG inside.
 */
export function drawFigureStatic(
  spec: FigureSpec,
  document: Document,
  width: number,
  options: PictureOptions = {},
): string {
  return drawPicture(spec, document, width, encodePng, options);
}
