import { Problem } from '../problem.ts';
import { lookFirst } from './beamGrid.ts';
import type { CameraImage } from './cameraImage.ts';
import { type FoldedProfile, type Section, valueOnAxis } from './foldedProfile.ts';
import { removeHotPixels } from './hotPixels.ts';
import { measureBeam } from './measureBeam.ts';
import type { BeamNoteKind } from './measuredBeam.ts';

/** Notes of a picture that also count for a spot of any shape. */
const counting: readonly BeamNoteKind[] = ['saturated', 'clipped', 'small-frame', 'few-pixels', 'hot-pixels'];

/**
 * The mean around the centroid of a picture of the spot, one radius for each ring of pixels as far as whole circles lie in
 * the frame, with the standard deviation around each circle, and the two lines through the centroid. `pixelPitch` in metres
 * on the workpiece. Background plane and centroid as for a beam ({@link file://./measureBeam.ts}); hot pixels are replaced.
 * On radii a pixel apart the mean of a ring lies p²/24·f'' from the value at its radius. Throws Problem 'absent' for a
 * picture without a spot.
 */
export function measureSpotPicture(raw: CameraImage, pixelPitch: number): FoldedProfile {
  const beam = measureBeam(raw, pixelPitch);
  const { image } = removeHotPixels(raw, lookFirst(raw));
  const centre = { x: beam.centroid.x / pixelPitch, y: beam.centroid.y / pixelPitch };
  const { level, gradientX, gradientY } = beam.background;
  const light = (column: number, row: number) =>
    image.samples[row * image.width + column]! -
    level -
    (gradientX * (column + 0.5 - centre.x)) / image.width -
    (gradientY * (row + 0.5 - centre.y)) / image.height;
  checkRoom(image, centre);
  const rings = averageRings(image, centre, light);
  const toMetres = (pixels: Float64Array) => pixels.map((x) => x * pixelPitch);
  return {
    radius: toMetres(rings.radius),
    value: rings.value,
    spread: rings.spread,
    sections: [sectionX(image, centre, light), sectionY(image, centre, light)].map((section) => ({
      ...section,
      position: toMetres(section.position),
    })),
    notes: beam.notes.filter(({ kind }) => counting.includes(kind)).map(({ text }) => text),
  };
}

/** Whole circles of pixels that lie in the frame. */
function circlesIn({ width, height }: CameraImage, { x, y }: Place): number {
  return Math.floor(Math.min(x, y, width - x, height - y));
}

function checkRoom(image: CameraImage, centre: Place): void {
  const circles = circlesIn(image, centre);
  if (circles >= 4) return;
  throw new Problem(
    'outside',
    `The middle of the spot lies ${circles} pixels from the edge of "${image.name}", so that no profile around it can be read. Centre the spot on the camera and take another picture.`,
    { value: `${circles} pixels`, allowed: '4 pixels or more' },
  );
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Grey value above the background of a pixel, by column and row. */
type Light = (column: number, row: number) => number;

/**
 * Mean radius and mean of the pixels between k and k + 1 pixels from the centre, the axis before them, and how far the pixels
 * lie from the profile at their own radius: without that, its slope within a ring would count as spread.
 */
function averageRings(image: CameraImage, centre: Place, light: Light) {
  const reach = circlesIn(image, centre);
  const [count, radii, sums, squares] = [0, 1, 2, 3].map(() => new Float64Array(reach)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  forEachPixel(image, centre, reach, light, (ring, r, value) => {
    count[ring]!++;
    radii[ring]! += r;
    sums[ring]! += value;
  });
  // A centre on the corner of four pixels leaves no ring empty: the nearest pixel centre is 0.71 pixels away at most.
  const inner = {
    radius: radii.map((sum, i) => sum / count[i]!),
    value: sums.map((sum, i) => sum / count[i]!),
  };
  const radius = Float64Array.of(0, ...inner.radius);
  const value = Float64Array.of(valueOnAxis(inner.radius, inner.value), ...inner.value);
  forEachPixel(image, centre, reach, light, (ring, r, pixel) => {
    // The ring's own radius is entry ring + 1.
    const from = Math.min(r < radius[ring + 1]! ? ring : ring + 1, reach - 1);
    const share = (r - radius[from]!) / (radius[from + 1]! - radius[from]!);
    squares[ring]! += (pixel - value[from]! - share * (value[from + 1]! - value[from]!)) ** 2;
  });
  const spread = squares.map((sum, i) => Math.sqrt(sum / count[i]!));
  return { radius, value, spread: Float64Array.of(spread[0]!, ...spread) };
}

/** Visits every pixel within `reach` of the centre with its ring, radius in pixels and light. */
function forEachPixel(
  { width, height }: CameraImage,
  centre: Place,
  reach: number,
  light: Light,
  visit: (ring: number, r: number, value: number) => void,
): void {
  const [top, left] = [centre.y, centre.x].map((middle) => Math.max(0, Math.floor(middle - reach)));
  for (let row = top!; row < Math.min(height, centre.y + reach); row++) {
    for (let column = left!; column < Math.min(width, centre.x + reach); column++) {
      const r = Math.hypot(column + 0.5 - centre.x, row + 0.5 - centre.y);
      const ring = Math.floor(r);
      if (ring < reach) visit(ring, r, light(column, row));
    }
  }
}

/** Shares of the two pixels whose centres lie around a place: the first one's index, and the part of the second. */
function between(place: number, count: number): [number, number] {
  const first = Math.min(Math.max(0, Math.floor(place - 0.5)), Math.max(0, count - 2));
  return [first, Math.min(1, Math.max(0, place - 0.5 - first))];
}

/** Along the row through the centre, linear between the two nearest rows. */
function sectionX({ width, height }: CameraImage, centre: Place, light: Light): Section {
  const [row, share] = between(centre.y, height);
  return {
    along: 'x',
    position: Float64Array.from({ length: width }, (_, column) => column + 0.5 - centre.x),
    value: Float64Array.from(
      { length: width },
      (_, column) => (1 - share) * light(column, row) + share * light(column, Math.min(row + 1, height - 1)),
    ),
  };
}

/** Along the column through the centre, linear between the two nearest columns. */
function sectionY({ width, height }: CameraImage, centre: Place, light: Light): Section {
  const [column, share] = between(centre.x, width);
  return {
    along: 'y',
    position: Float64Array.from({ length: height }, (_, row) => row + 0.5 - centre.y),
    value: Float64Array.from(
      { length: height },
      (_, row) => (1 - share) * light(column, row) + share * light(Math.min(column + 1, width - 1), row),
    ),
  };
}
