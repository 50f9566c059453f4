// SPDX-License-Identifier: Apache-2.0
import type { ComponentType } from "preact";
import type { Bench } from "./bench";
import { Exchange } from "./exchange";
import { Laying } from "./laying";
import { Logbook } from "./logbook";
import { Modes } from "./modes";
import { Patch } from "./patch";
import { Plies } from "./plies";
import { coarseness, type BenchState } from "./state";
import { Studies } from "./studies";
import { TorsionTest } from "./test";

interface ChapterProps {
  bench: Bench;
  state: BenchState;
}

/**
 * What may stand in the margin beside the tub. A chapter more is a component in a file of its own and a line here; what it
 * asks the server for, it follows through bench.follow.
 */
export const CHAPTERS: readonly { key: string; name: string; View: ComponentType<ChapterProps> }[] = [
  { key: "plies", name: "Plies", View: Plies },
  { key: "exchange", name: "Exchange", View: Exchange },
  { key: "studies", name: "Studies", View: Studies },
  { key: "modes", name: "Modes", View: Modes },
  { key: "patch", name: "Patch away", View: Patch },
  { key: "laying", name: "Laying", View: Laying },
  { key: "test", name: "Torsion test", View: TorsionTest },
  { key: "log", name: "Logbook", View: Logbook },
];

/** The names of the chapters, to choose from. */
export function Chapters({ bench, state }: ChapterProps) {
  return (
    <nav class="chapters" aria-label="In the margin">
      {CHAPTERS.map((c) => (
        <button
          key={c.key}
          type="button"
          class="quiet"
          aria-current={state.chapter === c.key}
          onClick={() => bench.set({ chapter: c.key })}
          data-test={`chapter-${c.key}`}
        >
          {c.name}
        </button>
      ))}
    </nav>
  );
}

/** The chapter that is open. */
export function OpenChapter({ bench, state }: ChapterProps) {
  const open = CHAPTERS.find((c) => c.key === state.chapter) ?? CHAPTERS[0];
  const coarse = open.key !== "log" && coarseness(state, state.variant) !== undefined;
  return (
    <>
      {coarse && (
        <p class="small">
          <span class="coarse">coarse mesh</span>: what is computed here is of this mesh, for a quick look
        </p>
      )}
      <open.View bench={bench} state={state} />
    </>
  );
}
