/** What an element may be given: attributes by name, `class` included; undefined and false leave one out. */
export type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** A new HTML element with attributes and children; text children stay text. */
export function element<K extends keyof HTMLElementTagNameMap>(
  document: Document,
  tag: K,
  attributes: Attributes = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  setAttributes(made, attributes);
  made.append(...children);
  return made;
}

/** A new SVG element with attributes and children. */
export function svgElement<K extends keyof SVGElementTagNameMap>(
  document: Document,
  tag: K,
  attributes: Attributes = {},
  ...children: (Node | string)[]
): SVGElementTagNameMap[K] {
  const made = document.createElementNS('http://www.w3.org/2000/svg', tag);
  setAttributes(made, attributes);
  made.append(...children);
  return made;
}

/** Writes attributes that changed; undefined and false take one away, true sets it empty. */
export function setAttributes(target: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) target.removeAttribute(name);
    else {
      const text = value === true ? '' : String(value);
      if (target.getAttribute(name) !== text) target.setAttribute(name, text);
    }
  }
}

/** Replaces the text only where it differs, so that screen readers stay quiet about what did not change. */
export function setText(target: Element, text: string): void {
  if (target.textContent !== text) target.textContent = text;
}
