import { spawnSync } from 'node:child_process';
import { createRandom } from '../../lib/numerics/random.ts';
import { type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { pulseMap } from '../../lib/process/pulseMap.ts';
import { lightBehind } from '../optics/lightBehind.ts';
import { percentile, type Row, timeRuns } from './timing.ts';

const count = 1000;
const grid = { left: 0, bottom: 0, step: 1e-6, columns: count, rows: count };

const round = lightBehind([
  { outer: 1, phase: Math.PI },
  { outer: 1.4, phase: 0 },
]);
const crossed: Light = {
  ...round,
  plate: { kind: 'crossed', halfWidthX: 5.4e-3, halfWidthY: 5.4e-3, phase: Math.PI, stop: 7e-3 },
};

/** A million pulses over a square millimetre, 1 µm apart and each off its place by up to 0.3 µm. */
function millionPulses() {
  const random = createRandom(6401);
  const place = (index: (i: number) => number) =>
    Float64Array.from({ length: count * count }, (_, i) => (index(i) + random.between(-0.3, 0.3)) * 1e-6);
  return { x: place((i) => i % count), y: place((i) => Math.floor(i / count)) };
}

/** Accumulated fluence of a million pulses over 1 mm² at 1 µm, aim 1 s, beside adding up and numpy. */
export function benchPulses(): Row[] {
  const pulses = millionPulses();
  const rows = [
    { name: 'round step with stop', light: round, plane: 0.42 },
    { name: 'crossed steps with stop', light: crossed, plane: 0 },
  ].map(({ name, light, plane }): Row => {
    const spot = spotAt(light, planeOfDefocus(light, plane));
    const times = timeRuns(() => pulseMap(spot, pulses, grid), 5, 1);
    return { what: `a million pulses over 1 mm² at 1 µm, ${name}`, times };
  });
  return [...rows, addedUp(pulses), benchNumpy(rows[0]!.times!)];
}

/** Adding up, each pulse out to the reach of its profile: a thousandth of the points, times a thousand. */
function addedUp({ x, y }: ReturnType<typeof millionPulses>): Row {
  const spot = spotAt(round, planeOfDefocus(round, 0.42));
  const reach = 60e-6;
  let kept = 0;
  const times = timeRuns(
    () => {
      for (let n = 0; n < count; n++) {
        const [atX, atY] = [((n * 37) % count) * 1e-6, ((n * 101) % count) * 1e-6];
        for (let i = 0; i < x.length; i++) {
          const [dx, dy] = [atX - x[i]!, atY - y[i]!];
          if (dx * dx + dy * dy < reach * reach) kept += spot.irradianceAt(dx, dy);
        }
      }
    },
    1,
    0,
  );
  const all = times.map((time) => time * count);
  return {
    what: 'the same by adding up to 60 µm only, from a thousandth',
    times: all,
    remark: `sum ${kept > 0}`,
  };
}

/** Pulses shared between the four nearest points of 2048², transformed, times a table of the spectrum, and back. */
const program = `
import json, sys, time
import numpy as np
rounds = int(sys.argv[1])
n, size = 1000, 2048
rng = np.random.default_rng(1)
x = (np.arange(n * n) % n + rng.uniform(-0.3, 0.3, n * n)) % size
y = (np.arange(n * n) // n + rng.uniform(-0.3, 0.3, n * n)) % size
q = 2 * np.pi * np.hypot(np.fft.fftfreq(size)[:, None], np.fft.rfftfreq(size)[None, :])
table = np.linspace(0, 1, 200)
times = []
for i in range(rounds + 1):
    start = time.perf_counter()
    column, row = np.floor(x).astype(int), np.floor(y).astype(int)
    u, v = x - column, y - row
    grid = np.zeros(size * size)
    for dj, wy in ((0, 1 - v), (1, v)):
        for di, wx in ((0, 1 - u), (1, u)):
            at = (row + dj) % size * size + (column + di) % size
            grid += np.bincount(at, wx * wy, size * size)
    modes = np.fft.rfft2(grid.reshape(size, size)) * np.interp(q, np.linspace(0, 4, 200), table)
    np.fft.irfft2(modes)
    if i:
        times.append(1e3 * (time.perf_counter() - start))
print(json.dumps(times))
`;

function benchNumpy(ours: readonly number[]): Row {
  const what = 'numpy: pulses shared between four points of 2048², FFT and back, one thread';
  const result = spawnSync('python3', ['-c', program, '5'], {
    encoding: 'utf8',
    env: { ...process.env, OMP_NUM_THREADS: '1' },
  });
  if (result.status !== 0) return { what, remark: 'python3 with numpy is not there' };
  const times = JSON.parse(result.stdout) as number[];
  const ratio = percentile(ours, 0.5) / percentile(times, 0.5);
  return { what, times, remark: `ours takes ${ratio.toFixed(2)} times as long` };
}
