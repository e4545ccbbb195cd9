/** Elements of the beam path in the order in which the light meets them. */
export const beamElements = ['laser', 'expander', 'plate', 'lens', 'workpiece'] as const;
export type BeamElement = (typeof beamElements)[number];

/** What the drawing of the beam path shows. Lengths in one unit (SI); diameters of beams are 1/e². */
export interface BeamPathValues {
  /** Raw beam; undefined where it is not known, and the beam is then only outlined. */
  readonly rawDiameter: number | undefined;
  /** Beam at the plate; undefined where it is not known. */
  readonly plateDiameter: number | undefined;
  readonly stepDiameter: number;
  /** Clear diameter of the stop; undefined without a stop. */
  readonly stopDiameter: number | undefined;
  readonly raised: 'centre' | 'ring';
  /** Workpiece surface from the focal plane, positive away from the lens. */
  readonly z: number;
  readonly rayleighLength: number;
  /** True where the beam comes to a focus between the lenses of the expander. */
  readonly focusInside?: boolean;
  /** Today's values below the elements, already written: "5 mm", "×2", "f = 100 mm". */
  readonly labels: Readonly<Record<BeamElement, string>>;
}

/** Size and places of the drawing in pixels. */
export interface BeamLayout {
  readonly width: number;
  readonly height: number;
  readonly axis: number;
  readonly column: number;
  /** Half the height that beam and elements may take. */
  readonly reach: number;
  readonly laser: number;
  readonly firstLens: number;
  readonly secondLens: number;
  readonly plate: number;
  readonly lens: number;
  readonly focus: number;
}

/** Places for a width: one column an element, lower where the columns are narrow. */
export function layoutBeam(width: number): BeamLayout {
  const column = width / beamElements.length;
  const height = column < 100 ? 136 : 176;
  const centre = (i: number) => (i + 0.5) * column;
  const apart = Math.min(34, column * 0.24);
  return {
    width,
    height,
    axis: height / 2 + 8,
    column,
    reach: height / 2 - 12,
    laser: centre(0),
    firstLens: centre(1) - apart,
    secondLens: centre(1) + apart,
    plate: centre(2),
    lens: centre(3),
    focus: centre(4) - column * 0.08,
  };
}

/** Half sizes in pixels: to scale with each other, held within what can be told apart. */
export interface BeamSizes {
  readonly raw: number;
  readonly beam: number;
  readonly step: number;
  readonly stop: number | undefined;
  /** From the focal plane to the workpiece, compressed: a Rayleigh length is about half of the most. */
  readonly shift: number;
}

/** Half the drawing's reach in step radii: a stop of 1.4 step radii and its blades fit, so the plate keeps its size. */
const usualReach = 1.75;
/** Light is drawn out to this many 1/e² radii. */
export const drawnRadii = 1.35;

/** Sizes against the step, so that the beam widens and narrows on a plate that keeps its size. */
export function sizeBeam(values: BeamPathValues, layout: BeamLayout): BeamSizes {
  const { stepDiameter, stopDiameter, plateDiameter = stepDiameter, rawDiameter = plateDiameter } = values;
  const held = (size: number, low: number, high: number) =>
    Math.min(high, Math.max(low, size / stepDiameter));
  const beam = held(plateDiameter, 0.2, 2.4);
  const raw = Math.min(2.4, Math.max(0.1, (beam * rawDiameter) / plateDiameter));
  const stop = stopDiameter === undefined ? undefined : held(stopDiameter, 0.3, 2.4);
  const scale = layout.reach / Math.max(usualReach, drawnRadii * beam, drawnRadii * raw, (stop ?? 0) + 0.3);
  const most = Math.min(26, layout.column * 0.28);
  return {
    raw: raw * scale,
    beam: beam * scale,
    step: scale,
    stop: stop === undefined ? undefined : stop * scale,
    shift: most * Math.tanh(values.z / (2 * values.rayleighLength)),
  };
}

/** A point of the outline: place along the axis and half the beam there, in pixels. */
type Edge = readonly [x: number, half: number];

/** Stop behind the plate, pixels: clear of the step. */
export const stopBehind = 10;

/** Half the focus in pixels: a line that can be seen. */
const focusHalf = 2;

/** Upper edge of the light that lies `fraction` of a 1/e² radius from the axis, from laser to workpiece. */
export function beamEdge(
  layout: BeamLayout,
  sizes: BeamSizes,
  fraction: number,
  focusInside: boolean,
): Edge[] {
  const raw = fraction * sizes.raw;
  const beam = fraction * sizes.beam;
  const after = Math.min(beam, sizes.stop ?? Infinity);
  const { firstLens, secondLens, plate, lens, focus } = layout;
  const stopPlace = plate + stopBehind;
  const crossing = firstLens + ((secondLens - firstLens) * sizes.raw) / (sizes.raw + sizes.beam);
  const inside: Edge[] = focusInside ? [[crossing, 0.5 * fraction]] : [];
  const end = focus + sizes.shift;
  const steps = 24;
  const cone = Array.from({ length: steps + 1 }, (_, i): Edge => {
    const x = lens + ((end - lens) * i) / steps;
    return [x, Math.hypot(focusHalf * fraction, (after * (x - focus)) / (lens - focus))];
  });
  return [
    [layout.laser, raw],
    [firstLens, raw],
    ...inside,
    [secondLens, beam],
    [stopPlace, beam],
    [stopPlace, after],
    ...cone,
  ];
}

/** The closed outline of an edge and its mirror image below the axis, as path data. */
export function beamOutline(edge: readonly Edge[], axis: number): string {
  const upper = edge.map(([x, half]) => `${round(x)},${round(axis - half)}`);
  const lower = edge.map(([x, half]) => `${round(x)},${round(axis + half)}`).reverse();
  return `M${[...upper, ...lower].join('L')}Z`;
}

/** A lens in section about (x, axis): bulging for a converging one, hollow for a diverging one. */
export function lensOutline(x: number, axis: number, half: number, bulge: number): string {
  const [top, bottom] = [round(axis - half), round(axis + half)];
  const waist = bulge < 0 ? -bulge : 0;
  const side = (sign: number) => round(x + sign * (waist + 1));
  const middle = (sign: number) => round(x + sign * (bulge < 0 ? 1.5 - waist : 2 * bulge + 1));
  return `M${side(-1)},${top}Q${middle(-1)},${axis} ${side(-1)},${bottom}L${side(1)},${bottom}Q${middle(1)},${axis} ${side(1)},${top}Z`;
}

/** The plate in section: a sheet whose right face carries the step, or everything around it. */
export function plateOutline(layout: BeamLayout, sizes: BeamSizes, raised: 'centre' | 'ring'): string {
  const { axis, plate } = layout;
  const half = plateHalf(layout, sizes);
  const [left, low, high] = [round(plate - 11), round(plate - 3), round(plate + 4)];
  const [inner, outer] = raised === 'centre' ? [high, low] : [low, high];
  const [top, upper, lower, bottom] = [axis - half, axis - sizes.step, axis + sizes.step, axis + half].map(
    round,
  );
  return `M${left},${top}H${outer}V${upper}H${inner}V${lower}H${outer}V${bottom}H${left}Z`;
}

/** Half the height of the plate: beyond step and stop, inside the drawing. */
function plateHalf(layout: BeamLayout, sizes: BeamSizes): number {
  return Math.min(layout.reach, Math.max(sizes.step * 1.3, (sizes.stop ?? 0) + 6));
}

export function round(x: number): number {
  return Math.round(x * 100) / 100;
}
