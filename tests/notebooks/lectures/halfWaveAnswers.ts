import { inStep } from './halfWaveStep.ts';

interface Waves {
  readonly radius: Float64Array;
  readonly whole: Float64Array;
  readonly centre: Float64Array;
}

/** Radius at which a wave has fallen to half of its height on the axis. */
export function halfRadius(radius: Float64Array, wave: Float64Array): number {
  return radius[wave.findIndex((value) => value < wave[0]! / 2)]!;
}

/** Place of three that says whether a number grew, stayed within a point, or fell. */
function grewStayedFell(before: number, after: number, [grew, stayed, fell]: readonly number[]): number {
  if (Math.abs(after - before) <= 0.01) return stayed!;
  return after > before ? grew! : fell!;
}

/** Planes in Rayleigh lengths, a hundredth apart, where the spot counts as flat. */
export function flatPlanes(step: string, reach: number): number[] {
  const zR = inStep(step)('focus.rayleighLength');
  const places = Array.from({ length: 2 * Math.round(reach * 100) + 1 }, (_, i) => i / 100 - reach);
  return places.filter(
    (zeta) => inStep(step, { 'workpiece.z': zeta * zR })<string>('spot.kind') === 'flat-top',
  );
}

/** Place of the right option of each question, worked out for the design of its step. */
export const answers: Readonly<Record<string, () => number>> = {
  threshold: () => {
    const value = inStep('threshold');
    const [plain, flat] = [value('unshaped.spot.markDiameter'), value('spot.markDiameter')];
    if (Math.abs(flat / plain - 1) < 0.03) return 2;
    return plain > flat ? 0 : 1;
  },
  'middle-alone': () => {
    const { radius, whole, centre } = inStep('middle-alone')<Waves>('explain.amplitudeOverRadius');
    const [wider, higher] = [halfRadius(radius, centre) / halfRadius(radius, whole), centre[0]! / whole[0]!];
    if (Math.abs(wider - 1) < 0.05 && higher < 1) return 2;
    return wider > 1 && higher < 1 ? 1 : 0;
  },
  axis: () => {
    const offered = [0, 0.07, 0.25, 1];
    const left = inStep('axis')('explain.axisIrradianceInFocus');
    const off = offered.map((value) => Math.abs(value - left));
    return off.indexOf(Math.min(...off));
  },
  'where-flat': () => {
    const found = flatPlanes('where-flat', 1.2);
    if (found.length === 0) return 3;
    if (found.some((zeta) => zeta === 0)) return 0;
    const before = Math.min(...found.filter((zeta) => zeta < 0).map((zeta) => -zeta));
    const behind = Math.min(...found.filter((zeta) => zeta > 0));
    return before < 0.5 && behind < 0.5 ? 1 : 2;
  },
  level: () => ['flat-top', 'ring', 'peaked'].indexOf(inStep('level')<string>('spot.kind')),
  stop: () => {
    const offered = [0.63, 0.32, 0.05, 0.8];
    const off = offered.map((value) => Math.abs(value - inStep('stop')('spot.dip')));
    return off.indexOf(Math.min(...off));
  },
  'beam-size': () => {
    const dipOf = (magnification: number) =>
      inStep('beam-size', { 'expander.magnification': magnification })('spot.dip');
    return grewStayedFell(dipOf(2), dipOf(2.1), [0, 1, 2]);
  },
  colour: () => {
    const value = inStep('colour');
    if (value('spot.relativePeak') > 0.95 && value<string>('spot.kind') === 'peaked') return 2;
    return value('spot.dip') > inStep('ring')('spot.dip') ? 1 : 0;
  },
  'real-beam': () => {
    const dipOf = (ratio: number) => inStep('real-beam', { 'laser.beamPropagationRatio': ratio })('spot.dip');
    return grewStayedFell(dipOf(1), dipOf(1.2), [0, 1, 2]);
  },
  removal: () => {
    const offered = [1, 4 / 3, 2];
    const off = offered.map((value) => Math.abs(value - inStep('removal')('removal.gain')));
    return off.indexOf(Math.min(...off));
  },
  depth: () => {
    const [open, stopped] = [inStep('flat')('spot.depthOfFocus'), inStep('depth')('spot.depthOfFocus')];
    const offered = [1 / 5, 1, 18];
    const off = offered.map((value) => Math.abs(Math.log((value * open) / stopped)));
    return off.indexOf(Math.min(...off));
  },
  alignment: () => {
    const value = inStep('alignment');
    const [focus, here] = [value('explain.offCentreFocus'), value('explain.offCentreHere')];
    const seen = [focus > 0.01, here > 0.01];
    return seen[0] && seen[1] ? 2 : seen[0] ? 0 : 1;
  },
};
