/** Copies an address of this page that ends in what stands behind its #, and shows it in a field; resolves with what to say. */
export async function copyAddress(document: Document, end: string, field: HTMLInputElement): Promise<string> {
  const { origin, pathname, protocol } = document.location;
  const start = protocol === 'file:' ? `file://${pathname}` : `${origin}${pathname}`;
  const only =
    protocol === 'file:'
      ? ' It opens on this machine only: elsewhere it needs the file of this page too, so give that with it.'
      : '';
  field.value = `${start}#${end}`;
  field.hidden = false;
  try {
    await document.defaultView!.navigator.clipboard.writeText(field.value);
    return `The link is copied.${only}`;
  } catch {
    field.select();
    return `This browser does not let the page copy: copy the link from the field.${only}`;
  }
}
