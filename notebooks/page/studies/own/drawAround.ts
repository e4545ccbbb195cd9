/** Puts these children into a parent; the one that is `kept` is never taken out, so that what is typed in it can still be undone there. */
export function drawAround(
  parent: HTMLElement,
  children: readonly HTMLElement[],
  kept: HTMLElement | undefined,
): void {
  const at = kept ? children.indexOf(kept) : -1;
  if (!kept || at < 0 || kept.parentNode !== parent) return parent.replaceChildren(...children);
  for (const child of [...parent.childNodes]) if (child !== kept) child.remove();
  kept.before(...children.slice(0, at));
  kept.after(...children.slice(at + 1));
}
