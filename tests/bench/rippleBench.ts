import { spawnSync } from 'node:child_process';
import { drawRipples } from '../../data/measured/drawRipples.ts';
import { measureRipples } from '../../lib/measured/ripplePicture.ts';
import { percentile, type Row, timeRuns } from './timing.ts';

const rounds = 10;
const drawn = { period: 13.5, direction: 1.45, amplitude: 0.2, noise: 0.05, disorder: 0.1 };

/** A micrograph of 2048² pixels measured, aim 500 ms, and spectra and gradients of the same size in scipy beside it. */
export function benchRipples(): Row[] {
  const image = drawRipples({ ...drawn, width: 2048, height: 2048 });
  let [longest, before] = [0, 0];
  const progress = () => {
    longest = Math.max(longest, performance.now() - before);
    before = performance.now();
  };
  const start = () => {
    before = performance.now();
  };
  const times = timeRuns(() => measureRipples(image, {}, { progress }), rounds, 3, start);
  const { tile } = measureRipples(image);
  const ours: Row = {
    what: `ripples in a micrograph, 2048 × 2048, ${tile.count} tiles of ${tile.size}`,
    times,
    remark: `longest step ${longest.toFixed(0)} ms`,
  };
  return [ours, benchScipy(times)];
}

/** The same tiles' spectra and the same gradients with their distribution; no peak, no tests, no map. */
const program = `
import json, sys, time
import numpy as np
from scipy.fft import rfft2
from scipy.ndimage import gaussian_filter
rounds = int(sys.argv[1])
y, x = np.mgrid[0:2048, 0:2048]
picture = np.cos(0.4654 * (x * np.cos(1.45) + y * np.sin(1.45))) + np.random.default_rng(1).normal(0, 0.25, x.shape)
window = np.outer(np.hanning(513)[:512], np.hanning(513)[:512])
times = []
for i in range(rounds + 2):
    start = time.perf_counter()
    power = np.zeros((512, 257))
    for top in range(0, 1537, 384):
        for left in range(0, 1537, 384):
            tile = picture[top:top + 512, left:left + 512]
            f = rfft2((tile - tile.mean()) * window, workers=1)
            power += f.real ** 2 + f.imag ** 2
    gx = gaussian_filter(picture, 2, order=(0, 1))
    gy = gaussian_filter(picture, 2, order=(1, 0))
    np.histogram(np.arctan2(gy, gx) % np.pi, 720, (0, np.pi), weights=np.hypot(gx, gy))
    if i >= 2:
        times.append(1e3 * (time.perf_counter() - start))
print(json.dumps(times))
`;

function benchScipy(ours: readonly number[]): Row {
  const what = 'scipy: spectra of as many tiles and gradients at every pixel, one thread';
  const result = spawnSync('python3', ['-c', program, String(rounds)], {
    encoding: 'utf8',
    env: { ...process.env, OMP_NUM_THREADS: '1' },
  });
  if (result.status !== 0) return { what, remark: 'python3 with scipy is not there' };
  const times = JSON.parse(result.stdout) as number[];
  return {
    what,
    times,
    remark: `ours takes ${(percentile(ours, 0.5) / percentile(times, 0.5)).toFixed(2)} times as long`,
  };
}
