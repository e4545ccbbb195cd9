import { designGraph } from '../../../lib/design/design.ts';
import type { History } from '../../../lib/graph/history.ts';
import { restoreHistory, saveHistory } from '../../keeping/savedHistory.ts';
import { readSavedFileAgain } from '../../measuredFiles.ts';
import { type Draft, type Drafts, knownDrafts } from '../controls/drafts.ts';
import type { Live } from '../live.ts';
import { type Claim, claimDesign } from './claim.ts';
import { type Journal, openJournal } from './journal.ts';
import { freshId, type KeepingWindow, locksOf, patiently, readTab, writeTab } from './keepingWindow.ts';

/** What the person should know of the keeping; texts are empty while all is well. */
export interface KeepingStatus {
  /** `again`: the last design is open again; `elsewhere`: it is open in another tab too; `copy`: this is a copy of that. */
  readonly design: 'own' | 'again' | 'elsewhere' | 'copy';
  /** What came back with the design as it had been typed, and has not been taken yet. */
  readonly typed: readonly Draft[];
  /** Why the design will not last. */
  readonly trouble: string;
}

/** Keeps the open design and its undo in the browser. */
export interface Keeping {
  /** Takes the design that was open with what was typed into it, and keeps what follows. */
  start(live: Live, drafts: Drafts): void;
  status(): KeepingStatus;
  onStatus(listener: () => void): void;
  /** Goes on with a copy of its own where the design is open in another tab too. */
  copy(): Promise<void>;
  /** Writes what waits. */
  flush(): Promise<void>;
}

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
  private drafts: Drafts | undefined;
  private found: { readonly history: History; readonly drafts: readonly Draft[] } | undefined;
  /** Inputs whose drafts came back. */
  private typedBefore = new Set<string>();
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
    this.state = { design: claim.own ? 'own' : 'elsewhere', typed: [], trouble: '' };
    writeTab(window, id);
  }

  /** Reads what is kept under the id; what cannot be read stays as it is, and another id begins. */
  async read(): Promise<void> {
    try {
      const kept = await patiently(async () => this.journal?.read(this.id));
      if (!kept) return;
      const bytesOf = (hash: string) => kept.bytes.get(hash);
      const history = restoreHistory(kept.record.history, { bytesOf, read: readSavedFileAgain });
      this.found = { history, drafts: knownDrafts(designGraph, kept.record.drafts) };
    } catch (error) {
      await this.begin(freshId(this.window));
      const why = (error as Error).message;
      this.tell({ design: 'own', trouble: `The design that was open last cannot be opened again: ${why}` });
    }
  }

  start(live: Live, drafts: Drafts): void {
    this.live = live;
    this.drafts = drafts;
    if (this.found && this.state.design === 'own') this.tell({ design: 'again' });
    this.resume();
    live.onState(() => this.changed());
    drafts.onChange(() => this.typing());
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
    if (this.state.design === 'again') this.tell({ design: 'own' });
    this.writeSoon();
  }

  private typing(): void {
    if (this.resuming) return;
    this.tellTyped();
    this.writeSoon();
  }

  private tellTyped(): void {
    const typed = this.drafts!.all().filter(({ input }) => this.typedBefore.has(input));
    this.typedBefore = new Set(typed.map(({ input }) => input));
    this.tell({ typed });
  }

  private writeSoon(): void {
    if (this.state.design === 'elsewhere') void this.copy();
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
      await this.journal.write(this.id, { history: saved, files, drafts: this.drafts!.all() });
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
    const { history, drafts } = this.found;
    this.found = undefined;
    this.resuming = true;
    this.live!.resume(history);
    if (this.state.design !== 'elsewhere') {
      this.typedBefore = new Set(drafts.map(({ input }) => input));
      this.drafts!.restore(drafts);
    }
    this.resuming = false;
    this.tellTyped();
  }

  private async begin(id: string): Promise<void> {
    this.claim.release();
    this.id = id;
    writeTab(this.window, id);
    this.claim = await claimDesign(locksOf(this.window), id);
  }

  private tell(news: Partial<KeepingStatus>): void {
    const next = { ...this.state, ...news };
    if (sameStatus(next, this.state)) return;
    this.state = next;
    for (const listener of this.listeners) listener();
  }
}

function sameStatus(one: KeepingStatus, other: KeepingStatus): boolean {
  return (
    one.design === other.design &&
    one.trouble === other.trouble &&
    one.typed.length === other.typed.length &&
    one.typed.every((draft, i) => draft === other.typed[i])
  );
}
