import { number } from '../graph/define.ts';

export const groovePasses = number({
  id: 'groove.passes',
  name: 'passes over the line',
  symbol: 'n_\\text{g}',
  unit: '1',
  about: 'How often the spot runs along the same line, each time over what the passes before have left.',
  initial: 4,
  range: { min: 1, max: 10e3 },
  typical: [1, 200],
  whole: true,
});

const plane = {
  unit: 'm',
  display: 'mm',
  range: { min: -0.1, max: 0.1 },
  typical: [-1e-3, 1e-3],
} as const;

export const firstPlane = number({
  ...plane,
  id: 'groove.firstPlane',
  name: 'first plane to cut in',
  symbol: 'z_1',
  about:
    'Distance of the fresh surface from the focal plane of the lens for the first of two grooves that are set beside today’s, positive behind the focus: a flat-top, say.',
  initial: -53e-6,
});

export const secondPlane = number({
  ...plane,
  id: 'groove.secondPlane',
  name: 'second plane to cut in',
  symbol: 'z_2',
  about:
    'Distance of the fresh surface from the focal plane of the lens for the second of two grooves that are set beside today’s, positive behind the focus: a ring, say.',
  initial: 800e-6,
});

export const wantedDepth = number({
  id: 'engraving.wantedDepth',
  name: 'depth wanted',
  symbol: 'd_\\text{wish}',
  unit: 'm',
  display: 'um',
  about: 'Mean depth of the engraved field that is asked for.',
  initial: 20e-6,
  range: { min: 1e-9, max: 10e-3 },
  typical: [1e-6, 200e-6],
});

export const engravingLayers = number({
  id: 'engraving.layers',
  name: 'layers',
  symbol: 'n_\\text{l}',
  unit: '1',
  about:
    'How often the whole field is worked over for the engraving, each time turned by the turn of the hatch from pass to pass; the passes of the field as set for ripples do not count.',
  initial: 10,
  range: { min: 1, max: 10e3 },
  typical: [1, 200],
  whole: true,
});

export const sheetThickness = number({
  id: 'sheet.thickness',
  name: 'thickness of the sheet',
  symbol: 't_\\text{s}',
  unit: 'm',
  display: 'um',
  about: 'Thickness of the thin metal sheet that the line is to cut through.',
  initial: 30e-6,
  range: { min: 0.1e-6, max: 10e-3 },
  typical: [5e-6, 500e-6],
});

export const passesAfter = number({
  id: 'sheet.passesAfter',
  name: 'passes after the first opening',
  symbol: 'n_\\text{after}',
  unit: '1',
  about: 'Further passes over the line once it first opens on the far side, which widen the exit.',
  initial: 5,
  range: { min: 0, max: 10e3 },
  typical: [0, 50],
});
