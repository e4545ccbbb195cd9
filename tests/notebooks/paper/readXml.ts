/** An element of an XML text, as little as the tests need. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: (XmlElement | string)[];
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** Reads XML and refuses what is not well formed: tags that do not match, bare marks, and characters XML 1.0 forbids. */
export function readXml(xml: string): XmlElement {
  const forbidden = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u.exec(xml);
  if (forbidden) throw new Error(`forbidden character at ${forbidden.index}`);
  const stack: XmlElement[] = [{ name: '', attributes: {}, children: [] }];
  const pattern =
    /<\?[^>]*\?>|<\/([\w:.-]+)\s*>|<([\w:.-]+)((?:\s+[\w:.-]+="[^"<]*")*)\s*(\/?)>|([^<]+)|([\s\S])/gu;
  for (const [all, end, start, attributes, closed, text, other] of xml.matchAll(pattern)) {
    if (other !== undefined) throw new Error(`not XML: ${other}`);
    const top = stack.at(-1)!;
    if (text !== undefined) top.children.push(decode(text));
    else if (end !== undefined) {
      if (stack.pop()!.name !== end) throw new Error(`${all} closes <${top.name}>`);
    } else if (start !== undefined) {
      const made = { name: start, attributes: readAttributes(attributes ?? ''), children: [] };
      top.children.push(made);
      if (closed === '') stack.push(made);
    }
  }
  if (stack.length !== 1) throw new Error(`<${stack.at(-1)!.name}> is not closed`);
  return stack[0]!.children.find((child) => typeof child !== 'string' && child.name !== '') as XmlElement;
}

function readAttributes(text: string): Record<string, string> {
  const found = [...text.matchAll(/([\w:.-]+)="([^"]*)"/g)].map(
    ([, name, value]) => [name!, decode(value!)] as const,
  );
  const read = Object.fromEntries(found);
  if (Object.keys(read).length !== found.length) throw new Error(`an attribute twice in ${text}`);
  return read;
}

function decode(text: string): string {
  if (/&(?!(amp|lt|gt|quot|apos|#\d+|#x[\da-fA-F]+);)/.test(text)) throw new Error(`a bare & in ${text}`);
  return text.replace(/&(\w+);/g, (all, name: string) => entities[name] ?? all);
}

/** All elements of a name, in order. */
export function elements(within: XmlElement, name: string): XmlElement[] {
  return within.children.flatMap((child) =>
    typeof child === 'string' ? [] : [...(child.name === name ? [child] : []), ...elements(child, name)],
  );
}

/** All text in an element. */
export function textOf(element: XmlElement): string {
  return element.children.map((child) => (typeof child === 'string' ? child : textOf(child))).join('');
}
