import { documents } from '../../contents.ts';
import { lessons } from '../../lessons/lessons.ts';
import { searchEntries } from '../../search/searchEntries.ts';
import { createSearch } from '../../search/searchIndex.ts';
import { words } from '../../words/words.ts';
import type { PageContext } from '../context.ts';
import { createSearchPanel, type SearchPanel } from './searchPanel.ts';

/** The search over everything that the page holds; `go` leads to an address. */
export function createPageSearch(
  document: Document,
  live: PageContext['live'],
  open: PageContext['open'],
  go: (address: string) => void,
): SearchPanel {
  let of: PageContext['live']['graph'] | undefined;
  let find: ReturnType<typeof createSearch> = () => [];
  return createSearchPanel(document, {
    prepare: () => {
      // Own quantities come and go with the design.
      if (of !== live.graph) {
        const quantities = live.graph.quantities.values();
        find = createSearch(searchEntries({ documents, quantities, words, lessons, lectures: [] }));
      }
      of = live.graph;
      return find;
    },
    choose: ({ quantity, to }, from) => {
      const found = quantity === undefined ? undefined : live.graph.quantities.get(quantity);
      if (found) open(found, from);
      else if (to !== undefined) go(to);
    },
  });
}
