import { workpieceZ } from '../lib/design/focus.ts';
import { repetitionRate } from '../lib/design/laser.ts';
import { usedPulseEnergy } from '../lib/design/losses.ts';
import { markStretches } from '../lib/design/markCharts.ts';
import { markPitch } from '../lib/design/markPicture.ts';
import { type MarkForTable, newTableHeader } from '../lib/design/markRow.ts';
import { markDiameter, markInnerDiameter } from '../lib/design/marks.ts';
import {
  foundMark,
  pictureArea,
  pictureAreaUncertainty,
  pictureCentreX,
  pictureCentreY,
  pictureDiameter,
  pictureDiameterUncertainty,
  pictureExtentX,
  pictureExtentY,
  pictureInnerDiameter,
  pictureInnerUncertainty,
} from '../lib/design/pictureMark.ts';
import { spotTable } from '../lib/design/spots.ts';
import { pulsesOnPlace } from '../lib/design/threshold.ts';
import type { ValuesOf } from '../lib/graph/quantity.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { Problem } from '../lib/problem.ts';
import { markRow } from './addMark.ts';
import { type Phrase, phrase, says } from './prose.ts';

/** What was measured. */
export const pictureMarkSaid = says(
  { found: foundMark, inner: pictureInnerDiameter, pitch: markPitch },
  ({ found, inner }) => {
    const side = found.dark ? 'darker' : 'brighter';
    const hollow =
      inner > 0
        ? phrase` Its centre stays unmarked over ${pictureInnerDiameter} ± ${pictureInnerUncertainty}.`
        : ' It has no unmarked centre.';
    return phrase`The mark is ${side} than its surroundings and ${pictureDiameter} ± ${pictureDiameterUncertainty} wide, as a disc of the area inside its outer contour; from end to end it is ${pictureExtentX} along x and ${pictureExtentY} along y, and ${pictureArea} ± ${pictureAreaUncertainty} are marked.${hollow} Its middle lies ${pictureCentreX} from the left and ${pictureCentreY} from the top of the picture. Behind ± stands what the width of the edge leaves open; an error of the scale comes on top of it.`;
  },
  [
    pictureDiameter,
    pictureDiameterUncertainty,
    pictureExtentX,
    pictureExtentY,
    pictureArea,
    pictureAreaUncertainty,
    pictureInnerDiameter,
    pictureInnerUncertainty,
    pictureCentreX,
    pictureCentreY,
  ],
);

/** What tells against the numbers; nothing where nothing does. */
export const pictureMarkWarning = says({ found: foundMark }, ({ found }) => found.notes.join(' '));

const compared = {
  diameter: pictureDiameter,
  uncertainty: pictureDiameterUncertainty,
  inner: pictureInnerDiameter,
  innerUncertainty: pictureInnerUncertainty,
  predicted: markDiameter,
  predictedInner: markInnerDiameter,
  stretches: markStretches,
};

/** "4 % larger" or "smaller". */
function byHowMuch(measured: number, predicted: number): string {
  const share = formatQuantity(Math.abs(measured / predicted - 1), '1', '%', 2);
  return `${share} ${measured > predicted ? 'larger' : 'smaller'}`;
}

/** Below this share of the area inside the outer contour a hole is not counted (lib/measured/markContours.ts). */
const leastHole = 0.004;

function centresSaid(values: ValuesOf<typeof compared>): Phrase {
  const { diameter, inner, innerUncertainty, predictedInner } = values;
  if (inner === 0 && predictedInner === 0) return 'Neither has an unmarked centre.';
  if (predictedInner === 0)
    return 'No unmarked centre is predicted, but the picture shows one: the plane or the beam may be another, or the grey of the centre has another cause than the laser.';
  if (inner === 0) {
    const lost = (predictedInner / diameter) ** 2 < leastHole;
    return phrase`The predicted unmarked centre of ${markInnerDiameter} is not found in the picture${lost ? ', where one as small as that would not be counted' : ''}.`;
  }
  if (Math.abs(inner - predictedInner) <= innerUncertainty)
    return phrase`The unmarked centre agrees with the predicted ${markInnerDiameter} as well.`;
  return phrase`The unmarked centre is ${byHowMuch(inner, predictedInner)} than the predicted ${markInnerDiameter}.`;
}

/** The measured mark beside the predicted one. */
export const pictureAgainstSaid = says(
  compared,
  (values) => {
    const { diameter, uncertainty, predicted, stretches } = values;
    const made = phrase`For ${usedPulseEnergy} at z\u00a0=\u00a0${workpieceZ} `;
    if (predicted === 0)
      return phrase`${made}no mark is predicted, so there is nothing to compare with: set the energy and the plane that this mark was made with.`;
    const outer =
      Math.abs(diameter - predicted) <= uncertainty
        ? phrase`a diameter of ${markDiameter} is predicted; the measured one agrees with it within what the edge leaves open.`
        : phrase`a diameter of ${markDiameter} is predicted; the measured one is ${byHowMuch(diameter, predicted)}. If the mark was made with that energy in that plane, look at the scale of the picture first, then at the threshold.`;
    const rings = stretches.some(({ marked }) => marked.length > 1)
      ? ' The predicted diameter takes in side lobes apart from the middle, while a contour follows one part of the picture: compare with them in the drawing of the predicted mark.'
      : '';
    return phrase`${made}${outer} ${centresSaid(values)}${rings}`;
  },
  [markDiameter, markInnerDiameter, usedPulseEnergy, workpieceZ],
);

/** What makes the mark a row of the table of spots. */
export const rowParts = {
  found: foundMark,
  pitch: markPitch,
  energy: usedPulseEnergy,
  rate: repetitionRate,
  pulses: pulsesOnPlace,
  z: workpieceZ,
  table: spotTable,
};

/** The mark as a table takes it. */
export function markForTable(values: ValuesOf<typeof rowParts>): MarkForTable {
  const { found, pitch, energy, rate, pulses, z } = values;
  const { contours, areaUncertainty } = found;
  return {
    energy,
    repetitionRate: rate,
    outerArea: contours.outerArea * pitch ** 2,
    holeArea: (contours.outerArea - contours.area) * pitch ** 2,
    areaUncertainty: areaUncertainty * pitch ** 2,
    aspect: contours.width / contours.height,
    pulses,
    z,
  };
}

/** The row that would be added, or why the table cannot take it. */
export const pictureRowSaid = says(rowParts, (values) => {
  const { table } = values;
  try {
    const { row, standsLast } = markRow(markForTable(values), table);
    if (standsLast) return `It stands as the last row of "${table!.name}" already.`;
    return table === null
      ? `There is no table yet; it would begin with the heading “${newTableHeader}” and the row “${row}”.`
      : `In the columns of "${table.name}" the row is “${row}”.`;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return error.message;
  }
});
