import { readFileSync } from 'node:fs';

/** Reads a reference file, `tests/reference/NAME.json`; its `about` says method, units and precision. */
// biome-ignore lint/suspicious/noExplicitAny: reference files are plain data, each test knows its shape
export function reference(name: string): any {
  return JSON.parse(readFileSync(new URL(`./reference/${name}.json`, import.meta.url), 'utf8'));
}
