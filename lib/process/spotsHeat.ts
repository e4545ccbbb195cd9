import { errorFunction } from '../numerics/complexErrorFunction.ts';
import { smoothSum } from '../numerics/smoothSum.ts';
import { evenFieldRise } from './heatArea.ts';
import { depthFactor, type HeatInput, pulseRise, spreadSquare } from './heatPulse.ts';

/** Spots in a row across the lines, and the field that they write together; SI. */
export interface SpotsField {
  readonly spots: number;
  /** From spot to spot. */
  readonly distance: number;
  readonly pulseSpacing: number;
  /** Hz. */
  readonly rate: number;
  readonly width: number;
  readonly height: number;
  readonly lineSpacing: number;
  readonly directions: 'both' | 'one';
  /** With the laser on along a line, and from the beginning of a scan to that of the next, s. */
  readonly lineTime: number;
  readonly scanTime: number;
  readonly passes: number;
  /** s. */
  readonly passTime: number;
}

/** Rise from all other spots, K: those beside it in the same scan, and what all of them left in scans before. */
export interface OthersRise {
  readonly beside: number;
  readonly before: number;
}

/** Exponent from which on a Gaussian counts nothing. */
const deadFrom = 45;
/** Fewest scans, and fewest groups, that are taken together. */
const least = 8;
/** How far heat must have spread, in distances of the spots, that a row of them counts as even: to 1e-6. */
const evenRow = 2;

/** Where along a line, as a part of it, others are looked at: the line before turned round just now near its beginning. */
const alongLine = [1 / 32, 1 / 8, 1 / 2];
/** Scans ago from which on to and fro are no longer told apart. */
const oldFrom = 8;

/**
 * Rise that the other spots of a row add where the middle one writes the last line of its strip, at the hottest of three
 * places along it. A row fills one strip of lines as high as the distance of its spots for each spot, then goes on to the
 * next: the sum takes in all lines of all spots but that one, in this order, each scan before as old everywhere as where
 * the place lies; passes before the last count as even over the field. Interlaced lines count as if written in turn.
 * Added to the rise of one spot that writes the field line by line, it is between 2 % below and 7 % above the highest
 * sum of every pulse of every spot (tests/process/spotsHeat.test.ts).
 */
export function otherSpotsRise(heat: HeatInput, field: SpotsField): OthersRise {
  if (field.spots < 2) return { beside: 0, before: 0 };
  const old = oldScans(heat, field) + passesBefore(heat, field);
  let best: OthersRise | undefined;
  for (const part of alongLine) {
    const beside = besideRise(heat, field, part);
    const before = youngScans(heat, field, part) + old;
    if (best === undefined || beside + before > best.beside + best.before) best = { beside, before };
  }
  return best!;
}

/** How many of the other spots stand on one side of the middle one, and how many on the other. */
function sides({ spots }: Pick<SpotsField, 'spots'>) {
  const below = Math.floor((spots - 1) / 2);
  return { below, above: spots - 1 - below };
}

/** Scans from one group to the next: lines of a strip, and strips on top of one another in the field. */
function groupsOf({ spots, distance, height, lineSpacing }: SpotsField) {
  const strip = Math.max(1, Math.round(distance / lineSpacing));
  const lines = Math.max(1, Math.ceil(height / lineSpacing - 1e-9));
  return { strip: Math.min(strip, lines), groups: Math.max(1, Math.floor(lines / (strip * spots))) };
}

/** How far behind the next pulse, in radii, spots that stand close to one another are looked at. */
const behindClose = [0, 1 / 2, 1];
/** Spots closer than so many radii heat the same places while they pass. */
const closeBelow = 4;

/** From the lines that the neighbours are writing beside it, that part of them done. */
function besideRise(heat: HeatInput, field: SpotsField, part: number): number {
  const { distance, pulseSpacing, width } = field;
  const count = Math.max(1, Math.round((part * width) / pulseSpacing));
  const behind = distance < closeBelow * heat.radius ? behindClose : [0];
  return Math.max(...behind.map((radii) => rowBeside(heat, field, count, radii * heat.radius)));
}

/** From `count` pulses of all neighbours at a place that lies `behind` (m) the next pulse. */
function rowBeside(heat: HeatInput, field: SpotsField, count: number, behind: number): number {
  const { below, above } = sides(field);
  const reach = Math.sqrt((deadFrom / 2) * spreadSquare(heat, count / field.rate));
  const { distance, pulseSpacing, rate } = field;
  const one = (k: number) => lineBeside(heat, field, count, { across: k * distance, behind });
  // Ahead and aside of a moving source the rise falls over 2χ/v.
  const ahead = (2 * heat.diffusivity) / (pulseSpacing * rate);
  const pairs = smoothSum((k) => 2 * one(k), 1, below, {
    scale: (k) => Math.max(heat.radius, Math.min(k * distance, ahead)) / distance,
    least,
    done: (k) => k * distance > reach,
  });
  return pairs + (above > below && above * distance <= reach ? one(above) : 0);
}

/** From the pulses of one of them, at the distance `across` (m). */
function lineBeside(
  heat: HeatInput,
  { pulseSpacing, rate }: SpotsField,
  count: number,
  { across, behind }: { readonly across: number; readonly behind: number },
): number {
  const square = (n: number) => (n * pulseSpacing - behind) ** 2 + across * across;
  const spread = (n: number) => spreadSquare(heat, n / rate);
  // Before this the exponent falls as heat comes across, after it the line is ever further away.
  const turn = behind / pulseSpacing + (2 * deadFrom * heat.diffusivity) / (rate * pulseSpacing ** 2);
  return smoothSum((n) => pulseRise(heat, square(n), n / rate), 1, count, {
    scale: (n) => Math.min(n, (2 * Math.sqrt(spread(n))) / pulseSpacing),
    done: (n) => n > turn && 2 * square(n) > deadFrom * spread(n),
  });
}

/** From the last scans of the last pass, at that part of a line. */
function youngScans(heat: HeatInput, field: SpotsField, part: number): number {
  const { strip, groups } = groupsOf(field);
  let sum = 0;
  for (let ago = 1; ago < Math.min(oldFrom, groups * strip); ago++) {
    const turned = field.directions === 'both' && ago % 2 === 1 ? (2 * part - 1) * field.lineTime : 0;
    const across = acrossOf(field, strip, Math.floor(ago / strip), ago % strip);
    sum += scanRise(heat, field, { age: ago * field.scanTime + turned, across, part });
  }
  return sum;
}

/** How far below the place the middle spot wrote, so many groups and lines of a strip before. */
function acrossOf({ spots, lineSpacing }: SpotsField, strip: number, groups: number, line: number): number {
  return (groups * spots * strip + line) * lineSpacing;
}

/** From all scans of the last pass before those, half-way along the lines. */
function oldScans(heat: HeatInput, field: SpotsField): number {
  const { lineSpacing, scanTime, spots } = field;
  const { strip, groups } = groupsOf(field);
  const wide = (ago: number) => Math.sqrt(spreadSquare(heat, Math.max(ago, 1) * scanTime)) / lineSpacing;
  const groupRise = (before: number) => {
    const ago = (i: number) => before * strip + i;
    const term = (i: number) => {
      const across = acrossOf(field, strip, before, i);
      return scanRise(heat, field, { age: ago(i) * scanTime, across, part: 0.5 });
    };
    return smoothSum(term, Math.max(0, oldFrom - before * strip), strip - 1, {
      scale: (i) => Math.min(ago(i), 2 * wide(ago(i))),
      least,
    });
  };
  return smoothSum(groupRise, 0, groups - 1, {
    scale: (before) => Math.min(before, (2 * wide(before * strip)) / (spots * strip)),
    least: Math.max(least, oldFrom),
  });
}

/** How old a scan is (s), how far below the place (m) the middle spot wrote, and at which part of a line the place lies. */
interface ScanAgo {
  readonly age: number;
  readonly across: number;
  readonly part: number;
}

/** What the others left in a scan that long ago. */
function scanRise(heat: HeatInput, field: SpotsField, { age, across, part }: ScanAgo): number {
  const width = Math.sqrt(spreadSquare(heat, age));
  const reached = (length: number) => covers((Math.SQRT2 * length) / width);
  const covered = (reached(part * field.width) + reached((1 - part) * field.width)) / 2;
  const line = (heat.energy / field.pulseSpacing) * (Math.sqrt(2 / Math.PI) / width) * covered;
  return line * depthFactor(heat, age) * rowOf(field, width, across);
}

/** The error function, which is 1 to 1e-16 beyond 6. */
const covers = (x: number) => (Math.abs(x) > 6 ? Math.sign(x) : errorFunction(x));

/** Σ exp(−2y²/w²) over the others, the middle one at the distance `across`. */
function rowOf(field: SpotsField, width: number, across: number): number {
  const { distance } = field;
  const { below, above } = sides(field);
  const one = (y: number) => Math.exp(-2 * (y / width) ** 2);
  if (width > evenRow * distance) {
    const reached = (y: number) => covers((Math.SQRT2 * y) / width);
    const ends = reached((above + 0.5) * distance - across) + reached((below + 0.5) * distance + across);
    return Math.sqrt(Math.PI / 8) * (width / distance) * ends - one(across);
  }
  const reach = Math.sqrt(deadFrom / 2) * width;
  const first = Math.max(-below, Math.ceil((across - reach) / distance));
  const last = Math.min(above, Math.floor((across + reach) / distance));
  let sum = 0;
  for (let k = first; k <= last; k++) if (k !== 0) sum += one(k * distance - across);
  return sum;
}

/** From passes before the last. */
function passesBefore(heat: HeatInput, field: SpotsField): number {
  const { width, height, passes, passTime, spots, pulseSpacing, lineSpacing } = field;
  if (passes === 1) return 0;
  const energy = (heat.energy * width * height) / (pulseSpacing * lineSpacing);
  const size = { width, height, power: (energy * (1 - 1 / spots)) / passTime };
  return (
    evenFieldRise(heat, { ...size, time: passes * passTime }) -
    evenFieldRise(heat, { ...size, time: passTime })
  );
}
