import { workpieceZ } from '../lib/design/focus.ts';
import { measuredScaling } from '../lib/design/measuredOverlay.ts';
import {
  measuredPixelPitch,
  measuredPlaneSource,
  measuredProfile,
  measuredProfileZ,
} from '../lib/design/measuredSpot.ts';
import {
  type ComparedProfile,
  type ProfileComparisons,
  profileComparisons,
} from '../lib/design/profileComparisons.ts';
import {
  fileOf,
  lookAtProfile,
  measurementOf,
  otherProfiles,
  planeOf,
  profilesIn,
  renameProfile,
  takeOutProfile,
} from '../lib/design/profileList.ts';
import type { ListItem } from '../lib/graph/quantity.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import type { ChoiceRow, ChoicesSpec } from './choicesSpec.ts';
import { largest, micro, perSquareCentimetre } from './columns.ts';
import { choices, type FigureSpec, figures } from './document.ts';
import { profilesSaid } from './profileListSentences.ts';
import { fluenceText, lengthText } from './shortTexts.ts';

/** A measured profile as the list shows it. */
interface ListedProfile {
  readonly item: ListItem;
  readonly place: number;
  readonly z: number;
}

type Inputs = Readonly<Record<string, unknown>>;

/** All profiles along the beam. */
function alongBeam(inputs: Inputs): ListedProfile[] {
  return profilesIn(inputs)
    .flatMap((item, place) => (item ? [{ item, place, z: planeOf(item, inputs) }] : []))
    .sort((a, b) => a.z - b.z || a.place - b.place);
}

const millimetres = (z: number) => formatReadable(z, 'm', 'mm', 3);
const percent = (part: number) => formatReadable(part < 5e-4 ? 0 : part, '1', '%', 2);

/** How much wider a measured profile is than predicted, with its sign. */
function wider({ width, predictedWidth }: ComparedProfile): string {
  const share = width / predictedWidth - 1;
  const shown = formatReadable(Math.abs(share) < 5e-4 ? 0 : share, '1', '%', 2);
  return share >= 5e-4 ? `+${shown}` : shown;
}

/** The inputs that the list is made of, by the names its views use. */
const listed = {
  comparisons: profileComparisons,
  file: measuredProfile,
  pitch: measuredPixelPitch,
  plane: measuredPlaneSource,
  typedZ: measuredProfileZ,
  scaling: measuredScaling,
  others: otherProfiles,
  workpiece: workpieceZ,
};

/** Every measured profile beside its prediction; a row brings its profile to be looked at, renames it or takes it out. */
export const profilesTable = choices({
  id: 'measured-profiles',
  needs: [profileComparisons],
  from: listed,
  view: ({ comparisons, file, pitch, plane, typedZ, scaling, others, workpiece }): ChoicesSpec => {
    const inputs = {
      [measuredProfile.id]: file,
      [measuredPixelPitch.id]: pitch,
      [measuredPlaneSource.id]: plane,
      [measuredProfileZ.id]: typedZ,
      [measuredScaling.id]: scaling,
      [otherProfiles.id]: others,
      [workpieceZ.id]: workpiece,
    };
    return {
      caption: `Measured profiles along z${file === null ? '' : `; the settings of the picture or table belong to ‘${file.name}’`}`,
      columns: ['profile', 'z', 'measured width', 'predicted width', 'wider by', 'difference'],
      rows: alongBeam(inputs).map((one) => rowOf(one, inputs, comparisons)),
      summary: `${profilesSaid(comparisons)} Difference: root mean square over the area above half the peak, of the predicted peak.`,
      hint: 'Choosing a profile brings its inputs and its figure.',
    };
  },
});

function rowOf({ item, place, z }: ListedProfile, inputs: Inputs, all: ProfileComparisons): ChoiceRow {
  const { name } = fileOf(item);
  const isThis = (one: { readonly place: number; readonly name: string }) =>
    one.place === place && one.name === name;
  const found = all.compared.find(isThis);
  const cells = found
    ? [lengthText(found.width), lengthText(found.predictedWidth), wider(found), percent(found.deviation)]
    : ['—', '—', '—', '—'];
  return {
    key: measurementOf(item),
    name,
    does: `Look closely at ${name}`,
    cells: [millimetres(z), ...cells],
    more: found ? restOf(found) : [],
    about: found ? found.notes.join(' ') : (all.refused.find(isThis)?.why ?? ''),
    patch: lookAtProfile(inputs, place),
    chosen: place === 0,
    acts: {
      takeOut: { name: 'Take out', does: `Take out ${name}`, patch: takeOutProfile(inputs, place) },
      rename: {
        does: `Rename ${name}`,
        now: name,
        patch: (next) => renameProfile(inputs, place, next),
      },
    },
  };
}

function restOf({ dip, predictedDip, peak, predictedPeak, x }: ComparedProfile): ChoiceRow['more'] {
  return [
    ['dip measured, and predicted', `${percent(dip)}, ${percent(predictedDip)}`],
    ['peak fluence in its scale, and predicted', `${fluenceText(peak)}, ${fluenceText(predictedPeak)}`],
    ['radii measured', `up to ${lengthText(x.at(-1)!)}`],
  ];
}

/** A chart for each profile, along the beam and on the same axes; none for a single one, which has its own. */
export const profilesFigures = figures({
  id: 'measured-profiles-figures',
  needs: [profileComparisons],
  from: { comparisons: profileComparisons },
  view: ({ comparisons: { compared } }): readonly FigureSpec[] => {
    if (compared.length < 2) return [];
    const widest = compared.reduce(
      (most, { width, x }) => Math.max(most, Math.min(1.4 * width, x.at(-1)!)),
      0,
    );
    const top = largest(...compared.flatMap(({ measured, predicted }) => [measured, predicted]));
    const domains = {
      reach: niceEnd(widest * micro),
      end: niceEnd(1.05 * top * perSquareCentimetre),
    };
    return [...compared]
      .sort((a, b) => a.z - b.z || a.place - b.place)
      .map((profile) => panelOf(profile, domains));
  },
});

function panelOf(
  profile: ComparedProfile,
  { reach, end }: { readonly reach: number; readonly end: number },
): FigureSpec {
  const { name, z, width, predictedWidth, deviation } = profile;
  const x = profile.x.map((place) => place * micro);
  const column = (values: Float64Array) => values.map((value) => value * perSquareCentimetre);
  return {
    title: `${name}, z = ${millimetres(z)}`,
    x: { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] },
    y: { label: 'fluence per pulse', unit: 'J/cm²', domain: [0, end] },
    series: [
      { label: 'predicted', role: 'second', x, y: column(profile.predicted) },
      { label: 'measured', role: 'main', x, y: column(profile.measured) },
      { label: 'its spread', role: 'band', x, y: column(profile.low), y2: column(profile.high) },
    ],
    summary: `Measured ${lengthText(width)} wide, predicted ${lengthText(predictedWidth)}; the difference is ${percent(deviation)} of the predicted peak (root mean square).`,
  };
}
