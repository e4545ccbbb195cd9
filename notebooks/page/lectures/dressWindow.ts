/** Gives an empty window the sheets and fonts of a page without a request of its own: without network, only the page gets answers. */
export function dressWindow(from: Document, to: Document): void {
  for (const sheet of from.querySelectorAll<HTMLElement>('link[rel="stylesheet"], style')) {
    if (sheet instanceof HTMLLinkElement && sheet.sheet) takeRules(sheet.sheet, sheet.href, to);
    else to.head.append(to.importNode(sheet, true));
  }
}

function takeRules({ cssRules }: CSSStyleSheet, address: string, to: Document): void {
  const rules = [...cssRules];
  const isFace = (rule: CSSRule) => rule instanceof CSSFontFaceRule;
  const sheet = new (windowOf(to).CSSStyleSheet)({ baseURL: address });
  sheet.replaceSync(
    rules
      .filter((rule) => !isFace(rule))
      .map(({ cssText }) => cssText)
      .join('\n'),
  );
  to.adoptedStyleSheets = [...to.adoptedStyleSheets, sheet];
  for (const rule of rules) if (rule instanceof CSSFontFaceRule) void takeFace(rule.style, address, to);
}

/** Asks for the font from here and hands its bytes over. */
async function takeFace(style: CSSStyleDeclaration, address: string, to: Document): Promise<void> {
  const read = (name: string) => style.getPropertyValue(name);
  const [, source] = /url\(["']?([^"')]+)/.exec(read('src')) ?? [];
  if (source === undefined) return;
  try {
    const answer = await fetch(new URL(source, address));
    const bytes = await answer.arrayBuffer();
    if (!answer.ok || !to.defaultView) return;
    const family = read('font-family').replace(/^["']|["']$/g, '');
    const face = new (windowOf(to).FontFace)(family, bytes, {
      style: read('font-style') || 'normal',
      weight: read('font-weight') || 'normal',
      unicodeRange: read('unicode-range') || 'U+0-10FFFF',
    });
    to.fonts.add(await face.load());
  } catch {
    // Another font of the list in the sheet stands in.
  }
}

const windowOf = (document: Document) => document.defaultView as Window & typeof globalThis;
