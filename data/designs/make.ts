import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { designGraph } from '../../lib/design/design.ts';
import { writeDesignFile } from '../../lib/design/designFile.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';

/** An invented design: what differs from the initial one, SI. */
export interface InventedDesign {
  readonly name: string;
  readonly about: string;
  readonly patch: Patch;
  /** What its rationale is for, where its inputs alone do not tell. */
  readonly uses?: string;
}

/** The invented designs by the name of their file. */
export const designs: Readonly<Record<string, InventedDesign>> = {
  'lecture-table.json': {
    name: 'Lecture table',
    about:
      'The plate that goes round in the lecture: a half-wave step as wide as the beam, a stop a little wider, and a 100 mm lens. Turn one thing at a time and watch the focus change.',
    patch: {},
  },
  'rain-gauge-funnel.json': {
    name: 'Rain-gauge funnel',
    about:
      'Stainless sheet that gets a fine ripple, so that drops run off, while it is still flat; afterwards it is rolled into the funnel of a rain gauge. A long lens leaves room above the sheet, and an even spot keeps the ripple alike from line to line.',
    patch: {
      'laser.wavelength': 1.03e-6,
      'laser.beamDiameter': 2.5e-3,
      'laser.pulseEnergy': 30e-6,
      'laser.repetitionRate': 200e3,
      'laser.beamPropagationRatio': 1.15,
      'expander.magnification': 3,
      'plate.stepDiameter': 8e-3,
      'plate.stop': 'round',
      'plate.apertureDiameter': 12e-3,
      'lens.focalLength': 160e-3,
      'coupon.lowEnergy': 1.5e-6,
      'coupon.highEnergy': 40e-6,
      'coupon.firstZ': -0.6e-3,
      'coupon.lastZ': 0.6e-3,
      'scan.speed': 0.1,
      'scan.lineSpacing': 14e-6,
      'laser.maxPower': 10,
      'workpiece.thickness': 0.5e-3,
      'groove.firstPlane': -136e-6,
      'groove.secondPlane': 3.358e-3,
      'scaleUp.target': 1 / 3600,
    },
    uses: 'ripples, grooves, scaleUp',
  },
  'cold-plate-channels.json': {
    name: 'Cold-plate channels',
    about:
      'Narrow grooves in a copper cold plate, cut in green light, which copper takes up better than infrared. No stop cuts the beam; the grooves want a flat floor, and with it a spot with a flat top.',
    patch: {
      'laser.wavelength': 515e-9,
      'laser.beamDiameter': 1.6e-3,
      'laser.pulseEnergy': 20e-6,
      'laser.repetitionRate': 400e3,
      'laser.beamPropagationRatio': 1.1,
      'expander.magnification': 3,
      'plate.stepDiameter': 5e-3,
      'plate.stop': 'open',
      'lens.focalLength': 100e-3,
      'workpiece.material': 'copper',
      'coupon.lowEnergy': 1e-6,
      'coupon.firstZ': -0.3e-3,
      'coupon.lastZ': 0.3e-3,
      'scan.speed': 0.1,
      'scan.fieldHeight': 2e-3,
      'laser.maxPower': 16,
      'workpiece.thickness': 3e-3,
      'groove.passes': 6,
      'groove.firstPlane': 111e-6,
      'groove.secondPlane': 0,
      'groove.sectionPasses': 5,
      'engraving.wantedDepth': 50e-6,
      'sheet.thickness': 50e-6,
    },
  },
};

/** Name and text of every invented design file; every input is written, changed or not. */
export function makeDesigns(): Record<string, string> {
  const initial = initialState(designGraph);
  return Object.fromEntries(
    Object.entries(designs).map(([file, { name, about, patch, uses }]) => {
      const { inputs } = applyPatch(designGraph, initial, patch);
      const studies = uses === undefined ? {} : { studies: { ...noStudies, texts: { uses } } };
      return [file, writeDesignFile(designGraph, { inputs, name, about, ...studies })];
    }),
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [name, text] of Object.entries(makeDesigns()))
    writeFileSync(new URL(name, import.meta.url), text);
}
