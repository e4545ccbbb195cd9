/** True when the long tests run (`npm run test:long`): the same files at full counts. */
export const long = process.env['STEPWELL_LONG'] === '1';

/** The count of seeded cases: `full` in the long tests, `quick` in `npm test`. */
export function cases(full: number, quick: number): number {
  return long ? full : quick;
}
