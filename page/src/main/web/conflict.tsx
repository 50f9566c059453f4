// SPDX-License-Identifier: Apache-2.0
import type { Bench } from "./bench";
import { changes } from "./lines";
import type { BenchState } from "./state";

/** A draft that was not written because the file had changed: where the file and what would have been written differ, and both. */
export function Conflict({ bench, kept }: { bench: Bench; kept: NonNullable<BenchState["kept"]> }) {
  const { theirs, ours } = kept;
  return (
    <section class="notice bad conflict" role="alert" aria-label="Not written" data-test="conflict">
      <p>
        <b>Not written.</b> {kept.message}
      </p>
      {theirs !== undefined && ours !== undefined && (
        <>
          <p class="small">Where they differ; the numbers are lines of each:</p>
          <div class="both" tabIndex={0} role="group" aria-label="Differences between the file and what would have been written">
            {changes(theirs, ours).map((c) => (
              <dl key={`${c.at.theirs} ${c.at.ours}`}>
                <dt>the file as it now is, from line {c.at.theirs}</dt>
                <dd>
                  <pre>{c.theirs.join("\n") || "(nothing)"}</pre>
                </dd>
                <dt>what would have been written, from line {c.at.ours}</dt>
                <dd>
                  <pre>{c.ours.join("\n") || "(nothing)"}</pre>
                </dd>
              </dl>
            ))}
          </div>
          {(
            [
              ["The whole file as it now is", theirs],
              ["All that would have been written", ours],
            ] as const
          ).map(([name, text]) => (
            <details key={name}>
              <summary>{name}</summary>
              <pre tabIndex={0}>{text}</pre>
            </details>
          ))}
        </>
      )}
      <button type="button" onClick={() => bench.set({ kept: undefined })}>
        Put away
      </button>
    </section>
  );
}
