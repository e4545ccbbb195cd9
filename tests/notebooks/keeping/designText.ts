import { readFileSync } from 'node:fs';

/** The file of a design of the present version with a picture and a table, as an object to change. */
export interface DesignText {
  format: unknown;
  version: unknown;
  name: unknown;
  about: unknown;
  inputs: Record<string, unknown>;
  files: Record<string, string>;
}

export const fixture = (name: string) => readFileSync(new URL(`../../fixtures/${name}`, import.meta.url));

/** A fresh copy of the fixture of version 2. */
export function designText(): DesignText {
  return JSON.parse(fixture('design-v2.json').toString('utf8'));
}

export const bytesOf = (text: string) => new Uint8Array(Buffer.from(text, 'utf8'));
