import type { OwnContent } from '../../../ownBlocks.ts';
import type { PageContext, RenderBlock } from '../../context.ts';
import { element } from '../../element.ts';
import type { WorkPlace } from '../../workLines.ts';
import { workPlace } from '../../workLines.ts';
import { renderChartPiece } from './chartPiece.ts';

/** A piece of an own page as it is shown. */
export interface PieceView {
  readonly element: HTMLElement;
  /** Where it tells of long work; none for what needs no work of the page. */
  readonly place: WorkPlace | undefined;
  close(): void;
}

/** Renders a piece with its heading and its caption, and keeps it live until it is closed. */
export function createPiece(context: PageContext, content: OwnContent, renderBlock: RenderBlock): PieceView {
  const { document } = context;
  const stops: (() => void)[] = [];
  const holder = element(document, 'div', { class: 'own-shown' });
  const shown = bodyOf(context, content, renderBlock, stops);
  if (content.kind !== 'problem' && content.heading)
    holder.append(element(document, 'h2', {}, content.heading));
  // Only while the page is arranged (own.css): elsewhere what the design leaves out is not missed.
  const note = element(
    document,
    'p',
    { class: 'own-said own-nothing' },
    'This design gives it nothing to show at present.',
  );
  holder.append(shown, note);
  if (content.kind !== 'problem' && content.caption)
    holder.append(element(document, 'p', { class: 'own-caption' }, content.caption));
  return {
    element: holder,
    place: content.kind === 'block' ? workPlace(context, shown, content.block) : undefined,
    close() {
      for (const stop of stops.reverse()) stop();
      holder.remove();
    },
  };
}

function bodyOf(
  context: PageContext,
  content: OwnContent,
  renderBlock: RenderBlock,
  stops: (() => void)[],
): HTMLElement {
  if (content.kind === 'block') return renderBlock(context, content.block, stops);
  if (content.kind === 'chart') return renderChartPiece(context, content.plan, stops, content.bare);
  return element(context.document, 'p', { class: 'problem' }, content.message);
}
