/** A text with plain spaces in place of the narrow ones before units. */
export const asTyped = (text: string): string => text.replaceAll('\u202f', ' ');
