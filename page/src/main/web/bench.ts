// SPDX-License-Identifier: Apache-2.0
import { Ask, Refused, type Happening } from "./ask";
import { Drafts } from "./drafts";
import { ExchangeErrand, ModesErrand, RunErrand, TestErrand } from "./errands";
import { tubOf } from "./geometry";
import { LayErrand } from "./layings";
import { LogbookDesk } from "./logbookdesk";
import type { Look } from "./looks";
import { answerOf, beginning, fieldKey, isStored, type BenchState, type Habits } from "./state";
import { Store } from "./store";

const KEPT = "tubwright-view";

/**
 * The page's half of the bench: asks, listens, and keeps how things are looked at. What belongs to one chapter is in a part
 * of its own, which says what it follows.
 */
export class Bench {
  readonly store: Store<BenchState>;
  readonly ask: Ask;
  readonly drafts: Drafts;
  readonly runs: RunErrand;
  readonly exchange: ExchangeErrand;
  readonly modes: ModesErrand;
  readonly tests: TestErrand;
  readonly laying: LayErrand;
  readonly logbook: LogbookDesk;
  private readonly followers = new Map<Happening["what"], (() => Promise<void>)[]>();

  constructor(token: string) {
    this.ask = new Ask(token);
    this.store = new Store<BenchState>(beginning(JSON.parse(localStorage.getItem(KEPT) ?? "{}") as Partial<Habits>));
    this.drafts = new Drafts(this);
    this.runs = new RunErrand(this);
    this.exchange = new ExchangeErrand(this);
    this.modes = new ModesErrand(this);
    this.tests = new TestErrand(this);
    this.laying = new LayErrand(this);
    this.logbook = new LogbookDesk(this);
    this.follow("ANSWERS", () => this.answered());
  }

  get state(): BenchState {
    return this.store.get();
  }

  set(part: Partial<BenchState>): void {
    this.store.set(part);
    if ("units" in part || "dark" in part || "hints" in part) {
      const { units, dark, hints } = this.state;
      localStorage.setItem(KEPT, JSON.stringify({ units, dark, hints }));
    }
  }

  /** Does "refresh" with everything else at the start, and again whenever the server says that it happened. */
  follow(what: Happening["what"], refresh: () => Promise<void>): void {
    this.followers.set(what, [...(this.followers.get(what) ?? []), refresh]);
  }

  /** Asks for everything and listens from then on. */
  async start(): Promise<void> {
    for (;;) {
      try {
        const listening = this.ask.listen((what) => void this.heard(what), new AbortController().signal);
        await this.refresh();
        this.set({ connected: true });
        await listening;
      } catch (fault) {
        if (fault instanceof Refused && fault.status === 401) {
          this.set({ broken: fault.message });
          return;
        }
        if (fault instanceof Refused && this.state.project === undefined) this.set({ broken: fault.message });
      }
      this.set({ connected: false });
      await new Promise((resolve) => setTimeout(resolve, 1500));
    }
  }

  private async refresh(): Promise<void> {
    const project = await this.ask.project();
    const before = this.state.project;
    const same = before?.revision === project.revision;
    const known = project.variants.some((v) => v.name === this.state.variant);
    const variant = known ? this.state.variant : (project.variants[0]?.name ?? "");
    const there = (name: string | undefined) => project.variants.some((v) => v.name === name) || isStored(this.state, name);
    const beside = there(this.state.beside) ? this.state.beside : undefined;
    const loading = project.variants.find((v) => v.name === variant)?.cases.includes(this.state.loading)
      ? this.state.loading
      : (project.variants.find((v) => v.name === variant)?.cases[0] ?? "");
    this.set({ project, variant, beside, loading });
    document.title = `${project.tub} – Tubwright`;
    if (project.problem) return;
    // What is on screen stays until what takes its place is there.
    if (!same) this.set({ picked: undefined, ledger: undefined });
    await Promise.all([
      ...[variant, beside].filter((v) => v !== undefined && v !== "").map((v) => this.load(v!, !same && !isStored(this.state, v))),
      this.ledger(),
      ...[...this.followers.values()].flat().map((refresh) => refresh()),
    ]);
    if (!this.state.draft) await this.drafts.takeUp();
  }

  private async load(variant: string, anew: boolean): Promise<void> {
    if (!anew && this.state.tubs[variant]) return;
    const tub = tubOf(await this.ask.tub(variant));
    this.set({ tubs: { ...this.state.tubs, [variant]: tub } });
  }

  private async answered(): Promise<void> {
    const [answers, project] = await Promise.all([this.ask.answers(), this.ask.project()]);
    // Variants that cannot be answered are told of by the project.
    const before = this.state.project;
    this.set({ answers, ...(before?.revision === project.revision && { project }) });
    await this.needFields();
  }

  /** Fetches the fields that the present look wants and that are there. */
  private async needFields(): Promise<void> {
    const { variant, beside, loading } = this.state;
    for (const each of [variant, beside]) {
      const answer = answerOf(this.state, each);
      if (!each || !answer || !answer.cases.some((c) => c.name === loading)) continue;
      const key = fieldKey(each, loading);
      const have = this.state.fields[key];
      if (have && have.document.revision === answer.revision) continue;
      const fields = await this.ask.fields(each, loading);
      this.set({ fields: { ...this.state.fields, [key]: fields } });
    }
  }

  private async ledger(): Promise<void> {
    const ledger = await this.ask.ledger(this.state.variant);
    if (ledger?.variant === this.state.variant) this.set({ ledger });
  }

  private async heard(what: Happening): Promise<void> {
    try {
      if (what.what === "PROJECT") await this.refresh();
      else if (what.what === "LEDGER" && what.subject === this.state.variant) this.soon();
      else if (what.what === "DRAFT") await this.drafts.heard(what.subject);
      await Promise.all((this.followers.get(what.what) ?? []).map((refresh) => refresh()));
    } catch (fault) {
      this.trouble(fault);
    }
  }

  private waiting = 0;

  /** Rows of the ledger come by the dozen: asked for at most twice a second. */
  private soon(): void {
    if (this.waiting) return;
    this.waiting = window.setTimeout(() => {
      this.waiting = 0;
      this.ledger().catch((fault: unknown) => this.trouble(fault));
    }, 500);
  }

  private trouble(fault: unknown): void {
    if (fault instanceof Refused && fault.status === 409) return; // The file moved on; the next happening brings the new state.
    this.set({ message: fault instanceof Error ? fault.message : String(fault) });
  }

  /** Does something that may be refused, and says so. */
  async attempt(action: () => Promise<void>): Promise<void> {
    this.set({ message: undefined });
    try {
      await action();
    } catch (fault) {
      this.trouble(fault);
    }
  }

  show(variant: string): Promise<void> {
    const changed = variant !== this.state.variant;
    this.set({ variant, beside: variant === this.state.beside ? undefined : this.state.beside });
    if (changed) this.set({ ledger: undefined, draft: undefined, picked: undefined, marked: undefined });
    return this.attempt(async () => {
      await this.load(variant, false);
      await this.needFields();
      if (changed) {
        await this.ledger();
        await this.drafts.takeUp();
      }
    });
  }

  compare(beside: string | undefined): Promise<void> {
    this.set({ beside });
    return this.attempt(async () => {
      if (beside) await this.logbook.recall(beside);
      if (beside) await this.load(beside, false);
      await this.needFields();
    });
  }

  look(look: Look): Promise<void> {
    this.set({ look });
    return this.attempt(() => this.needFields());
  }

  case(loading: string): Promise<void> {
    this.set({ loading });
    return this.attempt(() => this.needFields());
  }
}
