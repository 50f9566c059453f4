// SPDX-License-Identifier: Apache-2.0
import type { ComponentChildren } from "preact";
import type { RunView } from "./ask";

interface WorkProps {
  work: RunView;
  /** Of the parts, for tests. */
  name: string;
  /** What the bar is a share of. */
  what: string;
  onStop(): void;
  /** What begins it, while it is not under way. */
  children: ComponentChildren;
}

/** Long work: how far it is and a way to stop it, or a way to begin it and how the last one ended. */
export function Work({ work, name, what, onStop, children }: WorkProps) {
  if (work.state === "WORKING") {
    return (
      <span class="run" role="status">
        <progress value={work.share} max={1} aria-label={`Share of ${what} that is done`} />
        <span data-test={`${name}-words`} title={work.words}>
          {work.words}
        </span>
        <button type="button" onClick={onStop} data-test={`${name}-stop`}>
          Stop
        </button>
      </span>
    );
  }
  return (
    <span class="run">
      {children}
      {work.state !== "NONE" && (
        <span role="status" title={work.words} data-test={`${name}-words`} class={work.state === "FAILED" ? "failed" : ""}>
          {work.words}
        </span>
      )}
    </span>
  );
}
