/** Keeps blocks of the page as high as they were at their highest while the hand moves, so that the page does not jump. */
export interface HeldHeights {
  /** No block becomes lower than it is, or was since this was first called. */
  hold(): void;
  /** Blocks take the height they need. */
  release(): void;
  close(): void;
}

/**
 * Heights come from an observer and not by asking, which would lay out the page in the middle of a change; what grew in
 * one change is held from the next on. `--held` is a least height in style.css.
 */
export function holdHeights(blocks: Iterable<Element>): HeldHeights {
  const highest = new Map<HTMLElement, number>();
  const held = new Map<HTMLElement, number>();
  let holding = false;
  const observer = new ResizeObserver((entries) => {
    for (const { target, borderBoxSize } of entries) {
      const block = target as HTMLElement;
      // The caption of a table stands outside the height that may be set for it.
      const caption = (target as HTMLTableElement).caption?.offsetHeight ?? 0;
      const height = borderBoxSize[0]!.blockSize - caption;
      highest.set(block, holding ? Math.max(height, highest.get(block) ?? 0) : height);
    }
  });
  for (const block of blocks) observer.observe(block);
  return {
    hold() {
      holding = true;
      for (const [block, height] of highest) {
        if (held.get(block) === height) continue;
        held.set(block, height);
        block.style.setProperty('--held', `${height}px`);
      }
    },
    release() {
      holding = false;
      for (const block of held.keys()) block.style.removeProperty('--held');
      held.clear();
    },
    close: () => observer.disconnect(),
  };
}
