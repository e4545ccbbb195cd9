import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { type DrawnRipples, drawRipples } from './drawRipples.ts';

/** The true values behind the invented micrographs, SI units and rad. */
export const ripplesTruth = {
  pixelPitch: 50e-9,
  /** A field of even regularity, with a caption below. */
  even: { period: 920e-9, direction: 1.64, disorder: 0.12, disorderLength: 1.6e-6 },
  /** Lines too far apart: ripples along each, a rough ground between. */
  uneven: { period: 920e-9, direction: 1.64, disorder: 0.06, disorderLength: 3e-6, lineSpacing: 6e-6 },
  captionRows: 36,
  /** Length of the scale bar in the caption. */
  scaleBar: 5e-6,
};

const inPixels = (length: number) => length / ripplesTruth.pixelPitch;

function ripplesOf({ period, direction, disorder, disorderLength }: typeof ripplesTruth.even) {
  return {
    period: inPixels(period),
    direction,
    disorder,
    disorderLength: inPixels(disorderLength),
    noise: 0.02,
    harmonic: 0.15,
  };
}

/** A rippled field as an electron microscope shows it, with a caption and a scale bar below. */
export function drawEvenField(): CameraImage {
  const [width, height] = [480, 420];
  const ripples: DrawnRipples = { ...ripplesOf(ripplesTruth.even), width, height, amplitude: 0.16, seed: 91 };
  return withCaption(drawRipples({ ...ripples, gradientX: 0.06, roughness: 0.03 }));
}

/** A field whose lines lie too far apart along y, without a caption. */
export function drawUnevenField(): CameraImage {
  const spacing = inPixels(ripplesTruth.uneven.lineSpacing);
  // A line in the middle of each spacing; between them the ripples are all but gone.
  const strength = (_: number, y: number) => 0.08 + 0.92 * Math.sin((Math.PI * y) / spacing) ** 4;
  const ripples = { ...ripplesOf(ripplesTruth.uneven), width: 420, height: 420, amplitude: 0.2, seed: 92 };
  return drawRipples({ ...ripples, strength, roughness: 0.06 });
}

/** Signs of 5 by 7 squares, row by row. */
const signs: Readonly<Record<string, readonly string[]>> = {
  '5': ['#####', '#....', '####.', '....#', '....#', '#...#', '.###.'],
  ' ': ['.....', '.....', '.....', '.....', '.....', '.....', '.....'],
  µ: ['.....', '#..#.', '#..#.', '#..#.', '###.#', '#....', '#....'],
  m: ['.....', '.....', '##.#.', '#.#.#', '#.#.#', '#.#.#', '#.#.#'],
};

/** Replaces the lowest rows by a black caption with a white scale bar and its length. */
function withCaption(image: CameraImage): CameraImage {
  const { width, height } = image;
  const samples = image.samples.slice();
  const top = height - ripplesTruth.captionRows;
  const paint = (x: number, y: number, wide: number, high: number, grey: number) => {
    for (let row = y; row < y + high; row++) samples.fill(grey, row * width + x, row * width + x + wide);
  };
  paint(0, top, width, ripplesTruth.captionRows, 0);
  const bar = inPixels(ripplesTruth.scaleBar);
  paint(width - bar - 24, top + 16, bar, 4, 255);
  [...'5 µm'].forEach((sign, i) => {
    signs[sign]!.forEach((line, row) => {
      for (const [column, square] of [...line].entries())
        if (square === '#') paint(width - bar - 90 + 12 * i + 2 * column, top + 11 + 2 * row, 2, 2, 255);
    });
  });
  return { ...image, samples };
}
