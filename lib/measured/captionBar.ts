import type { CameraImage } from './cameraImage.ts';
import type { PictureRegion } from './markLevels.ts';

/** Rows that the microscope wrote on, from 0, both included. */
export interface WrittenRows {
  readonly first: number;
  readonly last: number;
  /** A bar of one grey with text, or a scale bar with its text on the picture itself. */
  readonly kind: 'caption' | 'scale bar';
}

/** Levels of grey that a caption is told by: its ground keeps within one of them through a JPEG. */
const levels = 64;
/** Share of a row that the ground of a caption takes beside its text, and share in a line of one grey. */
const groundShare = 0.45;
const lineShare = 0.95;
/** Rows free of text that a caption has above and below it; an even part of a picture with scratches has none. */
const leastFree = 3;
/** Rows of a picture's height that a caption may take. */
const mostShare = 0.3;
const leastRows = 8;
/** Rows of a frame or of dense text that may lie within a caption. */
const gap = 3;

/** The rows at the lower and the upper edge that hold a caption or a scale bar; none, one or two. */
export function findWrittenRows(image: CameraImage): WrittenRows[] {
  const range = rangeOf(image);
  const found = (['lower', 'upper'] as const).flatMap((edge) => findCaption(image, range, edge) ?? []);
  if (found.length > 0) return found;
  const bar = findScaleBar(image, range);
  return bar ? [bar] : [];
}

/** What a region keeps without the written rows; undefined where that is nothing. */
export function withoutRows(region: PictureRegion, rows: readonly WrittenRows[]): PictureRegion | undefined {
  let [top, bottom] = [region.top, region.top + region.height];
  for (const { first, last } of rows) {
    if (last < top || first >= bottom) continue;
    if (first - top > bottom - 1 - last) bottom = first;
    else top = last + 1;
  }
  return bottom > top ? { ...region, top, height: bottom - top } : undefined;
}

type Edge = 'lower' | 'upper';
/** Lowest and highest grey of a picture. */
type Range = readonly [low: number, high: number];

function findCaption(image: CameraImage, range: Range, edge: Edge): WrittenRows | undefined {
  const { height } = image;
  const rowAt = (i: number) => (edge === 'lower' ? height - 1 - i : i);
  const level = levelOf(range);
  const edgeRows = Math.max(4, Math.ceil(height / 100));
  const counts = new Float64Array(levels);
  for (let i = 0; i < edgeRows; i++) countRow(image, rowAt(i), level, counts);
  const ground = counts.indexOf(Math.max(...counts));
  let free = 0;
  const isWritten = (i: number) => {
    const row = new Float64Array(levels);
    countRow(image, rowAt(i), level, row);
    const share = (at: number) => ((row[at - 1] ?? 0) + row[at]! + (row[at + 1] ?? 0)) / image.width;
    const isFree = share(row.indexOf(Math.max(...row))) >= lineShare;
    if (isFree) free++;
    return isFree || share(ground) >= groundShare;
  };
  const rows = countFromEdge(isWritten, Math.floor(mostShare * height));
  if (free < leastFree || rows < leastRows || rows >= Math.floor(mostShare * height)) return undefined;
  // A picture that is as even as this all over has no caption.
  const above = Array.from({ length: 4 * leastRows }, (_, i) =>
    isWritten(Math.min(height - 1, rows + gap + i)),
  );
  if (above.filter(Boolean).length > leastRows / 2) return undefined;
  return edge === 'lower'
    ? { first: height - rows, last: height - 1, kind: 'caption' }
    : { first: 0, last: rows - 1, kind: 'caption' };
}

/** Rows from the edge up to the last that is written on, across gaps. */
function countFromEdge(isWritten: (i: number) => boolean, most: number): number {
  let rows = 0;
  for (let i = 0; i < most && i - rows <= gap; i++) if (isWritten(i)) rows = i + 1;
  return rows;
}

function levelOf([low, high]: Range): (value: number) => number {
  const scale = high > low ? levels / (high - low) : 0;
  return (value) => Math.min(levels - 1, Math.floor((value - low) * scale));
}

function countRow(
  { samples, width }: CameraImage,
  row: number,
  level: (value: number) => number,
  counts: Float64Array,
): void {
  for (let i = row * width; i < (row + 1) * width; i++) counts[level(samples[i]!)]! += 1;
}

function rangeOf({ samples }: CameraImage): Range {
  let [low, high] = [samples[0]!, samples[0]!];
  for (let i = 1; i < samples.length; i++) {
    const value = samples[i]!;
    if (value < low) low = value;
    else if (value > high) high = value;
  }
  return [low, high];
}

/** Share of the width that a scale bar takes at least, and of the height within which it lies from an edge. */
const barShare = 1 / 40;
const nearEdge = 0.25;

/**
 * A bar in the highest grey of the picture near its lower or upper edge, with the text beside it, drawn on the picture
 * itself. None where that grey occurs elsewhere too, as in an overexposed picture.
 */
function findScaleBar(image: CameraImage, [low, high]: Range): WrittenRows | undefined {
  const { height, width } = image;
  const bright = high - 0.02 * (high - low);
  const edge = Math.floor(nearEdge * height);
  const runs = longestRuns(image, bright, (row) => row < edge || row >= height - edge);
  const bars = [...runs.keys()].filter((row) => runs[row]! >= Math.max(16, barShare * width));
  if (bars.length < 2 || !isSharp(image, bars, low + 0.8 * (high - low))) return undefined;
  let [first, last] = [bars[0]!, bars.at(-1)!];
  const written = (row: number) => (runs[row] ?? 0) >= 2;
  for (let i = 1; i <= gap; i++) {
    if (written(first - i)) [first, i] = [first - i, 0];
    if (written(last + i)) [last, i] = [last + i, 0];
  }
  const others = longestRuns(image, bright, (row) => row < first || row > last);
  const elsewhere = others.filter((run) => run >= 2).length;
  if (elsewhere > 0.01 * height || last - first > edge) return undefined;
  // A few rows more, for the soft rim of the signs.
  return { first: Math.max(0, first - gap), last: Math.min(height - 1, last + gap), kind: 'scale bar' };
}

/** True where just above and below the bar its column is much darker: bright spots of the surface fade. */
function isSharp({ samples, width, height }: CameraImage, bars: readonly number[], dark: number): boolean {
  const row = bars[bars.length >> 1]!;
  let column = 0;
  for (let x = 0, run = 0, most = 0; x < width; x++) {
    run = samples[row * width + x]! > dark ? run + 1 : 0;
    if (run > most) [most, column] = [run, x - (run >> 1)];
  }
  const isDark = (y: number) => y < 0 || y >= height || samples[y * width + column]! < dark;
  return isDark(bars[0]! - 2) && isDark(bars.at(-1)! + 2);
}

/** Of each row that counts, the most neighbouring pixels of at least `bright`; 0 in the others. */
function longestRuns(
  { samples, width, height }: CameraImage,
  bright: number,
  counts: (row: number) => boolean,
): Float64Array {
  const runs = new Float64Array(height);
  for (let row = 0; row < height; row++) {
    if (!counts(row)) continue;
    let most = 0;
    for (let i = row * width, run = 0; i < (row + 1) * width; i++) {
      run = samples[i]! >= bright ? run + 1 : 0;
      if (run > most) most = run;
    }
    runs[row] = most;
  }
  return runs;
}
