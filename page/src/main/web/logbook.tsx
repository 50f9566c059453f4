// SPDX-License-Identifier: Apache-2.0
import { useState } from "preact/hooks";
import type { StoredView } from "./ask";
import type { Bench } from "./bench";
import type { BenchState } from "./state";

/** What was done in this project, and a line to add. */
export function Logbook({ bench, state }: { bench: Bench; state: BenchState }) {
  const [words, setWords] = useState("");
  return (
    <section class="card log" aria-label="Logbook">
      <h2>Logbook</h2>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          if (words.trim()) void bench.logbook.note(words).then(() => setWords(""));
        }}
      >
        <label>
          a line of your own
          <input value={words} maxLength={2000} onInput={(e) => setWords(e.currentTarget.value)} />
        </label>
        <button type="submit">Write</button>
      </form>
      {state.log.length === 0 ? (
        <p class="small">Nothing yet. Runs and variants you keep are written here by themselves.</p>
      ) : (
        <ol>
          {state.log.map((l) => (
            <li key={l.id}>
              <span class="small">
                {new Date(l.stamp).toLocaleString()} · {l.kind} · file {l.revision.slice(0, 6)}
              </span>
              <br />
              {l.words}
              <Stored bench={bench} state={state} run={state.runs.find((r) => r.id === l.id)} />
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}

/** Of a run that is remembered: its tubs, to lay beside and to draw into the twist line. */
function Stored({ bench, state, run }: { bench: Bench; state: BenchState; run: StoredView | undefined }) {
  if (!run) return null;
  return (
    <span class="stored">
      {run.names.map((n) => (
        <span key={n} class="group">
          <button
            type="button"
            class="quiet"
            aria-pressed={state.beside === n}
            aria-label={`lay ${n} beside what is shown`}
            onClick={() => void bench.compare(state.beside === n ? undefined : n)}
            data-test={`beside-${n}`}
          >
            {n}
          </button>
          <label>
            <input
              type="checkbox"
              checked={state.overlaid.includes(n)}
              onChange={(e) => void bench.logbook.overlay(n, e.currentTarget.checked)}
              data-test={`overlay-${n}`}
            />{" "}
            twist line
          </label>
        </span>
      ))}
    </span>
  );
}
