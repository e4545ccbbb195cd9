import * as v from 'valibot';
import { designGraph } from '../../lib/design/design.ts';
import { type DesignFile, filesOf, type SavedDesign } from '../../lib/design/designFile.ts';
import { initialSet, initialValues } from '../../lib/design/initialSets.ts';
import { readJson } from '../../lib/design/jsonText.ts';
import { entriesOf } from '../../lib/design/savedFile.ts';
import { readInputs, savedBytes, writeInputs } from '../../lib/design/savedInputs.ts';
import { readStudies, studiesSchema, writeStudies } from '../../lib/design/savedStudies.ts';
import { issueWords } from '../../lib/design/schemaWords.ts';
import { typedInstead } from '../../lib/design/typedInstead.ts';
import { originalOf } from '../../lib/graph/originals.ts';
import { applyPatch } from '../../lib/graph/state.ts';
import { type Alternative, type Lecture, noStudies } from '../../lib/graph/studies.ts';
import { fromBase64, toBase64 } from '../../lib/measured/base64.ts';
import { sha256 } from '../../lib/measured/sha256.ts';
import { Problem } from '../../lib/problem.ts';
import { readSavedFileAgain } from '../measuredFiles.ts';
import { deflate, inflate } from './deflate.ts';

/** The version of links written now; every earlier version opens. */
export const linkVersion = 5;

/** Longer links are cut by mail programs and chats; signs. */
const longest = 8192;
/** No link of that length unfolds to more, other than one made to fill the memory; bytes. */
const mostUnfolded = 1e6;
/** How messages name what stands in a link. */
const place = {
  at: (id: string) => `The link, at ${id}`,
  remedy: () => 'Ask for the link again, or for a design file.',
};

const schema = v.object({
  initial: v.number(),
  name: v.optional(v.string(), ''),
  about: v.optional(v.string(), ''),
  inputs: entriesOf(v.unknown()),
  files: v.optional(entriesOf(v.string()), {}),
  // Since version 3.
  studies: v.optional(studiesSchema),
  // Since version 2.
  leftOut: v.optional(
    v.object({
      files: entriesOf(v.string()),
      measured: v.optional(v.array(v.string()), []),
      typed: v.optional(v.array(v.string()), []),
    }),
  ),
});

/** What stayed behind when a link was made. */
export interface LeftOut {
  /** Names of files by the id of their input. */
  readonly files: Readonly<Record<string, string>>;
  /** Ids of inputs that hold as typed what was measured from the files. */
  readonly measured: readonly string[];
  /** Ids of inputs that hold what had been typed before, since nothing that can be typed was measured. */
  readonly typed: readonly string[];
}

/** A design from a link. `leftOut` is `unknown` where an earlier program made the link, which noted none. */
export interface LinkedDesign extends DesignFile {
  readonly leftOut: LeftOut | 'unknown';
}

/** A design as a text for an address, and in words what it leaves out. */
export interface DesignLink {
  readonly text: string;
  readonly leftOut: string;
}

/**
 * What differs from the initial design, compressed: "version.sum.content". Above 8 kB the files stay behind, and what
 * was measured from them goes along as typed values; a design still longer throws a Problem.
 */
export async function writeLink(design: SavedDesign): Promise<DesignLink> {
  const whole = await encode(design);
  if (whole.length <= longest) return { text: whole, leftOut: '' };
  const { patch, words, typed } = typedInstead(designGraph, design.inputs);
  const { inputs } = applyPatch(designGraph, { ...design, revision: 0 }, patch);
  const ids = (measured: boolean) => typed.filter((one) => one.measured === measured).map(({ id }) => id);
  const leftOut = { files: fileNames(design), measured: ids(true), typed: ids(false) };
  const kept = { inputs: design.kept?.inputs ?? {}, files: {} };
  const studies = design.studies && {
    ...design.studies,
    alternatives: design.studies.alternatives.map(withoutFiles),
    lectures: design.studies.lectures.map(settingNoFiles),
  };
  const text = await encode({ ...design, inputs, kept, ...(studies && { studies }) }, leftOut);
  if (text.length > longest) {
    throw new Problem(
      'impossible',
      `The link would be ${Math.ceil(text.length / 1024)} kB long, and more than 8 kB do not pass everywhere. Shorten the notes, keep fewer alternatives and lectures, or save the design to a file and send that.`,
    );
  }
  return { text, leftOut: leftOutWords(words) };
}

/** An alternative with what was measured from its files as typed. */
function withoutFiles({ inputs, ...rest }: Alternative): Alternative {
  const { patch } = typedInstead(designGraph, inputs);
  return { ...rest, inputs: applyPatch(designGraph, { inputs, revision: 0 }, patch).inputs };
}

/** A lecture that sets no files. */
function settingNoFiles(lecture: Lecture): Lecture {
  const isPlain = ([, value]: [string, unknown]) => originalOf(value) === undefined;
  const steps = lecture.steps.map(({ sets, ...step }) => ({
    ...step,
    ...(sets && { sets: Object.fromEntries(Object.entries(sets).filter(isPlain)) }),
  }));
  return { ...lecture, steps };
}

/** Names of the files in a design, those that only a later program reads included, by the id of their input. */
function fileNames({ inputs, kept = { inputs: {}, files: {} } }: SavedDesign): Record<string, string> {
  const known = Object.entries(inputs).map(([id, value]) => [id, originalOf(value)?.name] as const);
  const later = Object.entries(kept.inputs).map(([id, entry]) => {
    const { file, sha256: hash } = (entry ?? {}) as { readonly file?: unknown; readonly sha256?: unknown };
    const held = typeof file === 'string' && typeof hash === 'string' && Object.hasOwn(kept.files, hash);
    return [id, held ? file : undefined] as const;
  });
  return Object.fromEntries(
    [...known, ...later].filter((one): one is [string, string] => one[1] !== undefined),
  );
}

function leftOutWords(words: readonly string[]): string {
  const instead =
    words.length === 0 ? '' : ` What was measured from them is in the link as typed: ${words.join('; ')}.`;
  return `A link holds 8 kB at most, so files are left out of it.${instead}`;
}

async function encode(
  { inputs, name = '', about = '', kept, studies }: SavedDesign,
  leftOut?: LeftOut,
): Promise<string> {
  const initial = designGraph.initial;
  const changed = Object.entries(inputs).filter(([id, value]) => !Object.is(value, initial[id]));
  const { entries, files } = writeInputs(designGraph, Object.fromEntries(changed));
  const written = writeStudies(designGraph, studies ?? noStudies, initial);
  const bytesByHash = {
    ...Object.fromEntries([...files, ...written.files].map((file) => [file.sha256, toBase64(file.bytes)])),
    ...kept?.files,
  };
  const content = {
    initial: initialSet,
    ...(name === '' ? {} : { name }),
    ...(about === '' ? {} : { about }),
    inputs: { ...entries, ...kept?.inputs },
    ...(studies && { studies: written.saved }),
    ...(Object.keys(bytesByHash).length === 0 ? {} : { files: bytesByHash }),
    ...(leftOut === undefined ? {} : { leftOut }),
  };
  const bytes = await deflate(new TextEncoder().encode(JSON.stringify(content)));
  return `${linkVersion}.${sumOf(bytes)}.${toBase64(bytes).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')}`;
}

/** Compressed text has no sum of its own: a changed sign may give other values. */
function sumOf(bytes: Uint8Array): string {
  return sha256(bytes).slice(0, 8);
}

/** The design in a link, every input included. Rejects with a Problem that says what is wrong with it. */
export async function readLink(text: string): Promise<LinkedDesign> {
  const { version, content } = await unfold(text);
  const { initial, name, about, inputs, files, studies, leftOut = nothing } = parse(content);
  const values = initialValues(designGraph, initial);
  if (!values) throw newer(`starts from the initial values ${initial}, which this program does not know`);
  const bytesOf = (hash: string) => (Object.hasOwn(files, hash) ? savedBytes(files[hash]!, hash) : undefined);
  const source = { bytesOf, read: readSavedFileAgain };
  const { patch, unknown } = readInputs(designGraph, inputs, place, source);
  return {
    name,
    about,
    inputs: { ...values, ...patch },
    kept: { inputs: unknown, files: filesOf(unknown, files) },
    ...(studies && { studies: readStudies(designGraph, studies, values, place, source) }),
    // A link has all files or none, so one with files has left none out.
    leftOut: version < 2 && Object.keys(files).length === 0 ? 'unknown' : leftOut,
  };
}

const nothing: LeftOut = { files: {}, measured: [], typed: [] };

function parse(text: string) {
  const parsed = v.safeParse(schema, readJson(text, damaged));
  if (parsed.success) return parsed.output;
  throw damaged(issueWords(parsed.issues[0]));
}

/** Version and JSON text of a link. */
async function unfold(text: string): Promise<{ readonly version: number; readonly content: string }> {
  const parts = /^(\d{1,6})\.([0-9a-f]{8})\.([\w-]+)$/.exec(text);
  const version = Number(/^(\d{1,6})\./.exec(text)?.[1]);
  if (version > linkVersion)
    throw newer(`is version ${version}, and this program reads up to version ${linkVersion}`);
  if (!parts || version < 1)
    throw damaged(
      text === ''
        ? 'nothing stands behind ‘design=’'
        : 'what stands behind ‘design=’ is not how a link writes a design',
    );
  const [, , sum, content = ''] = parts;
  const bytes = fromBase64(padded(content.replaceAll('-', '+').replaceAll('_', '/')));
  if (!bytes || sumOf(bytes) !== sum)
    throw damaged('letters in it were lost or changed, and it does not match its check sum');
  try {
    const unfolded = await inflate(bytes, mostUnfolded);
    return { version, content: new TextDecoder('utf-8', { fatal: true }).decode(unfolded) };
  } catch (error) {
    throw damaged(
      error instanceof RangeError
        ? `it unpacks to more than ${mostUnfolded / 1e6} MB, and no design in a link is that large`
        : 'what is packed in it cannot be unpacked',
    );
  }
}

function padded(text: string): string {
  return text.padEnd(Math.ceil(text.length / 4) * 4, '=');
}

function damaged(why: string): Problem {
  return new Problem(
    'unreadable',
    `The link is damaged, perhaps cut short on its way: ${why}. Copy it again as a whole, or ask for a design file.`,
  );
}

function newer(why: string): Problem {
  return new Problem('unreadable', `The link ${why}; open it with a newer program.`);
}
