import * as v from 'valibot';
import type { Progress } from './progress.ts';

/** The version of kept progress written now. */
const version = 1;

/** Longer answers were not typed by a person. */
const longestAnswer = 200;
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const taskSchema = v.object({
  tries: v.array(v.union([v.pipe(v.string(), v.maxLength(longestAnswer)), v.pipe(v.number(), v.finite())])),
  end: v.optional(v.picklist(['right', 'shown'])),
});
const schema = v.object({
  format: v.literal('stepwell-lessons'),
  version: v.literal(version),
  runs: v.record(
    v.string(),
    v.object({ seed: count, reached: count, before: count, tasks: v.record(v.string(), taskSchema) }),
  ),
});

/** Reads progress as it was kept; throws for a text that is none. */
export function readProgress(text: string): Progress {
  return v.parse(schema, JSON.parse(text)).runs as Progress;
}

/** Progress as a text to be kept. */
export function writeProgress(runs: Progress): string {
  return JSON.stringify({ format: 'stepwell-lessons', version, runs });
}
