import { oneLine } from '../design/ownParts.ts';
import { mostOwnBlocks, mostOwnDocuments } from '../design/savedWritings.ts';
import type { DesignState } from '../graph/state.ts';
import { noStudies, type OwnBlock, type OwnDocument } from '../graph/studies.ts';
import { Problem } from '../problem.ts';
import { freeTitle, freshId, longestTitle } from './freshNames.ts';
import { moved, type PiecesChange, pieceAdded, pieceChanged, pieceTakenOut } from './pieces.ts';

type Design = Omit<DesignState, 'revision'>;

export const ownPagesOf = ({ studies = noStudies }: Design): readonly OwnDocument[] => studies.ownDocuments;

const withPages = (design: Design, ownDocuments: readonly OwnDocument[]): Design => ({
  ...design,
  studies: { ...(design.studies ?? noStudies), ownDocuments },
});

/** The page with that id; a Problem where it is not there any more. */
export function pageOf(design: Design, id: string): OwnDocument {
  const page = ownPagesOf(design).find((one) => one.id === id);
  if (!page) throw new Problem('absent', 'This page has been taken out; undo brings it back.');
  return page;
}

/** The design with a new page behind the others, and the page; a Problem where its title is empty, or no more fit. */
export function addPage(
  design: Design,
  title: string,
  blocks: readonly OwnBlock[] = [],
): { readonly design: Design; readonly page: OwnDocument } {
  const pages = ownPagesOf(design);
  if (pages.length >= mostOwnDocuments)
    throw new Problem(
      'impossible',
      `${mostOwnDocuments} pages are kept, and no more fit. Take one out first.`,
      {
        allowed: `up to ${mostOwnDocuments}`,
      },
    );
  const page = { id: freshId('page', pages), title: readTitle(title), blocks };
  return { design: withPages(design, [...pages, page]), page };
}

/** The same pieces again under another title. */
export function duplicatePage(design: Design, id: string): ReturnType<typeof addPage> {
  const { title, blocks } = pageOf(design, id);
  return addPage(design, freeTitle(title, ownPagesOf(design)), blocks);
}

export function renamePage(design: Design, id: string, title: string): Design {
  return changePage(design, id, (page) => ({ ...page, title: readTitle(title) }));
}

export function takeOutPage(design: Design, id: string): Design {
  return withPages(
    design,
    ownPagesOf(design).filter((page) => page.id !== id),
  );
}

/** The page with a piece at `place`, all behind it one further; a Problem where it is too long, or no more fit. */
export function addPiece(design: Design, id: string, place: number, piece: OwnBlock): Design {
  return changePieces(design, id, pieceAdded(place, piece, mostOwnBlocks, 'on this page'));
}

/** The page with another piece in place of the one at `place`. */
export function changePiece(design: Design, id: string, place: number, piece: OwnBlock): Design {
  return changePieces(design, id, pieceChanged(place, piece));
}

export function takeOutPiece(design: Design, id: string, place: number): Design {
  return changePieces(design, id, pieceTakenOut(place));
}

/** The page with a piece at another place; beyond either end nothing changes. */
export function movePiece(design: Design, id: string, from: number, to: number): Design {
  return changePieces(design, id, (pieces) => moved(pieces, from, to));
}

function changePieces(design: Design, id: string, change: PiecesChange): Design {
  return changePage(design, id, (page) => {
    const blocks = change(page.blocks);
    return blocks === page.blocks ? page : { ...page, blocks };
  });
}

function changePage(design: Design, id: string, change: (page: OwnDocument) => OwnDocument): Design {
  const page = pageOf(design, id);
  const next = change(page);
  if (next === page) return design;
  return withPages(
    design,
    ownPagesOf(design).map((one) => (one.id === id ? next : one)),
  );
}

const readTitle = (title: string): string => oneLine(title, 'title of the page', longestTitle, true);
