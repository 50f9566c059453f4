// SPDX-License-Identifier: Apache-2.0
import { useState } from "preact/hooks";
import type { LedgerView } from "./ask";
import type { Bench } from "./bench";
import { Conflict } from "./conflict";
import type { BenchState } from "./state";
import { between, figure, full, text, unit, type Kind, type Units } from "./units";

const kindOf = (ledger: LedgerView): Kind => (ledger.kind === "TORSION" ? "twist" : "bend");

/** What the layup being tried weighs and holds, what was changed, and the way to keep it. */
export function Tally({ bench, state, ledger }: { bench: Bench; state: BenchState; ledger: LedgerView }) {
  const { draft, units, busy } = state;
  const kind = kindOf(ledger);
  const low = draft?.stiffness.low ?? ledger.stiffness;
  const high = draft?.stiffness.high ?? ledger.stiffness;
  const mass = draft?.mass ?? ledger.mass;
  const share = ((low + high) / 2 / ledger.stiffness - 1) * 100;
  return (
    <div class="tally card" aria-live="polite">
      <h2>{draft && draft.words.length > 0 ? "Layup being tried" : "Layup as designed"}</h2>
      <dl>
        <div>
          <dt>mass</dt>
          <dd data-test="draft-mass">
            <b>{text(mass, "mass", units, 5)}</b> {unit("mass", units)}
          </dd>
          <dd class="by">{by(mass - ledger.mass, "mass", units)}</dd>
        </div>
        <div>
          <dt>
            {ledger.loading} <span class="small">between hardpoints</span>
          </dt>
          <dd data-test="draft-stiffness">
            <b>{between(low, high, kind, units)}</b> {unit(kind, units)}
          </dd>
          <dd class="by">
            {draft && draft.words.length > 0 && (
              <>
                {share < 0 ? "−" : "+"}
                {figure(Math.abs(share), 2)} % ·{" "}
                <span data-test="draft-state">{draft.exact ? "exact" : "proved bounds; exact follows"}</span>
              </>
            )}
          </dd>
        </div>
      </dl>
      <p class="bar">
        <button type="button" disabled={!draft?.canUndo || busy} onClick={() => void bench.drafts.undo()} data-test="undo">
          Undo
        </button>
        <button type="button" disabled={!draft?.canRedo || busy} onClick={() => void bench.drafts.redo()} data-test="redo">
          Again
        </button>
        {busy ? (
          <span class="small" role="status">
            {ledger.ready < 0.8 ? "answering as soon as the fields of all plies are ready …" : "answering …"}
          </span>
        ) : (
          draft && <span class="small">answered in {figure(draft.milliseconds, 2)} ms</span>
        )}
      </p>
      {draft && draft.words.length > 0 && <Keep bench={bench} state={state} />}
      {draft?.note && <p class="notice">{draft.note}</p>}
      {draft && draft.words.length > 0 && (
        <ul class="words" data-test="draft-words">
          {draft.words.map((w) => (
            <li key={w}>{w}</li>
          ))}
        </ul>
      )}
      {draft?.remarks.map((r) => (
        <p key={r} class="remark">
          {r}
        </p>
      ))}
    </div>
  );
}

/** Puts the draft into the design file. */
function Keep({ bench, state }: { bench: Bench; state: BenchState }) {
  const [name, setName] = useState("");
  const plain = state.variant === state.project!.variants[0].name;
  const { kept } = state;
  return (
    <>
      <form
        class="bar keep"
        onSubmit={(e) => {
          e.preventDefault();
          void bench.drafts.keep(plain ? name.trim() : "");
        }}
      >
        {plain && (
          <label>
            as variant{" "}
            <input value={name} required maxLength={60} onInput={(e) => setName(e.currentTarget.value)} data-test="keep-name" />
          </label>
        )}
        <button type="submit" data-test="keep">
          {plain ? "Keep in the file" : `Write into "${state.variant}"`}
        </button>
      </form>
      {kept && <Conflict bench={bench} kept={kept} />}
    </>
  );
}

function by(difference: number, kind: Kind, units: Units): string {
  if (Math.abs(difference) < 1e-9) return "";
  return `${difference < 0 ? "−" : "+"}${full(Math.abs(difference), kind, units, 3)}`;
}
