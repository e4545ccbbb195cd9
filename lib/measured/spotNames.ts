// What the columns of a table of spots are called, in lower case without spaces.

export const energies = [
  'energy',
  'pulseenergy',
  'energyperpulse',
  'e',
  'ep',
  'epulse',
  'energie',
  'pulsenergie',
];
export const powers = [
  'power',
  'averagepower',
  'meanpower',
  'p',
  'pavg',
  'pav',
  'leistung',
  'mittlereleistung',
];
export const diameters = [
  'diameter',
  'd',
  'ø',
  '⌀',
  '∅',
  'markdiameter',
  'spotdiameter',
  'craterdiameter',
  'durchmesser',
];
export const radii = ['radius', 'r', 'markradius', 'spotradius', 'craterradius'];
export const areas = [
  'area',
  'a',
  'markarea',
  'spotarea',
  'craterarea',
  'markedarea',
  'ablatedarea',
  'fläche',
];
export const inners = ['innerdiameter', 'di', 'dinner', 'unmarkeddiameter', 'diameterinner', 'holediameter'];
export const uncertainties = [
  'uncertainty',
  'standarduncertainty',
  'standarddeviation',
  'sd',
  'σ',
  'diameteruncertainty',
  'areauncertainty',
  '±',
];
export const pulseCounts = [
  'n',
  'pulses',
  'pulsecount',
  'numberofpulses',
  'shots',
  'pulse',
  'pulsesperspot',
  'pulszahl',
];
export const planes = ['z', 'zposition', 'focusposition', 'defocus', 'focus'];

/** Pairs of names of two axes: "dx", "x diameter", "diameter 1", "major diameter". */
export const axes = [
  ['x', 'y'],
  ['1', '2'],
  ['major', 'minor'],
  ['horizontal', 'vertical'],
] as const;

export function ofAxis(names: readonly string[], axis: string): string[] {
  return names.flatMap((name) => [`${name}${axis}`, `${axis}${name}`]);
}
