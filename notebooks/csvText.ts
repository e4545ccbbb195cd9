/** A cell of CSV (RFC 4180), in quotes where it needs them. */
export function quoted(words: string): string {
  // Programs that read tables compare names letter by letter, and people type plain spaces.
  const text = words.replace(/[\u00a0\u202f]/g, ' ');
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
