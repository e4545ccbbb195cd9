import type { OwnBlock } from '../../../../lib/graph/studies.ts';
import { longestTitle } from '../../../../lib/studies/freshNames.ts';
import type { PageContext } from '../../context.ts';
import { labelledField, textInput } from './labelledField.ts';

/** The fields of one kind of piece, and what stands in them. */
export interface PieceFields {
  readonly elements: readonly HTMLElement[];
  /** Throws a Problem that says what is missing or cannot be. */
  read(): OwnBlock;
  focus(): void;
}

/** A piece of that kind. */
export type PieceOf<K extends OwnBlock['kind']> = OwnBlock & { readonly kind: K };

/** `changed` hears of every change of what stands in the fields. */
export type FieldsOf<K extends OwnBlock['kind']> = (
  context: PageContext,
  start: PieceOf<K> | undefined,
  changed: () => void,
) => PieceFields;

const longestCaption = 1000;

/** Title and caption as they stand in a piece. */
export function captionFields(
  { document }: PageContext,
  start: { readonly title?: string; readonly caption?: string } | undefined,
  changed: () => void,
) {
  const title = textInput(document, longestTitle);
  const caption = textInput(document, longestCaption);
  title.value = start?.title ?? '';
  caption.value = start?.caption ?? '';
  for (const field of [title, caption]) field.addEventListener('input', changed);
  return {
    elements: [
      labelledField(document, 'Title', title, 'May stay empty.'),
      labelledField(document, 'Caption', caption, 'Stands below it; may stay empty.'),
    ],
    read: () => ({
      ...(title.value.trim() !== '' && { title: title.value.trim() }),
      ...(caption.value.trim() !== '' && { caption: caption.value.trim() }),
    }),
  };
}
