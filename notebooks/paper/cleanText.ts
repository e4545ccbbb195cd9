/**
 * Text in one line that every kind of file may hold: characters that XML 1.0 forbids and marks that turn the direction of
 * what follows are left out, halves of a surrogate pair become U+FFFD, and tabs and line ends become spaces.
 */
export function cleanText(text: string): string {
  return text
    .replace(/\p{Cs}/gu, '\uFFFD')
    .replace(/\s*[\t\n\r\u0085\u2028\u2029]\s*/g, ' ')
    .replace(/[\p{Cc}\uFFFE\uFFFF\u202A-\u202E\u2066-\u2069]/gu, '');
}
