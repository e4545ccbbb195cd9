import { spawnSync } from 'node:child_process';
import { fieldAt } from '../../lib/optics/focalField.ts';
import { spaced } from '../../lib/optics/focusMaps.ts';
import { createThroughFocusSource, throughFocusMap } from '../../lib/optics/throughFocusMap.ts';
import type { Zone } from '../../lib/optics/zones.ts';
import { percentile, type Row, timeRuns } from './timing.ts';

const rounds = 40;
/** Radii out to the cone of light at |ζ| = 7: v = 2κϱ = 33.6 for ϱ = 16.8. */
const radii = spaced(0, 33.6, 512);
const planes = spaced(-7, 7, 401);
const plate = (phase: number): Zone[] => [
  { outer: 1, phase },
  { outer: 1.4, phase: 0 },
];

/**
 * The r–z map through the focus (512 radii, 401 planes, ζ = −7 to 7), interpolated between the planes that fix it, and
 * the product of all planes in numpy beside it, for which the Bessel matrix is given.
 */
export function benchMap(): Row[] {
  const timeMap = (phase: number) =>
    timeRuns(() => throughFocusMap(plate(phase), 1, radii, planes), rounds, 10);
  const half = timeMap(Math.PI);
  const full = timeMap(0.9 * Math.PI);
  const { nodes } = createThroughFocusSource(plate(Math.PI), 1, 33.6, 7);
  const size = `${radii.length} × ${planes.length}, ${nodes.length} nodes`;
  const rows: Row[] = [
    {
      what: `r–z map ${size}: any phase, with its Bessel matrix`,
      times: full,
      remark: `off by ${largestError().toExponential(1)}`,
    },
    { what: `r–z map ${size}: half a wave, planes mirrored`, times: half },
  ];
  for (const threads of [1, 2]) rows.push(...benchNumpy(nodes.length, threads, full, half));
  return rows;
}

/** Against single points at every 16th radius and 8th plane. */
function largestError(): number {
  const zones = plate(0.9 * Math.PI);
  const map = throughFocusMap(zones, 1, radii, planes);
  let most = 0;
  for (let row = 0; row < planes.length; row += 8) {
    for (let column = 0; column < radii.length; column += 16) {
      const { re, im } = fieldAt(zones, radii[column]! / 2, planes[row]!);
      most = Math.max(most, Math.abs(map[row * radii.length + column]! - re * re - im * im));
    }
  }
  return most;
}

/** Source of all planes, complex product with the real Bessel matrix, and |U|²; the matrix itself is given. */
const program = `
import json, sys, time
import numpy as np
count, rounds = int(sys.argv[1]), int(sys.argv[2])
t, w = np.polynomial.legendre.leggauss(count)
s = 0.7 * (t + 1)
amplitude = 2 * s * 0.7 * w * np.exp(-s * s) * np.exp(1j * 0.9 * np.pi * (s < 1))
planes = np.linspace(-7, 7, 401)
angle = np.linspace(0, np.pi, 201)
v = np.linspace(0, 33.6, 512)
bessel = np.mean(np.cos(v[:, None, None] * s[None, :, None] * np.sin(angle)), axis=2)
both = bessel.astype(complex)
times = {'complex': [], 'real': []}
for kind in times:
    for i in range(rounds + 10):
        start = time.perf_counter()
        source = amplitude[:, None] * np.exp(-1j * np.outer(s * s, planes))
        if kind == 'complex':
            field = both @ source
            value = field.real ** 2 + field.imag ** 2
        else:
            value = (bessel @ source.real) ** 2 + (bessel @ source.imag) ** 2
        if i >= 10:
            times[kind].append(1e3 * (time.perf_counter() - start))
print(json.dumps(times))
`;

function benchNumpy(nodes: number, threads: number, full: readonly number[], half: readonly number[]): Row[] {
  const { OPENBLAS_CORETYPE: _core, OPENBLAS_L2_SIZE: _cache, ...env } = process.env;
  const name = `numpy, all planes, ${threads === 1 ? 'one thread' : `${threads} threads`}`;
  const result = spawnSync('python3', ['-c', program, String(nodes), String(rounds)], {
    encoding: 'utf8',
    env: { ...env, OPENBLAS_NUM_THREADS: String(threads), OMP_NUM_THREADS: String(threads) },
  });
  if (result.status !== 0) return [{ what: name, remark: 'python3 with numpy is not there' }];
  const times = JSON.parse(result.stdout) as { complex: number[]; real: number[] };
  const ratio = (ours: readonly number[], theirs: readonly number[]) =>
    (percentile(ours, 0.5) / percentile(theirs, 0.5)).toFixed(2);
  const remark = (theirs: readonly number[]) =>
    `ours takes ${ratio(full, theirs)} times as long, ${ratio(half, theirs)} mirrored`;
  return [
    { what: `${name}, complex`, times: times.complex, remark: remark(times.complex) },
    { what: `${name}, as two real products`, times: times.real, remark: remark(times.real) },
  ];
}
