const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text as XML: marked characters escaped, and control characters left out, which XML 1.0 forbids. */
function escapeXml(text: string): string {
  return text.replace(/(?![\t\n\r])\p{Cc}/gu, '').replace(/[&<>"]/g, (mark) => escapes[mark]!);
}

/** An element as XML text, alike in a browser and without one (an HTML serialiser writes &nbsp;, which XML lacks). */
export function toXml(node: Node): string {
  if (node.nodeType === 3) return escapeXml(node.textContent ?? '');
  if (node.nodeType !== 1) return '';
  const element = node as Element;
  const attributes = [...element.attributes]
    .map(({ name, value }) => ` ${name}="${escapeXml(value)}"`)
    .join('');
  const children = [...element.childNodes].map(toXml).join('');
  return `<${element.localName}${attributes}${children === '' ? '/>' : `>${children}</${element.localName}>`}`;
}
