import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import type { Plugin } from 'vite';

const drawing = readFileSync(new URL('../public/icon.svg', import.meta.url), 'utf8');

/** Pictures of the icon, by name of the file and pixels along each side. */
export const iconSizes = { 'icon-192.png': 192, 'icon-512.png': 512 } as const;

/** Draws the icon in the sizes that systems ask for. */
export function drawIcons(): Plugin {
  return {
    name: 'stepwell-draw-icons',
    apply: 'build',
    generateBundle() {
      for (const [fileName, width] of Object.entries(iconSizes)) {
        const drawn = new Resvg(drawing, { fitTo: { mode: 'width', value: width } });
        this.emitFile({ type: 'asset', fileName, source: drawn.render().asPng() });
      }
    },
  };
}
