import type { Quantity } from '../../lib/graph/quantity.ts';
import type { Block } from '../document.ts';
import type { Drafts } from './controls/drafts.ts';
import type { Live } from './live.ts';
import type { OwnPartsStore } from './ownPartsStore.ts';
import type { ReadStore } from './reading/readStore.ts';

/** Opens the trace of a quantity; `from` is the number that was chosen. */
export type Opened = (quantity: Quantity, from: HTMLElement) => void;

/** A height of charts that follows the room there is. */
export interface FrameHeight {
  /** Px; undefined where each chart has the height that goes with its width. */
  height(): number | undefined;
  onChange(listener: () => void): () => void;
}

/** What the parts of a page share: the live design, and what happens when a number is opened. */
export interface PageContext {
  readonly document: Document;
  readonly live: Live;
  /** The lenses, expanders and plates that the person keeps. */
  readonly ownParts: OwnPartsStore;
  /** What the address names within the document: `beam-size` of `#lessons/beam-size`; empty where it names nothing. */
  readonly within: string;
  /** How high frames of charts are where the page gives them a height of its own. */
  readonly frames?: FrameHeight;
  /** What this browser remembers of reading; nothing where it is left out. */
  readonly read?: ReadStore;
  /** What is typed and not taken yet. */
  readonly drafts: Drafts;
  /** The design is a lesson's, there for a while: nothing is required of its numbers, and its inputs are not set in a trace. */
  readonly passing?: boolean;
  /** What the document shown is about; where it is missing, the top of the document says why. */
  readonly result?: Quantity;
  /** Opens the trace of a quantity beside the number that was chosen. */
  open: Opened;
  /** Opens the meaning of a word beside where it stands; `bare` without the values of the open design. */
  readonly define?: (word: string, from: HTMLElement, bare?: boolean) => void;
  /** Goes on with a result where it is looked for, or varied. */
  readonly study?: (tool: 'solve' | 'vary', quantity: Quantity) => void;
  /** Tells the person of a problem that has no field of its own. */
  report(message: string): void;
}

/** Renders a block and keeps it live; `stops` collects how to end that. */
export type RenderBlock = (context: PageContext, block: Block, stops: (() => void)[]) => HTMLElement;
