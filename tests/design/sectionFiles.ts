import type { NamedSection } from '../../lib/measured/sectionTable.ts';

/** Tilted cross-sections: a groove of a Gaussian 6 µm deep and 16 µm wide, upwards in height and downwards in depth. */
export const sections: readonly NamedSection[] = [sectionOf('height.csv', 1), sectionOf('depth.csv', -1)];

function sectionOf(name: string, up: number): NamedSection {
  const position = Array.from({ length: 81 }, (_, i) => 1e-6 * (0.5 * i - 20));
  const depth = (x: number) => 6e-6 * Math.max(0, 1 - (x / 8e-6) ** 2) ** 1.5;
  const height = position.map((x, i) => up * (0.01 * x - depth(x) + 2e-8 * Math.sin(7 * i * i)));
  return { name, position, height, named: up > 0 ? 'height' : 'depth', missing: 0 };
}
