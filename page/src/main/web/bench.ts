// SPDX-License-Identifier: Apache-2.0
import {
  Ask,
  Refused,
  type AnswerView,
  type ChangeRequest,
  type DraftView,
  type ExchangeRequest,
  type ExchangeView,
  type ExplainedView,
  type ExplainRequest,
  type FieldsView,
  type FileView,
  type Happening,
  type KeptView,
  type LedgerView,
  type LogView,
  type ModesView,
  type ProjectView,
  type RunView,
  type ShapeView,
  type StoredView,
  type TestView,
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

/** What stands in the margin beside the tub. */
export type Chapter = "plies" | "exchange" | "modes" | "test" | "log";

const IDLE: RunView = { state: "NONE", words: "", share: 0, seconds: 0 };

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
  exchange: ExchangeView;
  exchangeWork: RunView;
  modes: ModesView;
  modesWork: RunView;
  /** The shape that was chosen last. */
  mode?: Parcel<ShapeView> | undefined;
  readings: readonly FileView[];
  /** The test that is open. */
  test?: TestView | undefined;
  explained: ExplainedView;
  testWork: RunView;
  log: readonly LogView[];
  /** Runs of other days. */
  runs: readonly StoredView[];
  /** What was fetched of them, by tub. */
  stored: Readonly<Record<string, AnswerView>>;
  /** Their tubs whose twist lines are drawn. */
  overlaid: readonly string[];
  message?: string | undefined;

  chapter: Chapter;
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
      run: IDLE,
      exchange: { variant: "", revision: "", loading: "", kind: "TORSION", points: [], marks: [] },
      exchangeWork: IDLE,
      modes: { variant: "", revision: "", shapes: [], notes: [], aboutBuckling: "", aboutVibration: "" },
      modesWork: IDLE,
      readings: [],
      explained: {
        file: "",
        variant: "",
        revision: "",
        predicted: 0,
        calibrated: 0,
        calibratedExpanded: 0,
        measured: 0,
        measuredExpanded: 0,
        verdict: [],
        points: [],
        segments: [],
        factors: [],
      },
      testWork: IDLE,
      chapter: "plies",
      log: [],
      runs: [],
      stored: {},
      overlaid: [],
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
      this.answered(),
      this.ledger(),
      this.ask.run().then((run) => this.set({ run })),
      this.exchanged(),
      this.shaped(),
      this.tested(),
      this.logged(),
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

  private async exchanged(): Promise<void> {
    const [exchange, exchangeWork] = await Promise.all([this.ask.exchange(), this.ask.exchangeWork()]);
    this.set({ exchange, exchangeWork });
  }

  private async shaped(): Promise<void> {
    const [modes, modesWork] = await Promise.all([this.ask.modes(), this.ask.modesWork()]);
    this.set({ modes, modesWork });
  }

  private async logged(): Promise<void> {
    const [log, runs] = await Promise.all([this.ask.log(), this.ask.runs()]);
    this.set({ log, runs });
  }

  /** Fetches what a stored run answered, unless it is here. */
  private async recall(name: string): Promise<void> {
    const run = this.state.runs.find((r) => r.names.includes(name));
    if (!run || this.state.stored[name]) return;
    const answers = await this.ask.runAnswers(run.id);
    this.set({ stored: { ...this.state.stored, ...Object.fromEntries(answers.map((a) => [a.variant, a])) } });
  }

  private async tested(): Promise<void> {
    const [explained, testWork] = await Promise.all([this.ask.explained(), this.ask.testWork()]);
    this.set({ explained, testWork });
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
        case "EXCHANGE":
          await this.exchanged();
          break;
        case "MODES":
          await this.shaped();
          break;
        case "TEST":
          await this.tested();
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
          await this.logged();
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
      if (beside) await this.recall(beside);
      if (beside) await this.load(beside, false);
      await this.needFields();
    });
  }

  /** Draws the twist line of a stored run's tub beside the others, or no longer. */
  overlay(name: string, on: boolean): Promise<void> {
    const without = this.state.overlaid.filter((n) => n !== name);
    this.set({ overlaid: on ? [...without, name] : without });
    return this.attempt(() => this.recall(name));
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

  drawExchange(asked: ExchangeRequest): Promise<void> {
    return this.attempt(async () => this.set({ exchangeWork: await this.ask.startExchange(asked) }));
  }

  stopExchange(): Promise<void> {
    return this.attempt(async () => this.set({ exchangeWork: await this.ask.stopExchange() }));
  }

  /** Lays a point of the curve on the tub, and shows where it differs. */
  lay(point: number): Promise<void> {
    this.set({ marked: undefined });
    return this.move(async () => this.ask.layDraft(await this.needDraft(), point)).then(() => this.look("tried"));
  }

  findModes(): Promise<void> {
    return this.attempt(async () => this.set({ modesWork: await this.ask.startModes(this.state.variant) }));
  }

  stopModes(): Promise<void> {
    return this.attempt(async () => this.set({ modesWork: await this.ask.stopModes() }));
  }

  /** Shows a shape on the tub, moving unless the reader asked their machine for stillness. */
  showMode(number: number): Promise<void> {
    return this.attempt(async () => {
      const mode = await this.ask.shape(this.state.modes.variant, number);
      const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
      this.set({ mode, look: "mode", marked: undefined, magnify: this.state.magnify || 1, swinging: this.state.swinging || !still });
    });
  }

  findReadings(): Promise<void> {
    return this.attempt(async () => this.set({ readings: await this.ask.readings() }));
  }

  /** Opens a test, or puts it away. */
  openTest(file: string, dropped: boolean): Promise<void> {
    return this.attempt(async () => this.set({ test: file === "" ? undefined : await this.ask.test(file, dropped) }));
  }

  explain(asked: ExplainRequest): Promise<void> {
    return this.attempt(async () => this.set({ testWork: await this.ask.startTest(asked) }));
  }

  stopTest(): Promise<void> {
    return this.attempt(async () => this.set({ testWork: await this.ask.stopTest() }));
  }

  keepTest(): Promise<void> {
    return this.attempt(async () => this.set({ explained: await this.ask.keepTest() }));
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

/** Whether a name is that of a stored run's tub. */
export function isStored(state: BenchState, name: string | undefined): boolean {
  return state.runs.some((r) => r.names.includes(name ?? ""));
}

/** What was computed of a variant, or of a stored run's. */
export function answerOf(state: BenchState, name: string | undefined): AnswerView | undefined {
  return state.answers.find((a) => a.variant === name) ?? state.stored[name ?? ""];
}

/** Under which name fields are kept. */
export function fieldKey(variant: string, loading: string): string {
  return `${variant}\n${loading}`;
}
