/** A scan that is to be stepped through: `scans` lines of one head with `spots` spots `stride` lines apart; SI. */
export interface SteppedScan {
  readonly width: number;
  readonly lineSpacing: number;
  readonly speed: number;
  readonly acceleration: number;
  readonly rate: number;
  readonly spots: number;
  readonly stride: number;
  readonly lines: number;
}

/** Places of all pulses, line by line as they are written, and the time it takes. */
export interface Stepped {
  readonly x: number[];
  readonly y: number[];
  readonly line: number[];
  /** Times that the head goes along a line with at least one spot on it. */
  readonly scans: number;
  readonly time: number;
}

/**
 * The head, step by step in time: from rest beside the field to full speed, over the line with the laser on and to rest
 * again, to and fro. Lines of a group of `spots` · `stride` are written `stride` scans long, spot after spot `stride` lines
 * apart. Independent of the library; positions to v·dt.
 */
export function stepScan(scan: SteppedScan, dt: number): Stepped {
  const found: Stepped = { x: [], y: [], line: [], scans: 0, time: 0 };
  let [time, scans] = [0, 0];
  let forward = true;
  const group = scan.spots * scan.stride;
  for (let first = 0; first < scan.lines; first += group) {
    for (let j = 0; j < scan.stride; j++) {
      const written = Array.from({ length: scan.spots }, (_, k) => first + k * scan.stride + j);
      if (written.every((line) => line >= scan.lines)) continue;
      const { places, steps } = stepLine(scan, dt);
      scans++;
      for (const line of written.filter((one) => one < scan.lines)) {
        for (const place of places) {
          found.x.push(forward ? place : scan.width - place);
          found.y.push((line + 0.5) * scan.lineSpacing);
        }
        found.line.push(line);
      }
      time += steps * dt;
      forward = !forward;
    }
  }
  return { ...found, scans, time };
}

/** One line: places of its pulses from its beginning, and the number of time steps. */
function stepLine({ width, speed, acceleration, rate }: SteppedScan, dt: number) {
  const places: number[] = [];
  let [at, v, steps] = [-(speed ** 2) / (2 * acceleration), 0, 0];
  // Pulses come half a period after the line begins, then one every period.
  let since = 0.5 / rate;
  let slowing = false;
  for (;;) {
    if (at >= width) slowing = true;
    const next = slowing ? v - acceleration * dt : Math.min(speed, v + acceleration * dt);
    if (slowing && next <= 0) return { places, steps };
    const moved = ((v + next) / 2) * dt;
    const inside = at + moved > 0 && at < width;
    if (inside) {
      since += Math.min(dt, (at + moved) / speed);
      if (since >= 1 / rate) {
        since -= 1 / rate;
        places.push(at + moved - since * speed);
      }
    }
    at += moved;
    v = next;
    steps++;
  }
}
