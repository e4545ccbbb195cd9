import { designGraph } from '../../../lib/design/design.ts';
import type { DesignFile, SavedDesign } from '../../../lib/design/designFile.ts';
import { originalOf } from '../../../lib/graph/originals.ts';
import type { Patch } from '../../../lib/graph/state.ts';
import { readLink } from '../../keeping/designLink.ts';
import { initialWords } from '../../keeping/initialWords.ts';
import { linkWords } from '../../keeping/linkWords.ts';
import { checkLength, readDesign } from '../../keeping/readDesign.ts';
import type { Live } from '../live.ts';

/** Opens a design file as one step of the undo; returns what to say. Rejects with a Problem, and then nothing has changed. */
export async function openDesignFile(live: Live, file: File): Promise<string> {
  return staying(async () => {
    checkLength(file.size, file.name);
    const read = readDesign(new Uint8Array(await file.arrayBuffer()), file.name);
    take(live, read);
    return openedWords(`‘${file.name}’ is open.`, read);
  });
}

/** Opens a design that was read, as one step of the undo; returns what to say. */
export type OpenRead = (live: Live) => string;

/** Reads the design in a link, to be opened. Rejects as `openDesignFile` does. */
export async function readOpenable(text: string): Promise<OpenRead> {
  return staying(async () => {
    const { leftOut, ...read } = await readLink(text);
    return (live) => {
      take(live, read);
      return openedWords(linkWords(read.inputs, leftOut), read);
    };
  });
}

/** Opens the design in a link as one step of the undo; returns what to say. Rejects as `openDesignFile` does. */
export async function openLink(live: Live, text: string): Promise<string> {
  return (await readOpenable(text))(live);
}

async function staying<T>(open: () => Promise<T>): Promise<T> {
  try {
    return await open();
  } catch (error) {
    throw new Error(`${(error as Error).message} The design that was open stays as it is.`);
  }
}

function take(live: Live, read: DesignFile): void {
  live.open(fullDesign(read, live.state().inputs));
}

/** The design with every input: what it does not give is as at first, and a file that is open already is the same one. */
export function fullDesign(read: SavedDesign, present: Patch): SavedDesign {
  const inputs = Object.entries({ ...designGraph.initial, ...read.inputs }).map(([id, value]) => {
    const [original, open] = [originalOf(value), originalOf(present[id])];
    const same = original && original.sha256 === open?.sha256 && original.name === open.name;
    return [id, same ? present[id] : value] as const;
  });
  return { ...read, inputs: Object.fromEntries(inputs) };
}

/** What was opened, what it leaves out and is taken as at first, and what in it is not known here. */
export function openedWords(opened: string, { inputs, kept }: DesignFile): string {
  return [opened, initialWords(inputs), unknownWords(Object.keys(kept.inputs))]
    .filter((words) => words !== '')
    .join(' ');
}

function unknownWords(ids: readonly string[]): string {
  if (ids.length === 0) return '';
  const [shown, more] = [ids.slice(0, 6).join(', '), ids.length > 6 ? ` and ${ids.length - 6} more` : ''];
  return `A later program or a mistyped name put into it what this one does not know: ${shown}${more}. It is kept, and saved again.`;
}
