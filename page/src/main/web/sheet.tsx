// SPDX-License-Identifier: Apache-2.0
import { useEffect } from "preact/hooks";
import type { Bench } from "./bench";
import { coarseness, type BenchState } from "./state";
import { Chapters, OpenChapter } from "./chapters";
import { Differences } from "./differences";
import { Hints } from "./hints";
import { ReadingAt } from "./reading";
import { Hatchings } from "./stack";
import { useStore } from "./store";
import { figure } from "./units";
import { Title } from "./title";
import { TubPlate } from "./tubplate";
import { TwistChart } from "./twist";

/** The whole page: title, the tub with its twist line under it, the plies beside. */
export function Sheet({ bench }: { bench: Bench }) {
  const state = useStore(bench.store);
  useEffect(() => {
    document.documentElement.dataset["tone"] = state.dark ? "dark" : "light";
  }, [state.dark]);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const typing = event.target instanceof HTMLElement && event.target.matches("input, select, textarea");
      if (typing || !(event.ctrlKey || event.metaKey)) return;
      const key = event.key.toLowerCase();
      if (key === "z" || key === "y") {
        event.preventDefault();
        const forth = key === "y" || event.shiftKey;
        const { draft } = bench.store.get();
        if (forth ? draft?.canRedo : draft?.canUndo) void (forth ? bench.drafts.redo() : bench.drafts.undo());
      }
    };
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  }, [bench]);
  if (state.broken) return <Broken words={state.broken} />;
  if (!state.project) return <p class="wait" role="status">Opening the project …</p>;
  return (
    <div class="sheet">
      <Hatchings />
      <Title bench={bench} state={state} />
      <Notices bench={bench} state={state} />
      <main class="table">
        <section class="drawing" aria-label="The tub and its twist line">
          <TubPlate bench={bench} state={state} />
          <TwistChart state={state} />
        </section>
        <aside class="margin" aria-label="Beside the tub">
          <Chapters bench={bench} state={state} />
          {state.picked && <ReadingAt bench={bench} state={state} />}
          {state.hints && state.chapter === "plies" && <Hints bench={bench} />}
          {state.beside && <Differences state={state} />}
          <OpenChapter bench={bench} state={state} />
        </aside>
      </main>
      <footer class="caution">
        <span>{state.project.caution}</span>
        {!state.hints && (
          <button type="button" class="quiet" onClick={() => bench.set({ hints: true, chapter: "plies" })} data-test="hints">
            first steps
          </button>
        )}
      </footer>
    </div>
  );
}

function Broken({ words }: { words: string }) {
  return (
    <div class="broken" role="alert">
      <h1>Nothing to show</h1>
      <p>{words}</p>
      <p>
        The program prints an address such as <code>http://127.0.0.1:45321/#…</code>; what follows the # lets you in. Copy it
        whole.
      </p>
    </div>
  );
}

function Notices({ bench, state }: { bench: Bench; state: BenchState }) {
  const { project, message, connected } = state;
  const coarse = coarseness(state, state.variant);
  return (
    <div class="notices" aria-live="polite">
      {!connected && <p class="notice bad">The program does not answer. Is it still running? The page goes on trying.</p>}
      {project?.problem && (
        <div class="notice bad">
          <p>
            The design file cannot be read
            {project.problem.line > 0 && ` (line ${project.problem.line}, column ${project.problem.column})`}. What you see is
            from before; the page follows as soon as the file is right again.
          </p>
          <pre>{project.problem.message}</pre>
        </div>
      )}
      {coarse !== undefined && (
        <p class="notice" data-test="quick">
          A quick look: the mesh is {figure(coarse, 2)} times as coarse as the design asks for. Numbers that come of it are marked;
          a run with mesh error puts better ones in their place.
        </p>
      )}
      {project?.troubles.map((t) => (
        <div key={t.variant} class="notice bad">
          <p>“{t.variant}” cannot be solved:</p>
          <pre>{t.words}</pre>
        </div>
      ))}
      {project?.logbookTrouble && <p class="notice">{project.logbookTrouble}</p>}
      {message && (
        <p class="notice bad">
          {message}{" "}
          <button type="button" class="quiet" onClick={() => bench.set({ message: undefined })}>
            put away
          </button>
        </p>
      )}
    </div>
  );
}
