import type { Paper, PaperBlock } from './paper.ts';

/** A figure of a paper, drawn without title and summary: the paper has a caption for it. */
export interface PaperPicture {
  /** SVG text that stands alone, dark on white. */
  readonly svg: string;
  /** The same for a dark page. */
  readonly dark: string;
  /** Two px for each of `width` and `height`, dark on white. */
  readonly png: Uint8Array;
  /** Size of the SVG in px. */
  readonly width: number;
  readonly height: number;
}

/** Pictures by the id of their figure block. */
export type PaperPictures = ReadonlyMap<string, PaperPicture>;

export type PaperFigure = Extract<PaperBlock, { kind: 'figure' }>;

/** Width that figures of a paper are drawn at, px: letters then have some 9 points on an A4 page. */
export const paperFigureWidth = 540;
/** Pixels of a PNG for each px of the drawing. */
export const pixelScale = 2;

/** The figures of a paper in their order. */
export function figuresOf({ blocks }: Paper): PaperFigure[] {
  return blocks.filter((block) => block.kind === 'figure');
}

/** Width and height in px that an SVG text says of itself. */
export function svgSize(svg: string): { width: number; height: number } {
  const [head] = /^<svg[^>]*>/.exec(svg) ?? [''];
  const read = (name: string) => Number(new RegExp(` ${name}="([\\d.]+)"`).exec(head)?.[1] ?? 0);
  return { width: read('width'), height: read('height') };
}

/** The picture of a figure; throws where it was not drawn. */
export function pictureOf(pictures: PaperPictures, id: string): PaperPicture {
  const picture = pictures.get(id);
  if (!picture) throw new Error(`The figure '${id}' has not been drawn.`);
  return picture;
}
