/** Steps of the arrow keys along an axis, and how many of them Page Up and Page Down take. */
const keySteps = 200;
const pageSteps = 10;

const steps: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -pageSteps,
  PageUp: pageSteps,
};

/** The part of an axis, 0…1, that a key leads to from another; undefined for keys that move nothing. */
export function keyShare(key: string, share: number): number | undefined {
  if (key === 'Home') return 0;
  if (key === 'End') return 1;
  if (!Object.hasOwn(steps, key)) return undefined;
  return Math.min(1, Math.max(0, share + steps[key]! / keySteps));
}
