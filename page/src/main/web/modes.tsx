// SPDX-License-Identifier: Apache-2.0
import type { ShapeView } from "./ask";
import type { Bench } from "./bench";
import type { BenchState } from "./state";
import { figure, text, unit } from "./units";
import { Work } from "./work";

/** How it buckles and vibrates: factors and frequencies, each shown moving on the tub. */
export function Modes({ bench, state }: { bench: Bench; state: BenchState }) {
  const { modes, modesWork, project } = state;
  const found = modes.variant !== "";
  const stale = found && modes.revision !== project!.revision;
  const other = found && modes.variant !== state.variant;
  const buckling = modes.shapes.filter((s) => s.what === "BUCKLING");
  const kinds = [
    { title: "Vibration, free in space", shapes: modes.shapes.filter((s) => s.what === "FREE") },
    { title: "Vibration, held", shapes: modes.shapes.filter((s) => s.what === "HELD") },
  ];
  return (
    <section class="card modes" aria-label="Buckling and vibration">
      <h2>Buckling and vibration</h2>
      <Work work={modesWork} name="modes" what="the search" onStop={() => void bench.modes.stop()}>
        <button type="button" onClick={() => void bench.modes.start()} data-test="modes-start">
          {found ? "Find again" : "Find how it buckles and vibrates"}
        </button>
      </Work>
      {!found && modesWork.state !== "WORKING" && (
        <p class="wait">Nothing has been looked for yet. It takes a few times as long as solving the tub.</p>
      )}
      {stale && <p class="notice">Found on the file as it was before; find them again to see them move.</p>}
      {other && !stale && <p class="notice">These are of “{modes.variant}”; find them again for “{state.variant}”.</p>}
      {buckling.length > 0 && (
        <>
          <h3>Buckling</h3>
          <p class="small">{modes.aboutBuckling}</p>
          <table data-test="buckling">
            <thead>
              <tr>
                <th>case, and where it buckles first</th>
                <th class="n">lowest factors</th>
              </tr>
            </thead>
            <tbody>
              {[...new Set(buckling.map((s) => s.loading))].map((loading) => {
                const own = buckling.filter((s) => s.loading === loading);
                return (
                  <tr key={loading}>
                    <td>
                      {loading} <span class="small">{where(own[0])}</span>
                    </td>
                    <td class="n">
                      {own.map((s) => (
                        <Choice key={s.number} bench={bench} state={state} shape={s} off={stale || other} />
                      ))}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </>
      )}
      {modes.notes.map((n) => (
        <p key={n} class="small">
          {n}
        </p>
      ))}
      {kinds.map(
        (k) =>
          k.shapes.length > 0 && (
            <div key={k.title}>
              <h3>{k.title}</h3>
              <table data-test="vibration">
                <thead>
                  <tr>
                    <th class="n">Hz</th>
                    <th>what it does, and what is strained most</th>
                  </tr>
                </thead>
                <tbody>
                  {k.shapes.map((s) => (
                    <tr key={s.number}>
                      <td class="n">
                        <Choice bench={bench} state={state} shape={s} off={stale || other} />
                      </td>
                      <td>
                        {s.name} <span class="small">{s.part}</span>
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          ),
      )}
      {kinds.some((k) => k.shapes.length > 0) && <p class="small">{modes.aboutVibration}</p>}
    </section>
  );
}

function Choice({ bench, state, shape, off }: { bench: Bench; state: BenchState; shape: ShapeView; off: boolean }) {
  const on = state.look === "mode" && state.mode?.document.number === shape.number;
  return (
    <button
      type="button"
      class="quiet"
      disabled={off}
      aria-pressed={on}
      aria-label={`${figure(shape.value, shape.what === "BUCKLING" ? 3 : 4)}: ${on ? "on the tub" : "show on the tub"} ${named(shape)}`}
      onClick={() => void bench.modes.show(shape.number)}
      data-test={`mode-${shape.number}`}
    >
      {figure(shape.value, shape.what === "BUCKLING" ? 3 : 4)}
    </button>
  );
}

function where(s: ShapeView): string {
  const panel = s.panel && s.panel !== s.part ? ` (${s.panel})` : "";
  return `${s.part}${panel}${s.share === undefined ? "" : `, ${figure(100 * s.share, 2)} %`}`;
}

/** A shape in a few words: factor or frequency, and the panel. */
export function named(s: ShapeView): string {
  return s.what === "BUCKLING"
    ? `Buckling under ${s.loading}: factor ${figure(s.value, 4)}, ${where(s)}`
    : `${s.name}: ${figure(s.value, 4)} Hz${s.what === "HELD" ? ", held" : ""}, ${s.part}`;
}

/** Where it moves most. */
export function mostAt(s: ShapeView, units: BenchState["units"]): string {
  return `moves most at x, y, z ${s.place.map((v) => text(v, "length", units, 3)).join(", ")} ${unit("length", units)}`;
}
