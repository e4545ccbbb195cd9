import { hasValue } from '../../lib/graph/outcome.ts';
import type { Quantity, ValueOf } from '../../lib/graph/quantity.ts';
import type { Patch } from '../../lib/graph/state.ts';
import type { PictureBlock } from '../document.ts';
import type { PictureSpec } from '../pictureSpec.ts';
import type { PageContext } from './context.ts';
import { createPictureField } from './controls/pictureField.ts';
import type { Drawn } from './controls/pictureHandles.ts';
import { element } from './element.ts';
import { watchAll } from './watchAll.ts';

/** A picture that the hand draws on; hidden while there is none. */
export function renderPicture(context: PageContext, block: PictureBlock, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const { picture, region, bar } = block;
  const set = (patch: Patch, final: boolean) => {
    try {
      live.set(patch, { final });
    } catch (error) {
      context.report((error as Error).message);
    }
  };
  const field = createPictureField(document, block.about, {
    drawn: (drawn, final) => set(patchOf(block, drawn), final),
    whole: () => set({ [region.source.id]: 'whole' }, true),
  });
  const holder = element(document, 'div', {}, field.element);
  const inputs: readonly Quantity[] = [picture, ...Object.values(region), ...Object.values(bar)];
  watchAll(context, inputs, stops, {
    pending: () => {},
    settled: () => {},
    changed: (outcomeOf) => {
      const read = <Q extends Quantity>(quantity: Q): ValueOf<Q> => {
        const outcome = outcomeOf(quantity);
        if (!hasValue(outcome)) throw new Error(`${quantity.id} is an input and has a value`);
        return outcome.value as ValueOf<Q>;
      };
      const image = read(picture);
      field.element.hidden = image === null;
      if (image === null) return;
      const part = {
        left: Math.round(read(region.left)),
        top: Math.round(read(region.top)),
        width: Math.round(read(region.width)),
        height: Math.round(read(region.height)),
      };
      field.update({
        image,
        region: read(region.source) === 'part' ? part : undefined,
        line: {
          start: { x: read(bar.startX), y: read(bar.startY) },
          end: { x: read(bar.endX), y: read(bar.endY) },
        },
        lineCounts: read(bar.source) === 'bar',
      });
    },
  });
  return holder;
}

/** What is drawn, as the inputs that hold it; it counts from then on. */
function patchOf({ region, bar }: PictureSpec, drawn: Drawn): Patch {
  if (drawn.kind === 'region') {
    const { left, top, width, height } = drawn.region;
    return {
      [region.source.id]: 'part',
      [region.left.id]: left,
      [region.top.id]: top,
      [region.width.id]: width,
      [region.height.id]: height,
    };
  }
  const { start, end } = drawn.line;
  return {
    [bar.source.id]: 'bar',
    [bar.startX.id]: start.x,
    [bar.startY.id]: start.y,
    [bar.endX.id]: end.x,
    [bar.endY.id]: end.y,
  };
}
