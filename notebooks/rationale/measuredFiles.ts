import { ladderTable } from '../../lib/design/ladderMarks.ts';
import { beamImage } from '../../lib/design/laser.ts';
import { markPictureInputs } from '../../lib/design/markPicture.ts';
import { causticTable } from '../../lib/design/measuredCaustic.ts';
import { focusCaustic } from '../../lib/design/measuredFocus.ts';
import { measuredProfile } from '../../lib/design/measuredSpot.ts';
import { firstMicrograph } from '../../lib/design/micrographs.ts';
import { rippleSeries } from '../../lib/design/rippleSeries.ts';
import { sectionFile } from '../../lib/design/sectionFile.ts';
import { spotTable } from '../../lib/design/spots.ts';
import type { InputQuantity } from '../../lib/graph/quantity.ts';
import type { UseName } from './section.ts';

type Inputs = Readonly<Record<string, unknown>>;

/** True where a file was given to the input. */
export function hasFile({ kind, id }: InputQuantity, inputs: Inputs): boolean {
  return kind === 'file' && inputs[id] !== null && inputs[id] !== undefined;
}

/** A measurement that would test the design, and what is only predicted without it. */
interface Missing {
  /** Any of these will do. */
  readonly files: readonly InputQuantity[];
  readonly says: string;
  /** Asked for with this use only. */
  readonly use?: UseName;
}

const missing: readonly Missing[] = [
  {
    files: [beamImage, causticTable],
    says: 'The beam was not measured: neither a camera image nor a caustic is in the design.',
  },
  {
    files: [measuredProfile],
    says: 'No profile of the spot was measured: its kind, width, dip and peak are predictions.',
  },
  {
    files: [focusCaustic, ladderTable],
    says: 'The place of the focus was not measured: neither a caustic of it nor a focus ladder is in the design, so the zero of z on the machine is open.',
  },
  {
    files: [spotTable, ladderTable, markPictureInputs.picture],
    says: 'No mark was measured: sizes of marks are predictions, and the threshold is none of this surface.',
  },
  {
    files: [rippleSeries, firstMicrograph.picture],
    use: 'ripples',
    says: 'No ripples were measured: period, direction and the part of the field with ripples are predictions.',
  },
  {
    files: [sectionFile],
    use: 'grooves',
    says: 'No cross-section of a groove was measured: depth, width and walls are predictions.',
  },
];

/** What was not measured, a sentence each. */
export function notMeasured(inputs: Inputs, uses: readonly UseName[]): string[] {
  return missing
    .filter(
      ({ use, files }) =>
        (use === undefined || uses.includes(use)) && !files.some((one) => hasFile(one, inputs)),
    )
    .map(({ says }) => says);
}
