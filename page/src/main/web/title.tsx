// SPDX-License-Identifier: Apache-2.0
import type { AnswerView } from "./ask";
import type { Bench } from "./bench";
import { isCoarse, troubleOf, type BenchState } from "./state";
import { figure, shown, text, unit, type Kind } from "./units";
import { Work } from "./work";

/** Name, the figures that decide, and what is shown. */
export function Title({ bench, state }: { bench: Bench; state: BenchState }) {
  const project = state.project!;
  // While the file cannot be read, what is shown is from before.
  const answer = state.answers.find((a) => a.variant === state.variant && (project.problem || a.revision === project.revision));
  const tub = state.tubs[state.variant];
  return (
    <header class="title">
      <div class="name">
        <h1>{project.tub}</h1>
        <p title={`${project.folder}/${project.file}`}>
          {project.variants.find((v) => v.name === state.variant)?.construction} · {project.folder}/{project.file}
        </p>
      </div>
      <Figures state={state} answer={answer} mass={tub?.view.mass} />
      <div class="choices">
        <div class="shows">
          <label>
            showing
            <select value={state.variant} onChange={(e) => void bench.show(e.currentTarget.value)} data-test="variant">
              {project.variants.map((v) => (
                <option key={v.name}>{v.name}</option>
              ))}
            </select>
          </label>
          <label>
            beside
            <select
              value={state.beside ?? ""}
              onChange={(e) => void bench.compare(e.currentTarget.value || undefined)}
              data-test="beside"
            >
              <option value="">nothing</option>
              {project.variants
                .filter((v) => v.name !== state.variant)
                .map((v) => (
                  <option key={v.name}>{v.name}</option>
                ))}
              {state.runs.length > 0 && (
                <optgroup label="from the logbook">
                  {state.runs.flatMap((r) =>
                    r.names.map((n) => (
                      <option key={n} value={n} title={r.words}>
                        {n}, {new Date(r.stamp).toLocaleDateString()}
                      </option>
                    )),
                  )}
                </optgroup>
              )}
            </select>
          </label>
        </div>
        <div class="acts">
          <Run bench={bench} state={state} />
          <button
            type="button"
            class="quiet"
            onClick={() => bench.set({ units: state.units === "SI" ? "inch-pound" : "SI" })}
            aria-label={`${state.units}: units shown. Change to ${state.units === "SI" ? "inch-pound" : "SI"}`}
            data-test="units"
          >
            {state.units}
          </button>
          <button type="button" class="quiet" onClick={() => bench.set({ dark: !state.dark })} data-test="tone">
            {state.dark ? "light" : "dark"}
          </button>
        </div>
      </div>
    </header>
  );
}

function Figures({ state, answer, mass }: { state: BenchState; answer: AnswerView | undefined; mass: number | undefined }) {
  const targets = state.project!.targets;
  const trouble = troubleOf(state, state.variant);
  const coarse = isCoarse(state, state.variant) && (
    <span class="coarse" data-test="coarse">
      {" "}
      coarse mesh
    </span>
  );
  return (
    <dl class="figures">
      {answer?.cases.map((c) => {
        const kind: Kind = c.kind === "TORSION" ? "twist" : "bend";
        const target = targets.find((t) => t.what === (c.kind === "TORSION" ? "TORSIONAL_STIFFNESS" : "BENDING_STIFFNESS"));
        return (
          <div key={c.name}>
            <dt>
              {c.name}
              {coarse}
            </dt>
            <dd data-test={`figure-${c.name}`}>
              <b>{text(c.stiffness, kind, state.units)}</b>
              {c.error !== undefined && <span> ± {figure(shown(c.error, kind, state.units), 2)}</span>} {unit(kind, state.units)}
              {target && <Standing met={target.atLeast ? c.stiffness >= target.limit : c.stiffness <= target.limit} words={`asked: ${target.atLeast ? "≥" : "≤"} ${text(target.limit, kind, state.units)}`} />}
            </dd>
          </div>
        );
      })}
      {!answer && (
        <div>
          <dt>stiffness</dt>
          <dd class="pending">{trouble ? "cannot be computed" : "being computed …"}</dd>
        </div>
      )}
      {mass !== undefined && (
        <div>
          <dt>mass{coarse}</dt>
          <dd data-test="figure-mass">
            <b>{text(mass, "mass", state.units)}</b> {unit("mass", state.units)}
            {targets
              .filter((t) => t.what === "MASS")
              .map((t) => (
                <Standing key="mass" met={mass <= t.limit} words={`asked: ≤ ${text(t.limit, "mass", state.units)}`} />
              ))}
          </dd>
        </div>
      )}
      {answer && answer.reserves.length > 0 && (
        <div>
          <dt>lowest reserve factor{coarse}</dt>
          <dd>
            <LowestReserve answer={answer} />
          </dd>
        </div>
      )}
    </dl>
  );
}

/** The lowest factor, with a star where it hangs on the mesh, and then also the lowest that does not. */
function LowestReserve({ answer }: { answer: AnswerView }) {
  const lowest = answer.reserves[0];
  const firm = answer.reserves.find((r) => !r.local);
  return (
    <>
      <b>
        {figure(lowest.value, 3)}
        {lowest.local && "\u202f*"}
      </b>
      <span class="standing">
        {lowest.zone}
        {lowest.firstCrack && ", first crack"}
      </span>
      {lowest.local && (
        <span class="standing" data-test="on-the-mesh" title="Stress at an insert, and on a patch that is small for the elements, changes with the size of the elements. The report names the size, or the test, that would settle it.">
          * depends on the mesh{firm && `; lowest that does not: ${figure(firm.value, 3)}, ${firm.zone}`}
        </span>
      )}
    </>
  );
}

function Standing({ met, words }: { met: boolean; words: string }) {
  return (
    <span class={met ? "standing met" : "standing missed"}>
      <span aria-hidden="true">{met ? "●" : "○"}</span> {words}, {met ? "met" : "missed"}
    </span>
  );
}

function Run({ bench, state }: { bench: Bench; state: BenchState }) {
  const { run } = state;
  return (
    <Work work={run} name="run" what="the run" onStop={() => void bench.runs.stop()}>
      <button
        type="button"
        onClick={() => void bench.runs.start()}
        title="All variants on three meshes: stiffness with its mesh error, the report, fields. Written to runs/latest."
        data-test="run"
      >
        Run with mesh error
      </button>
      {run.state === "DONE" && (
        <button type="button" class="quiet" onClick={() => void save(bench)}>
          save report
        </button>
      )}
    </Work>
  );
}

async function save(bench: Bench): Promise<void> {
  await bench.attempt(async () => {
    const blob = await bench.ask.file("runs/latest/report.html");
    download(URL.createObjectURL(blob), "report.html");
  });
}

/** Hands a file to the reader. */
export function download(url: string, name: string): void {
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
