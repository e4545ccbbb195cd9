import type { MapSpec } from '../../mapSpec.ts';
import type { Layout } from './layout.ts';
import { paintMap, pixelRows } from './mapPicture.ts';
import type { Scheme } from './palette.ts';

/** A map on the page: a canvas of one pixel a value, stretched behind the frame. */
export interface PageMap {
  readonly element: HTMLElement;
  place(layout: Layout, map: MapSpec): void;
  paint(map: MapSpec, scheme: Scheme): void;
}

export function createPageMap(document: Document): PageMap {
  const element = document.createElement('div');
  element.className = 'figure-map';
  element.setAttribute('aria-hidden', 'true');
  const canvas = document.createElement('canvas');
  element.append(canvas);
  let pixels: ImageData | undefined;
  return {
    element,
    place({ left, top, width, height, frameWidth, frameHeight }, map) {
      const [columns, rows] = [map.columns, pixelRows(map)];
      // Shares of the drawing, so that a page that shrinks the figure keeps the map in its frame.
      setBox(element, left / width, top / height, frameWidth / width, frameHeight / height);
      // Values stand at grid points, the first and last on the frame: half a cell lies outside on each side.
      const [across, down] = [Math.max(columns - 1, 1), Math.max(rows - 1, 1)];
      setBox(canvas, -0.5 / across, -0.5 / down, columns / across, rows / down);
    },
    paint(map, scheme) {
      const context = canvas.getContext('2d');
      if (!context) return;
      const rows = pixelRows(map);
      if (!pixels || pixels.width !== map.columns || pixels.height !== rows) {
        [canvas.width, canvas.height] = [map.columns, rows];
        pixels = context.createImageData(map.columns, rows);
      }
      paintMap(map, scheme, pixels.data);
      context.putImageData(pixels, 0, 0);
    },
  };
}

function setBox(element: HTMLElement, left: number, top: number, width: number, height: number): void {
  const percent = (share: number) => `${(share * 100).toFixed(4)}%`;
  Object.assign(element.style, {
    left: percent(left),
    top: percent(top),
    width: percent(width),
    height: percent(height),
  });
}
