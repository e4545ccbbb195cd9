import {
  type BeamElement,
  type BeamLayout,
  type BeamPathValues,
  type BeamSizes,
  beamEdge,
  beamElements,
  beamOutline,
  drawnRadii,
  layoutBeam,
  lensOutline,
  plateOutline,
  round,
  sizeBeam,
  stopBehind,
} from './beamGeometry.ts';
import { element, setAttributes, setText, svgElement } from './element.ts';

/** The drawing at the head of a document: the map of the design, and the way to its inputs. */
export interface BeamPath {
  readonly element: HTMLElement;
  update(values: BeamPathValues): void;
  /** Marks the element whose inputs are open; without one, none. */
  choose(element?: BeamElement): void;
}

/** Width that is drawn for until the page has told its own, pixels. */
const firstWidth = 720;
/** Number of fills one over the other that make the light bright on the axis and faint outside, without visible bands. */
const layerCount = 18;
/** Opacity of the light on the axis. */
const axisOpacity = 0.6;

/** Opacity that a Gaussian beam has `fraction` of a 1/e² radius from the axis. */
const opacityAt = (fraction: number) => axisOpacity * Math.exp(-2 * fraction * fraction);

/** Fills from the outermost in; each adds what its opacity lacks above the ones below it. */
const layers = Array.from({ length: layerCount }, (_, i) => {
  const fraction = (i: number) => drawnRadii * (1 - i / layerCount);
  const below = i === 0 ? 0 : opacityAt(fraction(i - 1));
  return { fraction: fraction(i), opacity: 1 - (1 - opacityAt(fraction(i))) / (1 - below) };
});

/** Makes the drawing; `onChoose` is called with the element that a person chose. */
export function createBeamPath(document: Document, onChoose: (element: BeamElement) => void): BeamPath {
  const drawing = createDrawing(document);
  const places = beamElements.map((name) => createPlace(document, name, onChoose));
  const box = element(
    document,
    'div',
    {
      class: 'beam-path',
      role: 'group',
      'aria-label': 'Beam path from laser to workpiece: choose an element to change its values',
    },
    drawing.svg,
    ...places.map(({ button }) => button),
  );
  let values: BeamPathValues | undefined;
  let width = firstWidth;
  const draw = () => {
    if (values) drawing.draw(values, layoutBeam(width));
  };
  onResize(document, box, (next) => {
    width = next;
    draw();
  });
  return {
    element: box,
    update: (next) => {
      values = next;
      for (const { name, value } of places) setText(value, next.labels[name]);
      draw();
    },
    choose: (chosen) => {
      for (const { name, button } of places)
        setAttributes(button, { 'aria-pressed': String(name === chosen) });
      drawing.mark(chosen);
    },
  };
}

function createPlace(document: Document, name: BeamElement, onChoose: (element: BeamElement) => void) {
  const value = element(document, 'span', { class: 'beam-value' });
  const title = element(document, 'span', { class: 'beam-name' }, name);
  const button = element(
    document,
    'button',
    { type: 'button', class: 'beam-place', 'aria-pressed': 'false', 'data-element': name },
    title,
    ' ',
    value,
  );
  button.addEventListener('click', () => onChoose(name));
  return { name, button, value };
}

/** Calls back with the width of an element whenever it changes; does nothing where there is no layout. */
function onResize(document: Document, target: HTMLElement, changed: (width: number) => void): void {
  const Observer = document.defaultView?.ResizeObserver;
  if (!Observer) return;
  let width = 0;
  new Observer(([entry]) => {
    const next = Math.round(entry!.contentRect.width);
    if (next === width || next === 0) return;
    width = next;
    changed(next);
  }).observe(target);
}

interface Drawing {
  readonly svg: SVGSVGElement;
  draw(values: BeamPathValues, layout: BeamLayout): void;
  mark(chosen?: BeamElement): void;
}

function createDrawing(document: Document): Drawing {
  const path = (name: string) => svgElement(document, 'path', { class: name });
  const axis = path('beam-axis');
  const light = layers.map(({ opacity }) =>
    svgElement(document, 'path', { class: 'beam-light', 'fill-opacity': round(opacity) }),
  );
  const edge = path('beam-edge');
  const parts = {
    laser: [path('beam-body')],
    expander: [path('beam-glass'), path('beam-glass')],
    plate: [path('beam-glass'), path('beam-stop')],
    lens: [path('beam-glass')],
    workpiece: [path('beam-hatch'), path('beam-surface')],
  } satisfies Record<BeamElement, SVGPathElement[]>;
  const groups = beamElements.map((name) =>
    svgElement(document, 'g', { 'data-element': name }, ...parts[name]),
  );
  const focalPlane = path('beam-plane');
  const arrow = path('beam-arrow');
  const letter = svgElement(document, 'text', { class: 'beam-z' }, 'z');
  const glow = svgElement(document, 'g', { class: 'beam-glow' }, ...light);
  const svg = svgElement(
    document,
    'svg',
    { class: 'beam-drawing', 'aria-hidden': 'true' },
    axis,
    glow,
    edge,
    focalPlane,
    ...groups,
    arrow,
    letter,
  );
  return {
    svg,
    mark: (chosen) => {
      for (const group of groups)
        setAttributes(group, { 'data-chosen': group.getAttribute('data-element') === chosen });
    },
    draw: (values, layout) => {
      const sizes = sizeBeam(values, layout);
      const inside = values.focusInside ?? false;
      const known = values.plateDiameter !== undefined && values.rawDiameter !== undefined;
      setAttributes(svg, { viewBox: `0 0 ${layout.width} ${layout.height}`, 'data-unknown': !known });
      light.forEach((layer, i) => {
        setPath(layer, beamOutline(beamEdge(layout, sizes, layers[i]!.fraction, inside), layout.axis));
      });
      setPath(edge, beamOutline(beamEdge(layout, sizes, 1, inside), layout.axis));
      setPath(axis, `M${layout.laser},${layout.axis}H${layout.width - 4}`);
      drawExpander(parts.expander, layout, sizes, inside);
      drawPlate(parts.plate, layout, sizes, values.raised);
      drawEnds(parts.laser[0]!, parts.lens[0]!, layout, sizes);
      drawWorkpiece(parts.workpiece, layout, sizes);
      drawCoordinate(focalPlane, arrow, letter, layout);
    },
  };
}

function setPath(path: SVGPathElement, data: string): void {
  path.setAttribute('d', data);
}

function drawExpander(
  paths: readonly SVGPathElement[],
  layout: BeamLayout,
  sizes: BeamSizes,
  inside: boolean,
): void {
  const half = (size: number) => Math.min(layout.reach, Math.max(13, drawnRadii * size + 4));
  const widens = sizes.beam >= sizes.raw;
  const bulge = (converging: boolean) => (converging ? 4 : -5);
  setPath(paths[0]!, lensOutline(layout.firstLens, layout.axis, half(sizes.raw), bulge(inside || !widens)));
  setPath(paths[1]!, lensOutline(layout.secondLens, layout.axis, half(sizes.beam), bulge(inside || widens)));
}

function drawPlate(
  paths: readonly SVGPathElement[],
  layout: BeamLayout,
  sizes: BeamSizes,
  raised: 'centre' | 'ring',
): void {
  setPath(paths[0]!, plateOutline(layout, sizes, raised));
  const { axis, plate, reach } = layout;
  if (sizes.stop === undefined) return setPath(paths[1]!, '');
  const outer = reach + 5;
  const blade = (from: number, to: number) =>
    `M${round(plate + stopBehind)},${round(axis + from)}V${round(axis + to)}h5V${round(axis + from)}Z`;
  setPath(paths[1]!, blade(-outer, -sizes.stop) + blade(sizes.stop, outer));
}

function drawEnds(laser: SVGPathElement, lens: SVGPathElement, layout: BeamLayout, sizes: BeamSizes): void {
  const half = Math.min(46, layout.column * 0.34);
  const tall = Math.max(22, drawnRadii * sizes.raw + 6);
  const { laser: x, axis } = layout;
  setPath(
    laser,
    `M${round(x - half)},${round(axis - tall)}H${round(x + half)}V${round(axis + tall)}H${round(x - half)}Z`,
  );
  const through = Math.min(sizes.beam * drawnRadii, sizes.stop ?? Infinity);
  setPath(lens, lensOutline(layout.lens, axis, Math.min(layout.reach, through + 8), 5));
}

function drawWorkpiece(paths: readonly SVGPathElement[], layout: BeamLayout, sizes: BeamSizes): void {
  const x = round(layout.focus + sizes.shift);
  const half = layout.reach * 0.78;
  const [top, bottom] = [layout.axis - half, layout.axis + half].map(round);
  const depth = Math.min(14, layout.column * 0.16);
  const lines = Array.from({ length: Math.floor((2 * half - depth) / 7) + 1 }, (_, i) => {
    const y = round(layout.axis - half + i * 7);
    return `M${x},${round(y + depth)}l${depth},${-depth}`;
  });
  setPath(paths[0]!, lines.join(''));
  setPath(paths[1]!, `M${x},${top}V${bottom}`);
}

/** The focal plane and the arrow along which z counts, clear of the workpiece. */
function drawCoordinate(
  plane: SVGPathElement,
  arrow: SVGPathElement,
  letter: SVGTextElement,
  layout: BeamLayout,
): void {
  const { focus, axis, reach, column } = layout;
  const y = axis - reach - 6;
  const tip = round(focus + Math.min(38, column * 0.36));
  setPath(plane, `M${round(focus)},${round(y - 5)}V${round(axis + reach * 0.86)}`);
  setPath(arrow, `M${round(focus)},${y}H${tip}m-6,-3.5l6,3.5l-6,3.5`);
  setAttributes(letter, { x: tip + 5, y: y + 4 });
}
