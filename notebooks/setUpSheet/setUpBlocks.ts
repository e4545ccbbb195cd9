import { acceptedEnds } from '../../lib/design/acceptedPlanes.ts';
import { plateBeamDiameter } from '../../lib/design/expander.ts';
import { workpieceZ } from '../../lib/design/focus.ts';
import { wavelength } from '../../lib/design/laser.ts';
import { averagePower } from '../../lib/design/losses.ts';
import { markDiameter } from '../../lib/design/marks.ts';
import {
  dipNarrowerBeam,
  dipWiderBeam,
  peakFluenceNarrowerBeam,
  peakFluenceWiderBeam,
  widthNarrowerBeam,
  widthWiderBeam,
} from '../../lib/design/sensitivity.ts';
import { dip, kind, peakFluence, width } from '../../lib/design/spot.ts';
import type { Block } from '../document.ts';
import { limitBlocks } from '../limitSentences.ts';
import { plateOutSaid } from '../matchingSentences.ts';
import { prose } from '../prose.ts';
import { seenTable } from './seenTable.ts';
import { settingsTables } from './settingsTables.ts';
import {
  centringSaid,
  depthMetSaid,
  directionSaid,
  firstMarkSaid,
  fitToleranceSaid,
  focusOutSaid,
  focusSeenSaid,
  sidesSaid,
} from './setUpSentences.ts';

const caution: Block = {
  kind: 'caution',
  id: 'before-aligning',
  prose: prose`**Class 4 laser: before anything is switched on.** The laser safety officer has agreed and local rules are met (IEC 60825-1, IEC TR 60825-14, ISO 11553-1, from memory: read them). Eyewear for ${wavelength} is on, rings and watches are off, the beam is enclosed as far as it goes, interlocks work, extraction runs. Begin at the lowest power that can be seen. A parallel femtosecond beam and its reflections stay dangerous at a distance. ${plateOutSaid}`,
};

const steps: Block = {
  kind: 'prose',
  id: 'alignment',
  prose: prose`
    ## In this order, at low power

    1. **Power.** Shutter closed, attenuator set to let the least light through, power meter in the beam; then open the shutter. Stay far below the ${averagePower} of the design.
    2. **Beam, plate out.** Where the plate will stand the beam is round and ${plateBeamDiameter} wide (1/e² diameter, second moments).
    3. **Focus, plate out.** Camera behind wedge and attenuators. ${focusOutSaid}
    4. **Plate in, centred.** ${centringSaid} Then go to the focus: ${focusSeenSaid}
    5. **Plane of the workpiece.** At z = ${workpieceZ} the camera shows a ${kind} profile, ${width} wide, with a dip of ${dip}. ${sidesSaid} ${depthMetSaid}
    6. **Energy.** Single pulses on a spare part, the energy raised step by step. ${firstMarkSaid}
    7. **Scan.** A small field on a spare part, looked at under the microscope before the part itself.
  `,
};

const acceptance: Block = {
  kind: 'table',
  id: 'acceptance',
  table: {
    caption: 'Accepted if',
    columns: ['', 'should be', 'beam 5 % narrower', 'beam 5 % wider', 'how to check'],
    rows: [
      [
        'beam at the plate',
        plateBeamDiameter,
        '5 % less',
        '5 % more',
        'camera where the plate stands, plate out',
      ],
      [
        'width at half the peak',
        width,
        widthNarrowerBeam,
        widthWiderBeam,
        'camera in the plane of the workpiece',
      ],
      ['dip on the axis', dip, dipNarrowerBeam, dipWiderBeam, 'the same picture, background taken off'],
      [
        'peak fluence',
        peakFluence,
        peakFluenceNarrowerBeam,
        peakFluenceWiderBeam,
        'power meter, over rate and effective area of the picture',
      ],
      ['average power', averagePower, '', '', 'power meter, where the pulse energy of the settings holds'],
      ['z', acceptedEnds, '', '', 'camera, or marks of single pulses along z'],
      ['mark of one pulse', markDiameter, '', '', 'single pulse, under the microscope'],
    ],
  },
};

/** One page for the laser table, its cautions first. */
export const setUpBlocks: readonly Block[] = [
  caution,
  ...limitBlocks,
  ...settingsTables,
  { kind: 'prose', id: 'direction', prose: prose`**Direction of z.** ${directionSaid}` },
  steps,
  seenTable,
  acceptance,
  {
    kind: 'prose',
    id: 'tolerances',
    prose: prose`**Tolerances.** ${fitToleranceSaid} Where a bound of its own is asked of a number, that bound counts.`,
  },
];
