// SPDX-License-Identifier: Apache-2.0
import { useState } from "preact/hooks";
import type { Bench, BenchState } from "./bench";

/** What was done in this project, and a line to add. */
export function Logbook({ bench, state }: { bench: Bench; state: BenchState }) {
  const [words, setWords] = useState("");
  return (
    <details class="card log">
      <summary data-test="log">Logbook ({state.log.length})</summary>
      <form
        onSubmit={(e) => {
          e.preventDefault();
          if (words.trim()) void bench.note(words).then(() => setWords(""));
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
            </li>
          ))}
        </ol>
      )}
    </details>
  );
}
