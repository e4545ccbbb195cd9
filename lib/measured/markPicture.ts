import { polygonCentroid } from 'd3';
import { Problem } from '../problem.ts';
import type { CameraImage } from './cameraImage.ts';
import { largestMark, type MarkContours } from './markContours.ts';
import { markLevels, type PictureRegion, takeRegion } from './markLevels.ts';
import { nothingStandsOut } from './markProblems.ts';

/** How a mark is measured in a picture. */
export interface MarkPictureOptions {
  /** Metres a pixel on the workpiece. */
  readonly pixelPitch: number;
  /** Part of the picture that holds this mark and no other; the whole picture where left out. */
  readonly region?: PictureRegion;
  /** Where between the background (0) and the mark (1) the contour lies; half way where left out. */
  readonly level?: number;
}

/** A mark measured in a picture, SI; contours in pixels of the whole picture for drawing. */
export interface PictureMark {
  /** Inside the outer contour without the unmarked parts, m². */
  readonly area: number;
  /** Half of how much the area changes from a contour at 0.35 to one at 0.65: what the choice of the level leaves open. */
  readonly areaUncertainty: number;
  /** Diameters of discs of the area inside the outer contour, and inside the largest hole; 0 without one. */
  readonly outerDiameter: number;
  readonly innerDiameter: number;
  /** Half of how much each changes from a contour at 0.35 to one at 0.65. */
  readonly outerDiameterUncertainty: number;
  readonly innerDiameterUncertainty: number;
  /** Centroid of what the outer contour encloses, from the upper left corner of the whole picture. */
  readonly centre: readonly [number, number];
  /** Extent along x and y of the picture. */
  readonly diameters: readonly [number, number];
  readonly contours: MarkContours;
  /** The mark is darker than its surroundings, as most are in bright field. */
  readonly dark: boolean;
  /** Difference of mark and background over the noise of the background. */
  readonly contrast: number;
  readonly notes: readonly string[];
}

/** Levels of the two contours that bound what the choice of the level leaves open. */
const levelSpan = [0.35, 0.65] as const;
/** A contour of fewer pixels across is drawn by its corners. */
const fewPixels = 10;

/**
 * Measures the mark in a picture or a part of it: the contour lies between the grey of the background, a plane through the
 * frame of the region, and that of the mark, by marching squares on the picture blurred by a pixel. Throws Problem
 * 'absent' where nothing stands out, and 'outside' where the mark touches the edge of the region.
 */
export function measureMark(image: CameraImage, options: MarkPictureOptions): PictureMark {
  const { pixelPitch, region, level = 0.5 } = options;
  checkLevel(level);
  const part = takeRegion(image, region);
  const levels = markLevels(part, image.name);
  const at = (share: number) => largestMark(levels.values, part, share);
  const contours = at(level);
  if (!contours) throw nothingStandsOut(image.name);
  if (contours.touchesEdge) throw cutOff(image.name, region !== undefined);
  const ends = levelSpan.map((share) => at(share) ?? contours) as [MarkContours, MarkContours];
  const disc = (area: number) => 2 * Math.sqrt(area / Math.PI) * pixelPitch;
  const leftOpen = (size: (found: MarkContours) => number) => Math.abs(size(ends[0]) - size(ends[1])) / 2;
  const [x, y] = polygonCentroid(contours.outer as [number, number][]);
  return {
    area: contours.area * pixelPitch ** 2,
    areaUncertainty: leftOpen(({ area }) => area) * pixelPitch ** 2,
    outerDiameter: disc(contours.outerArea),
    innerDiameter: disc(contours.innerArea),
    outerDiameterUncertainty: leftOpen(({ outerArea }) => disc(outerArea)),
    innerDiameterUncertainty: leftOpen(({ innerArea }) => disc(innerArea)),
    centre: [x * pixelPitch, y * pixelPitch],
    diameters: [contours.width * pixelPitch, contours.height * pixelPitch],
    contours,
    dark: levels.dark,
    contrast: levels.contrast,
    notes: notesOf(contours, levels.contrast),
  };
}

function notesOf({ width, height, others }: MarkContours, contrast: number): string[] {
  const notes: string[] = [];
  const across = Math.min(width, height);
  if (across < fewPixels)
    notes.push(`The mark is ${across.toFixed(1)} pixels across: take the picture at a larger magnification.`);
  if (contrast < 10)
    notes.push(`The mark stands out from the background by ${contrast.toFixed(1)} times its noise only.`);
  if (others > 0)
    notes.push(
      `${others} further ${others === 1 ? 'part stands' : 'parts stand'} out as well and ${others === 1 ? 'is' : 'are'} not counted: choose the region so that it holds one mark.`,
    );
  return notes;
}

function checkLevel(level: number): void {
  if (level >= 0.1 && level <= 0.9) return;
  throw new Problem(
    'impossible',
    `A contour at ${level} between background and mark follows noise; take a level from 0.1 to 0.9.`,
    {
      value: String(level),
      allowed: '0.1 to 0.9',
    },
  );
}

function cutOff(name: string, chosen: boolean): Problem {
  const next = chosen ? 'Choose a larger region.' : 'Take a picture with more surroundings.';
  return new Problem(
    'outside',
    `The mark in "${name}" reaches the edge of ${chosen ? 'the region' : 'the picture'}, so part of it may be cut off. ${next}`,
  );
}
