/** Steps of the arrow keys along a whole axis. */
export const axisSteps = 400;

/** How many steps Page Up and Page Down take. */
export const pageSteps = 20;

const steps: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -pageSteps,
  PageUp: pageSteps,
  Home: -Infinity,
  End: Infinity,
};

/** Steps that a key takes along an axis, ±∞ to its ends; undefined for keys that move nothing. */
export function keySteps(key: string): number | undefined {
  return Object.hasOwn(steps, key) ? steps[key] : undefined;
}
