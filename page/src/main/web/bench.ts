// SPDX-License-Identifier: Apache-2.0
import {
  Ask,
  Refused,
  type AnswerView,
  type ChangeRequest,
  type DraftView,
  type FieldsView,
  type Happening,
  type KeptView,
  type LedgerView,
  type LogView,
  type ProjectView,
  type RunView,
} from "./ask";
import type { Parcel } from "./binary";
import { tubOf, type Cut, type Tub, type Vector } from "./geometry";
import type { Look } from "./looks";
import { Store } from "./store";
import type { Units } from "./units";
import type { View } from "./view";

/** What was read at a point of the tub. */
export interface Picked {
  variant: string;
  element: number;
  place: Vector;
  /** What the colours say there, in the units of that moment. */
  value?: string | undefined;
}

/** What the server said last, and how it is looked at. */
export interface BenchState {
  project?: ProjectView;
  /** Why nothing can be shown. */
  broken?: string;
  connected: boolean;
  tubs: Readonly<Record<string, Tub>>;
  answers: readonly AnswerView[];
  fields: Readonly<Record<string, Parcel<FieldsView>>>;
  ledger?: LedgerView | undefined;
  draft?: DraftView | undefined;
  busy: boolean;
  /** How keeping a draft went, when it did not. */
  kept?: KeptView | undefined;
  run: RunView;
  log: readonly LogView[];
  message?: string | undefined;

  variant: string;
  beside?: string | undefined;
  look: Look;
  loading: string;
  units: Units;
  dark: boolean;
  hints: boolean;
  cut?: Cut | undefined;
  hidden: ReadonlySet<string>;
  picked?: Picked | undefined;
  /** Zone or patch that is held out to the reader. */
  marked?: string | undefined;
  magnify: number;
  swinging: boolean;
  view?: View | undefined;
}

const KEPT = "tubwright-view";
const DRAFT = "tubwright-draft";

/** The page's half of the bench: asks, listens, and keeps how things are looked at. */
export class Bench {
  readonly store: Store<BenchState>;
  readonly ask: Ask;

  constructor(token: string) {
    this.ask = new Ask(token);
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? "{}") as Partial<Pick<BenchState, "units" | "dark" | "hints">>;
    this.store = new Store<BenchState>({
      connected: false,
      tubs: {},
      answers: [],
      fields: {},
      busy: false,
      run: { state: "NONE", words: "", share: 0, seconds: 0 },
      log: [],
      variant: "as designed",
      look: "zones",
      loading: "",
      units: kept.units ?? "SI",
      dark: kept.dark ?? matchMedia("(prefers-color-scheme: dark)").matches,
      hints: kept.hints ?? true,
      hidden: new Set(),
      magnify: 0,
      swinging: false,
    });
  }

  private get state(): BenchState {
    return this.store.get();
  }

  set(part: Partial<BenchState>): void {
    this.store.set(part);
    if ("units" in part || "dark" in part || "hints" in part) {
      const { units, dark, hints } = this.state;
      localStorage.setItem(KEPT, JSON.stringify({ units, dark, hints }));
    }
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
    const beside = project.variants.some((v) => v.name === this.state.beside) ? this.state.beside : undefined;
    const loading = project.variants.find((v) => v.name === variant)?.cases.includes(this.state.loading)
      ? this.state.loading
      : (project.variants.find((v) => v.name === variant)?.cases[0] ?? "");
    this.set({ project, variant, beside, loading });
    document.title = `${project.tub} – Tubwright`;
    if (project.problem) return;
    // What is on screen stays until what takes its place is there.
    if (!same) this.set({ picked: undefined, ledger: undefined });
    await Promise.all([
      ...[variant, beside].filter((v) => v !== undefined && v !== "").map((v) => this.load(v!, !same)),
      this.answered(),
      this.ledger(),
      this.ask.run().then((run) => this.set({ run })),
      this.ask.log().then((log) => this.set({ log })),
    ]);
    if (!this.state.draft) await this.takeUpDraft();
  }

  private async load(variant: string, anew: boolean): Promise<void> {
    if (!anew && this.state.tubs[variant]) return;
    const tub = tubOf(await this.ask.tub(variant));
    this.set({ tubs: { ...this.state.tubs, [variant]: tub } });
  }

  private async answered(): Promise<void> {
    const answers = await this.ask.answers();
    this.set({ answers });
    await this.needFields();
  }

  /** Fetches the fields that the present look wants and that are there. */
  private async needFields(): Promise<void> {
    const { variant, beside, loading, answers } = this.state;
    for (const each of [variant, beside]) {
      const answer = answers.find((a) => a.variant === each);
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
      switch (what.what) {
        case "PROJECT":
          await this.refresh();
          break;
        case "ANSWERS":
          await this.answered();
          break;
        case "RUN":
          this.set({ run: await this.ask.run() });
          break;
        case "LEDGER":
          if (what.subject === this.state.variant) this.soon();
          break;
        case "DRAFT":
          if (what.subject === this.state.draft?.id) {
            this.set({ draft: await this.ask.draft(what.subject) });
          }
          break;
        case "LOGBOOK":
          this.set({ log: await this.ask.log() });
          break;
      }
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
        await this.takeUpDraft();
      }
    });
  }

  compare(beside: string | undefined): Promise<void> {
    this.set({ beside });
    return this.attempt(async () => {
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

  /** The draft this tab had before it was loaded again, if the program still has it. */
  private async takeUpDraft(): Promise<void> {
    const id = sessionStorage.getItem(DRAFT);
    if (!id) return;
    try {
      const draft = await this.ask.draft(id);
      if (draft.variant === this.state.variant) this.set({ draft });
    } catch {
      sessionStorage.removeItem(DRAFT);
    }
  }

  private async needDraft(): Promise<string> {
    const { draft, variant } = this.state;
    if (draft) return draft.id;
    const opened = await this.ask.openDraft(variant);
    sessionStorage.setItem(DRAFT, opened.id);
    this.set({ draft: opened });
    return opened.id;
  }

  change(changes: ChangeRequest[]): Promise<void> {
    return this.move(async () => this.ask.stepDraft(await this.needDraft(), changes));
  }

  undo(): Promise<void> {
    return this.move(async () => this.ask.undoDraft(await this.needDraft()));
  }

  redo(): Promise<void> {
    return this.move(async () => this.ask.redoDraft(await this.needDraft()));
  }

  /** Puts the draft into the file; what came of it is shown when it was refused. */
  keep(name: string): Promise<void> {
    return this.attempt(async () => {
      const kept = await this.ask.keepDraft(await this.needDraft(), name);
      this.set({ kept: kept.kept ? undefined : kept, message: kept.kept ? `${kept.message}.` : undefined });
    });
  }

  private move(step: () => Promise<DraftView>): Promise<void> {
    this.set({ busy: true });
    return this.attempt(async () => this.set({ draft: await step() })).finally(() => this.set({ busy: false }));
  }

  run(): Promise<void> {
    return this.attempt(async () => this.set({ run: await this.ask.startRun() }));
  }

  stop(): Promise<void> {
    return this.attempt(async () => this.set({ run: await this.ask.stopRun() }));
  }

  note(words: string): Promise<void> {
    return this.attempt(async () => this.set({ log: await this.ask.note(words) }));
  }
}

/** Under which name fields are kept. */
export function fieldKey(variant: string, loading: string): string {
  return `${variant}\n${loading}`;
}
