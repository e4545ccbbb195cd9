import { strFromU8, strToU8, unzipSync } from 'fflate';
import { noDay, zipFiles } from './zipFiles.ts';

const core = 'docProps/core.xml';
const contentTypes = '[Content_Types].xml';

/**
 * The same DOCX with what is drawn by lot or read off a clock replaced: ids of links are counted, dates are noon of the
 * day, and the language stands in the properties. The list of content types comes first, where readers look for it.
 */
export function settleDocx(docx: Uint8Array, day = noDay): Uint8Array {
  const files = unzipSync(docx);
  const settled: Record<string, Uint8Array> = { [contentTypes]: files[contentTypes]! };
  for (const [path, bytes] of Object.entries(files)) settled[path] ??= bytes;
  settled[core] = strToU8(settleProperties(strFromU8(files[core]!), day));
  countLinks(settled, 'word/document.xml', 'word/_rels/document.xml.rels');
  return zipFiles(settled, day);
}

function settleProperties(xml: string, day: string): string {
  return xml
    .replace(/(<dcterms:(?:created|modified)[^>]*>)[^<]*/g, `$1${day}T12:00:00Z`)
    .replace('</cp:coreProperties>', '<dc:language>en-GB</dc:language></cp:coreProperties>');
}

/** Links to addresses have ids drawn by lot, bookmarks numbers that go on from file to file. */
function countLinks(files: Record<string, Uint8Array>, path: string, relations: string): void {
  const list = strFromU8(files[relations]!);
  const drawn = [...list.matchAll(/ Id="(rId[^"]*)"/g)]
    .map(([, id]) => id!)
    .filter((id) => !/^rId\d+$/.test(id));
  const counted = new Map(drawn.map((id, index) => [id, `link${index + 1}`]));
  const settle = (xml: string) =>
    xml.replace(/ (r:id|Id)="(rId[^"]*)"/g, (all, name, id) =>
      counted.has(id) ? ` ${name}="${counted.get(id)}"` : all,
    );
  files[relations] = strToU8(settle(list));
  files[path] = strToU8(countBookmarks(settle(strFromU8(files[path]!))));
}

function countBookmarks(xml: string): string {
  const numbers = new Map<string, number>();
  return xml.replace(/<w:bookmark(?:Start|End)[^>]*>/g, (tag) =>
    tag.replace(/ w:id="([^"]*)"/, (_all, id: string) => {
      if (!numbers.has(id)) numbers.set(id, numbers.size + 1);
      return ` w:id="${numbers.get(id)}"`;
    }),
  );
}
