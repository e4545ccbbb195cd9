import { burstPulses } from '../../lib/design/burst.ts';
import { fieldWidth } from '../../lib/design/depthInUse.ts';
import { expanderKind, magnification, plateBeamDiameter } from '../../lib/design/expander.ts';
import { workpieceZ } from '../../lib/design/focus.ts';
import { fieldTime } from '../../lib/design/hatch.ts';
import { pulseDuration, repetitionRate, wavelength } from '../../lib/design/laser.ts';
import { focalLength, plateDistance } from '../../lib/design/lens.ts';
import { averagePower, usedPulseEnergy } from '../../lib/design/losses.ts';
import { apertureDiameter, stepDiameter, stepPhase, stop } from '../../lib/design/plate.ts';
import { usedBeamDiameter, usedBeamPropagationRatio } from '../../lib/design/rawBeam.ts';
import { lineSpacing, passes, pulseSpacing, scanSpeed } from '../../lib/design/scanInputs.ts';
import { directions, fieldHeight, hatchAngle } from '../../lib/design/scannerInputs.ts';
import { kind, peakFluence } from '../../lib/design/spot.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import type { Block } from '../document.ts';

type Cells = readonly [name: string, value: Quantity];

/** All settings, for an expander of a kind and with a stop or none; only one of the four stands on the sheet. */
function settings(expander: Cells, ends: Cells, by: 'magnification' | 'lenses', is: 'round' | 'open'): Block {
  const rows: readonly (readonly [Cells, Cells, Cells])[] = [
    [
      ['wavelength', wavelength],
      ['raw beam, 1/e² diameter', usedBeamDiameter],
      ['scan speed', scanSpeed],
    ],
    [
      ['pulse duration', pulseDuration],
      ['M² of the beam', usedBeamPropagationRatio],
      ['pulse spacing', pulseSpacing],
    ],
    [['pulse energy', usedPulseEnergy], expander, ['line spacing', lineSpacing]],
    [
      ['pulses per burst', burstPulses],
      ['beam at the plate, 1/e² diameter', plateBeamDiameter],
      ['lines', directions],
    ],
    [
      ['repetition rate', repetitionRate],
      ['step, diameter', stepDiameter],
      ['passes', passes],
    ],
    [
      ['average power', averagePower],
      ['step, phase', stepPhase],
      ['field, width', fieldWidth],
    ],
    [['peak fluence', peakFluence], ends, ['field, height', fieldHeight]],
    [
      ['workpiece at z', workpieceZ],
      ['lens, focal length', focalLength],
      ['time for the field', fieldTime],
    ],
    [
      ['kind of profile', kind],
      ['plate to lens', plateDistance],
      ['turn of the lines, each pass', hatchAngle],
    ],
  ];
  return {
    kind: 'table',
    id: `settings-${by}-${is}`,
    when: { choice: expanderKind, is: by, and: { choice: stop, is } },
    table: {
      caption: 'Settings',
      columns: ['light', 'value', 'optics', 'value', 'scan', 'value'],
      rows: rows.map((row) => row.flat()),
    },
  };
}

const magnified: Cells = ['expander, magnification', magnification];
const lenses: Cells = ['expander', expanderKind];
const round: Cells = ['stop, diameter', apertureDiameter];
const open: Cells = ['stop', stop];

/** Settings of light, optics and scan with their units. */
export const settingsTables: readonly Block[] = [
  settings(magnified, round, 'magnification', 'round'),
  settings(magnified, open, 'magnification', 'open'),
  settings(lenses, round, 'lenses', 'round'),
  settings(lenses, open, 'lenses', 'open'),
];
