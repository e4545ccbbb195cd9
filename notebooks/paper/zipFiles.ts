import { type Zippable, zipSync } from 'fflate';

/** Day that files without one bear: the first a zip can say. */
export const noDay = '1980-01-01';

/**
 * Files as a zip, in the order given, each dated noon of the day `YYYY-MM-DD`, so that the same content makes the same
 * bytes in every time zone. What is packed already, such as PNG, is stored.
 */
export function zipFiles(files: Readonly<Record<string, Uint8Array>>, day = noDay): Uint8Array {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const mtime = new Date(year, month - 1, date, 12);
  const made: Zippable = {};
  for (const [path, bytes] of Object.entries(files))
    made[path] = [bytes, { mtime, level: path.endsWith('.png') ? 0 : 6 }];
  return zipSync(made);
}
