import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { main } from '../../notebooks/command/main.ts';

/** A file of the project. */
export const here = (path: string) => new URL(`../../${path}`, import.meta.url);

/** Runs the command line in this process; files come from `files`, else from the project. */
export function run(argv: readonly string[], files: Readonly<Record<string, string>> = {}) {
  const { code, ended } = start(argv, files);
  if (typeof code !== 'number') throw new Error(`${argv[0]} takes its time: use runLater.`);
  return { code, ...ended() };
}

/** The same for a command that promises its end. */
export async function runLater(argv: readonly string[], files: Readonly<Record<string, string>> = {}) {
  const { code, ended } = start(argv, files);
  return { code: await code, ...ended() };
}

function start(argv: readonly string[], files: Readonly<Record<string, string>>) {
  let out = '';
  let err = '';
  const written: Record<string, Uint8Array> = {};
  const code = main(argv, {
    readFile: (path) =>
      Object.hasOwn(files, path) ? new TextEncoder().encode(files[path]) : readFileSync(here(path)),
    writeFile: (path, bytes) => {
      if (path.startsWith('nowhere/')) throw new Error('ENOENT');
      written[path] = bytes;
    },
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, ended: () => ({ out, err, written }) };
}

/** What a command writes that must succeed. */
export function succeed(argv: readonly string[], files?: Readonly<Record<string, string>>): string {
  const { code, out, err } = run(argv, files);
  expect([code, err], argv.join(' ')).toEqual([0, '']);
  return out;
}
