/**
 * Lets a design file be dropped anywhere on the page. What is dropped on a place for other files goes there, unless it
 * is JSON, which none of them takes.
 */
export function acceptDesigns(document: Document, open: (file: File) => void): void {
  const take = (event: DragEvent, file: File) => {
    event.preventDefault();
    event.stopPropagation();
    for (const zone of document.querySelectorAll('[data-over]')) zone.removeAttribute('data-over');
    open(file);
  };
  const dropped = (event: DragEvent) => event.dataTransfer?.files[0];
  document.addEventListener('dragover', (event) => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  });
  document.addEventListener(
    'drop',
    (event) => {
      const file = dropped(event);
      if (file && /\.json$/i.test(file.name)) take(event, file);
    },
    { capture: true },
  );
  // Without this the browser would leave the page to show the file.
  document.addEventListener('drop', (event) => {
    const file = dropped(event);
    if (file && !event.defaultPrevented) take(event, file);
  });
}
