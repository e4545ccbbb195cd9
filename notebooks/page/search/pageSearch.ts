import type { Graph } from '../../../lib/graph/graph.ts';
import type { Lecture } from '../../../lib/graph/studies.ts';
import { lecturesOf } from '../../../lib/studies/lectures.ts';
import { documents } from '../../contents.ts';
import { shippedLectures } from '../../lectures/shipped.ts';
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
  let of: { readonly graph: Graph; readonly own: readonly Lecture[] } | undefined;
  let find: ReturnType<typeof createSearch> = () => [];
  return createSearchPanel(document, {
    prepare: () => {
      // Own quantities and lectures come and go with the design.
      const own = lecturesOf(live.state());
      if (of?.graph !== live.graph || of.own !== own) {
        const quantities = live.graph.quantities.values();
        const lectures = [...shippedLectures, ...own];
        find = createSearch(searchEntries({ documents, quantities, words, lessons, lectures }));
      }
      of = { graph: live.graph, own };
      return find;
    },
    choose: ({ quantity, to }, from) => {
      const found = quantity === undefined ? undefined : live.graph.quantities.get(quantity);
      if (found) open(found, from);
      else if (to !== undefined) go(to);
    },
  });
}
