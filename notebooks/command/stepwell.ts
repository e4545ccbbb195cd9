#!/usr/bin/env node
import { readFileSync, writeFileSync, writeSync } from 'node:fs';
import { main } from './main.ts';

process.exitCode = await main(process.argv.slice(2), {
  readFile: (path) => readFileSync(path),
  writeFile: (path, bytes) => writeFileSync(path, bytes),
  out: (text) => void writeAll(1, text),
  err: (text) => void writeAll(2, text),
});

/** Writes all of it, waiting where a pipe is full. */
function writeAll(descriptor: number, text: string): void {
  const bytes = Buffer.from(text);
  for (let sent = 0; sent < bytes.length; ) {
    try {
      sent += writeSync(descriptor, bytes, sent);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
    }
  }
}
