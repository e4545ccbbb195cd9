import { designGraph } from '../../lib/design/design.ts';
import { light, unshapedPeak } from '../../lib/design/focus.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { formatQuantity } from '../../lib/graph/units.ts';
import { superscript } from '../../lib/graph/unitText.ts';
import { familyMap } from '../../lib/optics/familyMap.ts';
import type { Light } from '../../lib/optics/light.ts';
import { Problem } from '../../lib/problem.ts';
import type { CommandIo } from './commandIo.ts';
import { readSpan, spaced } from './lengths.ts';
import { encodeMap, type FluenceMap, type GreyScale, highest, shownDecades } from './mapPng.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { type Options, oneOf, readOptions, required } from './options.ts';
import { writeFile } from './writeFile.ts';

/** Most radii or planes: 4096 of both are 17 million values, which a spreadsheet no longer opens. */
const mostPoints = 4096;

/** `map`: fluence over radius and z, as CSV on the output or in a file, or as a PNG of 16 bits. */
export function map(args: readonly string[], io: CommandIo): string {
  const options = readOptions(args, [...designOptions, 'z', 'radii', 'size', 'scale', 'out']);
  const z = readSpan(required(options, 'z', '"-0.4:0.4 mm"'), 'z', '-0.4:0.4 mm');
  const radii = readSpan(required(options, 'radii', '"0:40 um"'), 'radii', '0:40 um');
  const [columns, rows] = readSize(options.one('size') ?? '512x401');
  const path = options.one('out');
  const kind = kindOf(path);
  const scale = readScale(options, kind);
  const state = openDesign(options, io);
  const outcomes = createEngine(designGraph, state.inputs).evaluate([light.id, unshapedPeak.id]);
  const usedLight = valueOrThrow(outcomes[light.id]!) as Light;
  const peakFluence = valueOrThrow(outcomes[unshapedPeak.id]!) as number;
  const relative = familyMap(usedLight, spaced(z, rows), spaced(radii, columns));
  const family = { fluence: relative.map((value) => value * peakFluence), columns, rows, z, radii };
  if (path === undefined) return writeCsv(family);
  writeFile(io, path, kind === 'png' ? encodeMap(family, scale) : new TextEncoder().encode(writeCsv(family)));
  return said(path, family, kind, scale);
}

/** `COLUMNSxROWS`: radii and planes. */
function readSize(text: string): [number, number] {
  const [, columns, rows] = /^\s*(\d{1,9})\s*[x×]\s*(\d{1,9})\s*$/i.exec(text) ?? [];
  const size: [number, number] = [Number(columns), Number(rows)];
  if (size.every((count) => count >= 2 && count <= mostPoints)) return size;
  throw new Problem(
    'unreadable',
    `The size '${text}' cannot be; write RADIIxPLANES, each from 2 to ${mostPoints}, e.g. 512x401.`,
    { value: text, allowed: `2 to ${mostPoints} each` },
  );
}

type Kind = 'csv' | 'png';

function kindOf(path: string | undefined): Kind {
  const ending = path === undefined ? 'csv' : /\.([^./\\]*)$/.exec(path)?.[1]?.toLowerCase();
  if (ending === 'csv' || ending === 'png') return ending;
  throw new Problem(
    'unreadable',
    `'${path}' does not say what to write; let its name end in .csv for numbers or .png for a picture.`,
    { value: path!, allowed: '.csv or .png' },
  );
}

function readScale(options: Options, kind: Kind): GreyScale {
  const scale = oneOf(options, 'scale', ['linear', 'log']);
  if (scale === 'linear' || kind === 'png') return scale;
  throw new Problem(
    'impossible',
    'A CSV holds the fluence itself; give --scale log together with --out and a name that ends in .png.',
    { value: scale, allowed: 'linear' },
  );
}

/** A row of radii, then a row for each plane that begins with its z; eight digits, one beyond the 1e-6 of the unshaped peak that the map is computed to. */
function writeCsv({ fluence, columns, rows, z, radii }: FluenceMap): string {
  const digits = (value: number) => Number(value.toPrecision(8));
  const head = ['fluence_J_m2; z_m down; radius_m across', ...Array.from(spaced(radii, columns), digits)];
  const lines = Array.from(spaced(z, rows), (place, row) =>
    [place, ...fluence.subarray(row * columns, (row + 1) * columns)].map(digits).join(','),
  );
  return `${[head.join(','), ...lines].join('\n')}\n`;
}

function said(path: string, family: FluenceMap, kind: Kind, scale: GreyScale): string {
  const { columns, rows, z, radii } = family;
  const show = ([from, to]: FluenceMap['z'], unit: string) =>
    `${formatQuantity(from, 'm', unit)} to ${formatQuantity(to, 'm', unit)}`;
  const top = formatQuantity(highest(family), 'J/m^2', 'J/cm^2');
  const grey =
    kind === 'csv'
      ? `the highest fluence is ${top}`
      : `white (65535) stands for ${top}, ${scale === 'linear' ? 'grey is in proportion' : `black for 10${superscript(-shownDecades)} of it and less, grey for the logarithm`}`;
  return `${path}: ${columns} radii (columns, ${show(radii, 'um')}) by ${rows} planes (rows from the top, z ${show(z, 'mm')}); ${grey}.\n`;
}
