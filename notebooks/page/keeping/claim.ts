/** Says whether a design is open in this tab alone. */
export interface Claim {
  /** True where this tab has the design to itself. */
  readonly own: boolean;
  /** Resolves when the tab that has it has closed or taken another design, and this one has it; never where `own`. */
  readonly later: Promise<void>;
  /** Gives it up. */
  release(): void;
}

/** A page that is loaded again may find its own former self for some milliseconds. */
const patience = 400;

/** Claims a design for this tab; a tab that closes or dies gives up its claims. Without locks every tab counts alone. */
export async function claimDesign(locks: LockManager | undefined, id: string): Promise<Claim> {
  const never = new Promise<void>(() => {});
  if (!locks) return { own: true, later: never, release: () => {} };
  const stop = new AbortController();
  let letGo = () => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const later = new Promise<void>((resolve) => {
    const got = () => {
      resolve();
      return held;
    };
    // Rejects when it is given up while waiting; else the browser has no locks at this address, and this tab counts alone.
    locks
      .request(`stepwell-design-${id}`, { signal: stop.signal }, got)
      .catch(() => stop.signal.aborted || resolve());
  });
  const release = () => {
    stop.abort();
    letGo();
  };
  const own = await Promise.race([later.then(() => true), waited(patience).then(() => false)]);
  return { own, later: own ? never : later, release };
}

function waited(time: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, time);
  });
}
