import * as v from 'valibot';
import { designGraph } from '../../lib/design/design.ts';
import { type DesignFile, filesOf, type SavedDesign } from '../../lib/design/designFile.ts';
import { initialSet, initialValues } from '../../lib/design/initialSets.ts';
import { readJson } from '../../lib/design/jsonText.ts';
import { entriesOf, issueWords } from '../../lib/design/savedFile.ts';
import { readInputs, writeInputs } from '../../lib/design/savedInputs.ts';
import { typedInstead } from '../../lib/design/typedInstead.ts';
import { applyPatch } from '../../lib/graph/state.ts';
import { fromBase64, toBase64 } from '../../lib/measured/base64.ts';
import { sha256 } from '../../lib/measured/sha256.ts';
import { Problem } from '../../lib/problem.ts';
import { readSavedFileAgain } from '../measuredFiles.ts';
import { deflate, inflate } from './deflate.ts';

/** The version of links written now; every earlier version opens. */
export const linkVersion = 1;

/** Longer links are cut by mail programs and chats; signs. */
const longest = 8192;
/** No link of that length unfolds to more, other than one made to fill the memory; bytes. */
const mostUnfolded = 1e6;
/** Name of a link in messages. */
const place = 'link';

const schema = v.object({
  initial: v.number(),
  name: v.optional(v.string(), ''),
  about: v.optional(v.string(), ''),
  inputs: entriesOf(v.unknown()),
  files: v.optional(entriesOf(v.string()), {}),
});

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
  const { patch, words } = typedInstead(designGraph, design.inputs);
  const { inputs } = applyPatch(designGraph, { ...design, revision: 0 }, patch);
  const text = await encode({ ...design, inputs, kept: { inputs: design.kept?.inputs ?? {}, files: {} } });
  if (text.length > longest) {
    throw new Problem(
      'impossible',
      `The link would be ${Math.ceil(text.length / 1024)} kB long, and more than 8 kB do not pass everywhere. Shorten the notes, or save the design to a file and send that.`,
    );
  }
  return { text, leftOut: leftOutWords(words) };
}

function leftOutWords(words: readonly string[]): string {
  const instead =
    words.length === 0 ? '' : ` What was measured from them is in the link as typed: ${words.join('; ')}.`;
  return `A link holds 8 kB at most, so files are left out of it.${instead}`;
}

async function encode({ inputs, name = '', about = '', kept }: SavedDesign): Promise<string> {
  const initial = designGraph.initial;
  const changed = Object.entries(inputs).filter(([id, value]) => !Object.is(value, initial[id]));
  const { entries, files } = writeInputs(designGraph, Object.fromEntries(changed));
  const bytesByHash = {
    ...Object.fromEntries(files.map((file) => [file.sha256, toBase64(file.bytes)])),
    ...kept?.files,
  };
  const content = {
    initial: initialSet,
    ...(name === '' ? {} : { name }),
    ...(about === '' ? {} : { about }),
    inputs: { ...entries, ...kept?.inputs },
    ...(Object.keys(bytesByHash).length === 0 ? {} : { files: bytesByHash }),
  };
  const bytes = await deflate(new TextEncoder().encode(JSON.stringify(content)));
  return `${linkVersion}.${sumOf(bytes)}.${toBase64(bytes).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')}`;
}

/** Compressed text has no sum of its own: a changed sign may give other values. */
function sumOf(bytes: Uint8Array): string {
  return sha256(bytes).slice(0, 8);
}

/** The design in a link, every input included. Rejects with a Problem that says what is wrong with it. */
export async function readLink(text: string): Promise<DesignFile> {
  const { initial, name, about, inputs, files } = parse(await unfold(text));
  const values = initialValues(designGraph, initial);
  if (!values) throw newer(`starts from the initial values ${initial}, which this program does not know`);
  const bytesOf = (hash: string) => (Object.hasOwn(files, hash) ? bytesIn(files[hash]!, hash) : undefined);
  const { patch, unknown } = readInputs(designGraph, inputs, place, { bytesOf, read: readSavedFileAgain });
  return {
    name,
    about,
    inputs: { ...values, ...patch },
    kept: { inputs: unknown, files: filesOf(unknown, files) },
  };
}

function bytesIn(text: string, hash: string): Uint8Array {
  const bytes = fromBase64(text);
  if (bytes && sha256(bytes) === hash) return bytes;
  throw damaged(`the file at files.${hash.slice(0, 8)}… does not match its sum`);
}

function parse(text: string) {
  const parsed = v.safeParse(schema, readJson(text, damaged));
  if (parsed.success) return parsed.output;
  throw damaged(`at ${v.getDotPath(parsed.issues[0]) ?? 'its start'}: ${issueWords(parsed.issues[0])}`);
}

/** The JSON text in a link. */
async function unfold(text: string): Promise<string> {
  const parts = /^(\d{1,6})\.([0-9a-f]{8})\.([\w-]+)$/.exec(text);
  const version = Number(/^(\d{1,6})\./.exec(text)?.[1]);
  if (version > linkVersion)
    throw newer(`is version ${version}, and this program reads up to version ${linkVersion}`);
  if (!parts || version < 1) throw damaged('it is not of the form version.sum.content');
  const [, , sum, content = ''] = parts;
  const bytes = fromBase64(padded(content.replaceAll('-', '+').replaceAll('_', '/')));
  if (!bytes || sumOf(bytes) !== sum) throw damaged('its content does not match its sum');
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await inflate(bytes, mostUnfolded));
  } catch (error) {
    throw damaged(
      error instanceof RangeError
        ? `it unfolds to more than ${mostUnfolded / 1e6} MB`
        : 'its content cannot be unfolded',
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
