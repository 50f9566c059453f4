// SPDX-License-Identifier: Apache-2.0
import type {
  AnswerView,
  DraftView,
  ExchangeView,
  ExplainedView,
  FieldsView,
  FileView,
  KeptView,
  LayView,
  LedgerView,
  LogView,
  ModesView,
  PlyView,
  ProjectView,
  RunView,
  ShapeView,
  StoredView,
  TestView,
} from "./ask";
import type { Parcel } from "./binary";
import type { Cut, Tub, Vector } from "./geometry";
import type { Look } from "./looks";
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
  laying: LayView;
  layingWork: RunView;
  /** The ply that is shown on the tub. */
  ply?: Parcel<PlyView> | undefined;
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

  /** What stands in the margin beside the tub: the key of a chapter. */
  chapter: string;
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

/** What is chosen once for a browser. */
export type Habits = Pick<BenchState, "units" | "dark" | "hints">;

/** Before the server has said anything. */
export function beginning(kept: Partial<Habits>): BenchState {
  return {
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
    laying: { variant: "", revision: "", pieces: [] },
    layingWork: IDLE,
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
  };
}

/** Whether a name is that of a stored run's tub. */
export function isStored(state: BenchState, name: string | undefined): boolean {
  return state.runs.some((r) => r.names.includes(name ?? ""));
}

/** What was computed of a variant, or of a stored run's. */
export function answerOf(state: BenchState, name: string | undefined): AnswerView | undefined {
  return state.answers.find((a) => a.variant === name) ?? state.stored[name ?? ""];
}

/** Why a variant has no answer, where it can have none. */
export function troubleOf(state: BenchState, name: string): string | undefined {
  return state.project?.troubles.find((t) => t.variant === name)?.words;
}

/** How many times the design's own mesh size the mesh of a variant is, where it is coarser. */
export function coarseness(state: BenchState, name: string): number | undefined {
  const view = state.tubs[name]?.view;
  const times = view ? view.meshSize / view.designMeshSize : 1;
  return times > 1.001 ? times : undefined;
}

/** Whether the answer of a variant is of a mesh coarser than the design asks for. */
export function isCoarse(state: BenchState, name: string): boolean {
  return coarseness(state, name) !== undefined && !answerOf(state, name)?.extrapolated;
}

/** Under which name fields are kept. */
export function fieldKey(variant: string, loading: string): string {
  return `${variant}\n${loading}`;
}
