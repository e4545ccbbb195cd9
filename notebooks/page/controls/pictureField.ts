import type { CameraImage } from '../../../lib/measured/cameraImage.ts';
import type { PictureRegion } from '../../../lib/measured/markLevels.ts';
import { element, setAttributes, setText } from '../element.ts';
import { createPictureCanvas } from './pictureCanvas.ts';
import { between, createPictureHandle, type Drawn, type PictureHandle } from './pictureHandles.ts';
import { inPicture, type PictureLine, type PicturePoint } from './pictureShapes.ts';

/** What the control shows. */
export interface PictureShown {
  readonly image: CameraImage;
  /** The part that counts; the whole picture where left out. */
  readonly region: PictureRegion | undefined;
  /** The line along the scale bar, and whether it counts. */
  readonly line: PictureLine;
  readonly lineCounts: boolean;
}

/** What the hand does; `final` ends a drag. */
export interface PictureActs {
  drawn(drawn: Drawn, final: boolean): void;
  /** The whole picture counts again. */
  whole(): void;
}

export interface PictureField {
  readonly element: HTMLElement;
  update(shown: PictureShown): void;
}

/** Shorter drags are clicks, px on the screen. */
const leastDrag = 4;

/** A drag that is under way. */
interface Drag {
  readonly kind: Drawn['kind'];
  readonly from: PicturePoint;
  readonly handle: PictureHandle | undefined;
  /** What was drawn when it began. */
  readonly before: Drawn | undefined;
  moved: boolean;
}

/**
 * A picture on which a part and a line along a scale bar are drawn: by mouse or pen at once, by finger after a button was
 * pressed, so that the page can be scrolled; corners and ends are moved by arrow keys too. `about` says what the part
 * holds, as in "the mark".
 */
export function createPictureField(document: Document, about: string, acts: PictureActs): PictureField {
  let shown: PictureShown | undefined;
  let mode: Drawn['kind'] | undefined;
  let drag: Drag | undefined;
  /** What the hand has made while the answer to it is on its way. */
  let draft: Drawn | undefined;
  let byKeys = false;

  const wholeOf = ({ width, height }: CameraImage): PictureRegion => ({ left: 0, top: 0, width, height });
  /** The part, or the line, as it stands; with `offered` also one that does not count yet. */
  const standing = (kind: Drawn['kind'], offered: boolean): Drawn | undefined => {
    if (!shown) return undefined;
    if (draft?.kind === kind) return draft;
    if (kind === 'line')
      return shown.lineCounts || offered
        ? between('line', shown.line.start, shown.line.end, shown.image)
        : undefined;
    const region = shown.region ?? (offered ? wholeOf(shown.image) : undefined);
    return region && { kind, region };
  };
  const keys = {
    moved: (handle: PictureHandle, { x, y }: PicturePoint) => {
      const kind = handle === handles[0] || handle === handles[1] ? 'region' : 'line';
      const drawn = standing(kind, true);
      if (!shown || !drawn) return;
      const { here } = handle.ends(drawn);
      byKeys = true;
      draft = handle.moved(drawn, { x: here.x + x, y: here.y + y }, shown.image);
      acts.drawn(draft, false);
      show();
    },
    // A held key is one step back, as a drag is.
    ended: () => {
      const made = byKeys && draft;
      byKeys = false;
      if (made) acts.drawn(made, true);
    },
  };
  const handles = (['region', 'line'] as const).flatMap((kind) =>
    ([0, 1] as const).map((index) => createPictureHandle(document, kind, index, about, keys)),
  );
  const canvas = createPictureCanvas(document);
  const stage = element(document, 'div', { class: 'picture-stage' }, canvas.element);
  stage.append(...handles.map((handle) => handle.element));
  const tool = (text: string, act: () => void) => {
    const button = element(document, 'button', { type: 'button', class: 'plain' }, text);
    button.addEventListener('click', act);
    return button;
  };
  const choose = (kind: Drawn['kind']) => () => {
    mode = mode === kind ? undefined : kind;
    show();
  };
  const tools = {
    region: tool(`Draw a part about ${about}`, choose('region')),
    line: tool('Draw along the scale bar', choose('line')),
    whole: tool('Take the whole picture', () => acts.whole()),
  };
  const group = element(
    document,
    'div',
    { class: 'picture-tools', role: 'group', 'aria-label': 'What is drawn on the picture' },
    ...Object.values(tools),
  );
  const status = element(document, 'p', { class: 'picture-status', 'aria-live': 'polite' });
  const hint = element(
    document,
    'p',
    { class: 'picture-hint' },
    `Drag across the picture to draw a part about ${about}; with a finger, press its button first. Along the scale bar you draw after its button. Corners and ends are dragged, or moved by arrow keys, ten pixels at a time with Shift.`,
  );

  function show(): void {
    if (!shown) return;
    const { image } = shown;
    const [region, line] = [standing('region', mode === 'region'), standing('line', mode === 'line')];
    canvas.show(image, region, line);
    for (const [index, handle] of handles.entries()) handle.place(index < 2 ? region : line, image);
    setAttributes(stage, { 'data-mode': mode });
    setAttributes(tools.region, { 'aria-pressed': String(mode === 'region') });
    setAttributes(tools.line, { 'aria-pressed': String(mode === 'line') });
    tools.whole.hidden = shown.region === undefined;
    setText(status, statusText(region, line));
  }

  const placeOf = (event: PointerEvent): PicturePoint => {
    const { left, top, width, height } = stage.getBoundingClientRect();
    const { image } = shown!;
    return {
      x: ((event.clientX - left) / width) * image.width,
      y: ((event.clientY - top) / height) * image.height,
    };
  };
  stage.addEventListener('pointerdown', (event) => {
    const handle = handles.find((one) => one.element === event.target);
    if (!shown || event.button !== 0 || (event.pointerType === 'touch' && !mode && !handle)) return;
    const kind = handle ? (handles.indexOf(handle) < 2 ? 'region' : 'line') : (mode ?? 'region');
    stage.setPointerCapture(event.pointerId);
    event.preventDefault();
    handle?.element.focus({ preventScroll: true });
    const from = inPicture(placeOf(event), shown.image);
    drag = { kind, from, handle, before: standing(kind, true), moved: false };
  });
  stage.addEventListener('pointermove', (event) => {
    if (!drag || !shown) return;
    const to = placeOf(event);
    const scale = stage.getBoundingClientRect().width / shown.image.width;
    drag.moved ||= Math.hypot(to.x - drag.from.x, to.y - drag.from.y) * scale >= leastDrag;
    if (!drag.moved) return;
    draft =
      drag.handle && drag.before
        ? drag.handle.moved(drag.before, to, shown.image)
        : between(drag.kind, drag.from, to, shown.image);
    show();
  });
  const end = (taken: boolean) => () => {
    if (!drag) return;
    if (!taken || !drag.moved) draft = undefined;
    drag = undefined;
    // A line is drawn once; what is drawn next is the part again, and would else take the scale's place.
    if (draft?.kind === 'line') mode = undefined;
    if (draft) acts.drawn(draft, true);
    show();
  };
  stage.addEventListener('pointerup', end(true));
  stage.addEventListener('pointercancel', end(false));
  stage.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') end(false)();
  });
  return {
    element: element(document, 'div', { class: 'picture-field' }, group, stage, status, hint),
    update(next) {
      shown = next;
      if (!drag && !byKeys) draft = undefined;
      show();
    },
  };
}

function statusText(region: Drawn | undefined, line: Drawn | undefined): string {
  const parts: string[] = [];
  if (region?.kind === 'region') {
    const { left, top, width, height } = region.region;
    parts.push(`Part of ${width} × ${height} pixels, ${left} from the left and ${top} from the top.`);
  }
  if (line?.kind === 'line') {
    const { start, end } = line.line;
    parts.push(
      `Line along the scale bar: ${Math.hypot(end.x - start.x, end.y - start.y).toFixed(1)} pixels.`,
    );
  }
  return parts.length === 0 ? 'The whole picture is taken.' : parts.join(' ');
}
