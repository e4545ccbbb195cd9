/** Where a search stands: plane, line spacing over the spot's diameter, peak fluence over the upper bound. */
export interface FieldPlace {
  readonly defocus: number;
  readonly spacing: number;
  readonly peak: number;
}

/** First steps in plane, logarithm of the spacing and peak. */
const steps = [0.05, 0.1, 0.02] as const;

/** All neighbours of a place: up, down or as it is in plane, spacing and peak. */
export function neighbours({ defocus, spacing, peak }: FieldPlace, size: number): FieldPlace[] {
  const [plane, logarithm, top] = steps.map((step) => step * size) as [number, number, number];
  const ways = [-1, 0, 1];
  return ways.flatMap((a) =>
    ways.flatMap((b) =>
      ways
        .filter((c) => a !== 0 || b !== 0 || c !== 0)
        .map((c) => ({
          defocus: Math.max(0, defocus + a * plane),
          spacing: spacing * Math.exp(b * logarithm),
          peak: Math.min(1, peak + c * top),
        })),
    ),
  );
}
