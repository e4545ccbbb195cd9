import type { History } from '../../../lib/graph/history.ts';
import { restoreHistory, saveHistory } from '../../keeping/savedHistory.ts';
import { readSavedFileAgain } from '../../measuredFiles.ts';
import type { Live } from '../live.ts';
import { type Claim, claimDesign } from './claim.ts';
import { type Journal, openJournal } from './journal.ts';

/** What the person should know of the keeping; texts are empty while all is well. */
export interface KeepingStatus {
  /** `again`: the last design is open again; `elsewhere`: it is open in another tab too; `copy`: this is a copy of that. */
  readonly design: 'own' | 'again' | 'elsewhere' | 'copy';
  /** Why the design will not last. */
  readonly trouble: string;
}

/** Keeps the open design and its undo in the browser. */
export interface Keeping {
  /** Takes the design that was open, and keeps what follows. */
  start(live: Live): void;
  status(): KeepingStatus;
  onStatus(listener: () => void): void;
  /** Goes on with a copy of its own where the design is open in another tab too. */
  copy(): Promise<void>;
  /** Writes what waits. */
  flush(): Promise<void>;
}

/** What the keeping needs of a window; reading any of them may throw. */
export type KeepingWindow = Pick<
  Window,
  'indexedDB' | 'navigator' | 'sessionStorage' | 'crypto' | 'addEventListener'
>;

/** From one writing to the next, ms, however fast the hand moves: well within the second that a crash may cost. */
const pause = 300;
const notKept =
  'This browser keeps nothing for this page (a private window, or its storage is blocked or full): the open design lasts until the page closes. Save it to a file to keep it.';

/** Finds the design that was open; `withLink`: the address brings one, so that a design open elsewhere is left alone. */
export async function openKeeping(window: KeepingWindow, withLink = false): Promise<Keeping> {
  const journal = await patiently(async () => openJournal(window.indexedDB));
  const tab = readTab(window);
  const known = tab ?? (await patiently(async () => journal?.latest()));
  let id = known ?? freshId(window);
  let claim = await claimDesign(locksOf(window), id);
  if (!claim.own && tab === undefined && withLink) {
    claim.release();
    id = freshId(window);
    claim = await claimDesign(locksOf(window), id);
  }
  const kept = new KeptDesign(window, journal, id, claim);
  await kept.read();
  return kept;
}

class KeptDesign implements Keeping {
  private live: Live | undefined;
  private found: History | undefined;
  private listeners: (() => void)[] = [];
  private state: KeepingStatus;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private writing: Promise<void> | undefined;
  private resuming = false;
  /** When the last writing began, ms. */
  private begun = -pause;

  constructor(
    private readonly window: KeepingWindow,
    private readonly journal: Journal | undefined,
    private id: string,
    private claim: Claim,
  ) {
    this.state = { design: claim.own ? 'own' : 'elsewhere', trouble: '' };
    writeTab(window, id);
  }

  /** Reads what is kept under the id; what cannot be read stays as it is, and another id begins. */
  async read(): Promise<void> {
    try {
      const kept = await patiently(async () => this.journal?.read(this.id));
      if (!kept) return;
      const bytesOf = (hash: string) => kept.bytes.get(hash);
      this.found = restoreHistory(kept.record.history, { bytesOf, read: readSavedFileAgain });
    } catch (error) {
      await this.begin(freshId(this.window));
      const why = (error as Error).message;
      this.tell({ design: 'own', trouble: `The design that was open last cannot be opened again: ${why}` });
    }
  }

  start(live: Live): void {
    this.live = live;
    if (this.found && this.state.design === 'own') this.tell({ design: 'again' });
    this.resume();
    live.onState(() => this.changed());
    this.window.addEventListener('pagehide', () => void this.flush());
    this.window.addEventListener('visibilitychange', () => void this.flush());
    this.waitForOther();
    void patiently(async () => this.journal?.prune());
  }

  status(): KeepingStatus {
    return this.state;
  }

  onStatus(listener: () => void): void {
    this.listeners.push(listener);
  }

  async copy(): Promise<void> {
    if (this.state.design !== 'elsewhere') return;
    this.tell({ design: 'copy' });
    await this.begin(freshId(this.window));
    await this.write();
  }

  async flush(): Promise<void> {
    if (this.timer === undefined) return this.writing;
    clearTimeout(this.timer);
    this.timer = undefined;
    await this.write();
  }

  private changed(): void {
    if (this.resuming) return;
    if (this.state.design === 'elsewhere') void this.copy();
    else if (this.state.design === 'again') this.tell({ design: 'own' });
    const rest = Math.max(0, this.begun + pause - performance.now());
    this.timer ??= setTimeout(() => void this.flush(), rest);
  }

  private async write(): Promise<void> {
    // One after the other: a slow disk must not bring an older state after a newer one.
    await this.writing;
    this.writing = this.writeNow();
    await this.writing;
  }

  private async writeNow(): Promise<void> {
    this.begun = performance.now();
    try {
      if (!this.journal) throw new Error(notKept);
      const { saved, files } = saveHistory(this.live!.history());
      await this.journal.write(this.id, saved, files);
      this.tell({ trouble: '' });
    } catch {
      this.tell({ trouble: notKept });
    }
  }

  /** The other tab may close before anything is changed here: then its last state goes on here. */
  private waitForOther(): void {
    const { later } = this.claim;
    void later.then(async () => {
      if (this.state.design !== 'elsewhere') return;
      this.tell({ design: 'own' });
      await this.read();
      this.resume();
    });
  }

  private resume(): void {
    if (!this.found) return;
    this.resuming = true;
    this.live!.resume(this.found);
    this.resuming = false;
    this.found = undefined;
  }

  private async begin(id: string): Promise<void> {
    this.claim.release();
    this.id = id;
    writeTab(this.window, id);
    this.claim = await claimDesign(locksOf(this.window), id);
  }

  private tell(news: Partial<KeepingStatus>): void {
    const next = { ...this.state, ...news };
    if (next.design === this.state.design && next.trouble === this.state.trouble) return;
    this.state = next;
    for (const listener of this.listeners) listener();
  }
}

/** What storage answers; undefined where it throws, or is silent for two seconds, as some browsers’ is. */
async function patiently<T>(ask: () => Promise<T>): Promise<T | undefined> {
  const silence = new Promise<undefined>((resolve) => {
    setTimeout(() => resolve(undefined), 2000);
  });
  return Promise.race([ask().catch(() => undefined), silence]);
}

function freshId({ crypto }: KeepingWindow): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
}

function locksOf({ navigator }: KeepingWindow): LockManager | undefined {
  // Absent where the address is not secure.
  return (navigator as Partial<Navigator>).locks;
}

/** The design of this tab outlives loading the page again and the tab’s crash. */
const tabKey = 'stepwell.design';

function readTab(window: KeepingWindow): string | undefined {
  try {
    return window.sessionStorage.getItem(tabKey) ?? undefined;
  } catch {
    return undefined;
  }
}

function writeTab(window: KeepingWindow, id: string): void {
  try {
    window.sessionStorage.setItem(tabKey, id);
  } catch {
    // Then the design changed last is taken for this tab’s.
  }
}
