// SPDX-License-Identifier: Apache-2.0
import { Refused, type ChangeRequest, type DraftView } from "./ask";
import type { Bench } from "./bench";

const DRAFT = "tubwright-draft";

/** The other layup that this tab is trying; the program keeps it. */
export class Drafts {
  constructor(private readonly bench: Bench) {}

  /** The draft this tab had before it was loaded again, if the program still has it. */
  async takeUp(): Promise<void> {
    const id = sessionStorage.getItem(DRAFT);
    if (!id) return;
    try {
      const draft = await this.bench.ask.draft(id);
      if (draft.variant === this.bench.state.variant) this.bench.set({ draft });
    } catch {
      sessionStorage.removeItem(DRAFT);
    }
  }

  /** One of the drafts has moved without being asked to. */
  async heard(id: string): Promise<void> {
    if (id !== this.bench.state.draft?.id) return;
    try {
      this.bench.set({ draft: await this.bench.ask.draft(id) });
    } catch (fault) {
      if (!(fault instanceof Refused)) throw fault;
      sessionStorage.removeItem(DRAFT);
      this.bench.set({ draft: undefined, message: "What you were trying does not fit the file as it now is; it was let go." });
    }
  }

  private async need(): Promise<string> {
    const { draft, variant } = this.bench.state;
    if (draft) return draft.id;
    const opened = await this.bench.ask.openDraft(variant);
    sessionStorage.setItem(DRAFT, opened.id);
    this.bench.set({ draft: opened });
    return opened.id;
  }

  private move(step: (id: string) => Promise<DraftView>): Promise<void> {
    this.bench.set({ busy: true });
    return this.bench
      .attempt(async () => this.bench.set({ draft: await step(await this.need()) }))
      .finally(() => this.bench.set({ busy: false }));
  }

  change(changes: ChangeRequest[]): Promise<void> {
    return this.move((id) => this.bench.ask.stepDraft(id, changes));
  }

  undo(): Promise<void> {
    return this.move((id) => this.bench.ask.undoDraft(id));
  }

  redo(): Promise<void> {
    return this.move((id) => this.bench.ask.redoDraft(id));
  }

  /** Lays a point of the curve on the tub, and shows where it differs. */
  lay(point: number): Promise<void> {
    this.bench.set({ marked: undefined });
    return this.move((id) => this.bench.ask.layDraft(id, point)).then(() => this.bench.look("tried"));
  }

  /** Puts the draft into the file; what came of it is shown when it was refused. */
  keep(name: string): Promise<void> {
    return this.bench.attempt(async () => {
      const kept = await this.bench.ask.keepDraft(await this.need(), name);
      this.bench.set({ kept: kept.kept ? undefined : kept, message: kept.kept ? `${kept.message}.` : undefined });
    });
  }
}
