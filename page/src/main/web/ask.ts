// SPDX-License-Identifier: Apache-2.0
import type { components } from "@api";
import { open, type Parcel } from "./binary";

type Schemas = components["schemas"];
export type ProjectView = Schemas["ProjectView"];
export type TubView = Schemas["TubView"];
export type StackView = Schemas["StackView"];
export type LayerView = Schemas["LayerView"];
export type AnswerView = Schemas["AnswerView"];
export type CaseView = Schemas["CaseView"];
export type FieldsView = Schemas["FieldsView"];
export type LedgerView = Schemas["LedgerView"];
export type OwnerView = Schemas["OwnerView"];
export type RowView = Schemas["RowView"];
export type DraftView = Schemas["DraftView"];
export type ChangeRequest = Schemas["ChangeRequest"];
export type KeptView = Schemas["KeptView"];
export type RunView = Schemas["RunView"];
export type LogView = Schemas["LogView"];
export type ExchangeView = Schemas["ExchangeView"];
export type ExchangeRequest = Schemas["ExchangeRequest"];
export type ModesView = Schemas["ModesView"];
export type ShapeView = Schemas["ShapeView"];
export type LayView = Schemas["LayView"];
export type PlyView = Schemas["PlyView"];
export type StoredView = Schemas["StoredView"];
export type TestView = Schemas["TestView"];
export type FileView = Schemas["FileView"];
export type ExplainedView = Schemas["ExplainedView"];
export type ExplainRequest = Schemas["ExplainRequest"];
export type HitView = Schemas["HitView"];
export type HitRequest = Schemas["HitRequest"];
export type StudyView = Schemas["StudyView"];
export type OpenPointRequest = Schemas["OpenPointRequest"];
export type Happening = Schemas["Happening"];

/** The server said no, and why. */
export class Refused extends Error {
  readonly status: number;

  constructor(status: number, message: string) {
    super(message);
    this.status = status;
  }
}

const KEY = "tubwright-token";

/**
 * The token of the address the program printed. It is taken out of the address bar at once, and kept for this tab so
 * that the page can be loaded again.
 */
export function takeToken(): string {
  const given = location.hash.slice(1);
  if (given) {
    sessionStorage.setItem(KEY, given);
    history.replaceState(null, "", location.pathname);
  }
  return sessionStorage.getItem(KEY) ?? "";
}

/** Asks the program. */
export class Ask {
  private readonly token: string;

  constructor(token: string) {
    this.token = token;
  }

  project = () => this.json<ProjectView>("/api/project");
  answers = () => this.json<AnswerView[]>("/api/answers");
  run = () => this.json<RunView>("/api/run");
  startRun = () => this.post<RunView>("/api/run");
  stopRun = () => this.post<RunView>("/api/run/stop");
  exchange = () => this.json<ExchangeView>("/api/exchange");
  exchangeWork = () => this.json<RunView>("/api/exchange/work");
  startExchange = (asked: ExchangeRequest) => this.post<RunView>("/api/exchange/start", asked);
  stopExchange = () => this.post<RunView>("/api/exchange/stop");
  layDraft = (draft: string, point: number) => this.post<DraftView>("/api/draft/lay", { point }, { draft });
  modes = () => this.json<ModesView>("/api/modes");
  modesWork = () => this.json<RunView>("/api/modes/work");
  startModes = (variant: string) => this.post<RunView>("/api/modes/start", { variant });
  stopModes = () => this.post<RunView>("/api/modes/stop");
  shape = (variant: string, number: number) => this.binary<ShapeView>("/api/shape", { variant, number: String(number) });
  hit = (asked: HitRequest) => this.post<HitView>("/api/hit", asked);
  laying = () => this.json<LayView>("/api/laying");
  layingWork = () => this.json<RunView>("/api/laying/work");
  startLaying = (variant: string) => this.post<RunView>("/api/laying/start", { variant });
  stopLaying = () => this.post<RunView>("/api/laying/stop");
  ply = (variant: string, number: number) => this.binary<PlyView>("/api/ply", { variant, number: String(number) });
  studies = () => this.json<StudyView[]>("/api/studies");
  openPoint = (asked: OpenPointRequest) => this.post<KeptView>("/api/studies/open", asked);
  runs = () => this.json<StoredView[]>("/api/runs");
  runAnswers = (run: number) => this.json<AnswerView[]>("/api/runs/answers", { run: String(run) });
  readings = () => this.json<FileView[]>("/api/readings");
  test = (file: string, dropped: boolean) => this.json<TestView>("/api/test", { file, bedIn: dropped ? "drop" : "keep" });
  explained = () => this.json<ExplainedView>("/api/explained");
  testWork = () => this.json<RunView>("/api/explained/work");
  startTest = (asked: ExplainRequest) => this.post<RunView>("/api/explained/start", asked);
  stopTest = () => this.post<RunView>("/api/explained/stop");
  keepTest = () => this.post<ExplainedView>("/api/explained/keep");
  log = () => this.json<LogView[]>("/api/log");
  note = (words: string) => this.post<LogView[]>("/api/log", { words });
  tub = (variant: string) => this.binary<TubView>("/api/tub", { variant });
  fields = (variant: string, loading: string) => this.binary<FieldsView>("/api/fields", { variant, loading });
  draft = (draft: string) => this.json<DraftView>("/api/draft", { draft });
  openDraft = (variant: string) => this.post<DraftView>("/api/draft", { variant });
  stepDraft = (draft: string, changes: ChangeRequest[]) => this.post<DraftView>("/api/draft/step", { changes }, { draft });
  undoDraft = (draft: string) => this.post<DraftView>("/api/draft/undo", undefined, { draft });
  redoDraft = (draft: string) => this.post<DraftView>("/api/draft/redo", undefined, { draft });
  keepDraft = (draft: string, name: string) => this.post<KeptView>("/api/draft/keep", { name }, { draft });
  file = async (path: string) => (await this.fetch("/api/file", { query: { path } })).blob();

  /** The ledger; none while the variant is being solved. */
  async ledger(variant: string): Promise<LedgerView | undefined> {
    return (await this.json<LedgerView[]>("/api/ledger", { variant }))[0];
  }

  /** Hears what happens until the connection ends; resolves then. */
  async listen(hear: (what: Happening) => void, signal: AbortSignal): Promise<void> {
    const response = await this.fetch("/api/events", { signal });
    const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
    let rest = "";
    for (;;) {
      const { value, done } = await reader.read();
      if (done) return;
      const parts = (rest + value).split("\n\n");
      rest = parts.pop()!;
      for (const part of parts) {
        if (part.startsWith("data: ")) hear(JSON.parse(part.slice(6)) as Happening);
      }
    }
  }

  private async json<T>(path: string, query: Record<string, string> = {}): Promise<T> {
    return (await (await this.fetch(path, { query })).json()) as T;
  }

  private async binary<T>(path: string, query: Record<string, string>): Promise<Parcel<T>> {
    return open<T>(await (await this.fetch(path, { query })).arrayBuffer());
  }

  private async post<T>(path: string, body?: unknown, query: Record<string, string> = {}): Promise<T> {
    return (await (await this.fetch(path, { query, method: "POST", body })).json()) as T;
  }

  private async fetch(
    path: string,
    how: { query?: Record<string, string>; method?: string; body?: unknown; signal?: AbortSignal },
  ): Promise<Response> {
    const query = new URLSearchParams(how.query).toString();
    const headers: Record<string, string> = { Authorization: `Bearer ${this.token}` };
    const init: RequestInit = { method: how.method ?? "GET", headers };
    if (how.body !== undefined) {
      headers["Content-Type"] = "application/json";
      init.body = JSON.stringify(how.body);
    }
    if (how.signal) init.signal = how.signal;
    const response = await fetch(query ? `${path}?${query}` : path, init).catch(() => {
      throw new Error("The program did not answer, so nothing was done.");
    });
    if (!response.ok) {
      const text = await response.text();
      let message = text;
      try {
        message = (JSON.parse(text) as { message: string }).message;
      } catch {
        // Plain words are a message too.
      }
      throw new Refused(response.status, message);
    }
    return response;
  }
}
