import type { RipplePicture } from '../../lib/measured/ripplePicture.ts';
import { measureRipples } from '../../lib/measured/ripplePicture.ts';
import { micrographs } from '../design/micrographFiles.ts';
import type { Values } from './designOutcomes.ts';

export const nm = 1e-9;
export const degree = Math.PI / 180;
export const find = (name: string) => micrographs.find((one) => one.name === name)!;
/** Pixels of 90 nm make 10 of them 900 nm. */
const scaled = (prefix: string, pitch: number): Values => ({
  [`${prefix}.scaleSource`]: 'typed',
  [`${prefix}.pixelPitch`]: pitch,
});
export const inA = (name: string, pitch = 90 * nm): Values => ({
  'micrograph.picture': find(name),
  ...scaled('micrograph', pitch),
});
export const inB = (name: string, pitch = 90 * nm): Values => ({
  'otherMicrograph.picture': find(name),
  ...scaled('otherMicrograph', pitch),
});
export const unscaledA = (name: string): Values => ({ 'micrograph.picture': find(name) });
export const unscaledB = (name: string): Values => ({ 'otherMicrograph.picture': find(name) });
export const close = (value: number, to: number, within: number) => Math.abs(value - to) <= within;
export type Value = (id: string) => number;
export const found = (value: Value, prefix = 'micrograph') =>
  value(`${prefix}.found`) as unknown as RipplePicture;

/** What was found in a micrograph, changed: what no small picture shows. */
export const changed = (name: string, change: (found: RipplePicture) => Partial<RipplePicture>): Values => {
  const measured = measureRipples(find(name));
  return { 'micrograph.found': { ...measured, ...change(measured) } };
};
/** The wave vector as drawn lies 1 rad towards y downwards: at 180° − 57.3° counter-clockwise; the ridges at 32.7°. */
export const drawnAt = 180 - 1 / degree;
