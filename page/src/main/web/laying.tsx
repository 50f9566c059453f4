// SPDX-License-Identifier: Apache-2.0
import type { PlyView } from "./ask";
import type { Bench } from "./bench";
import type { BenchState } from "./state";
import { figure, full } from "./units";
import { Work } from "./work";

/** The plies as they are laid: piece by piece and step by step, each on the tub and as the pattern that is cut. */
export function Laying({ bench, state }: { bench: Bench; state: BenchState }) {
  const { laying, layingWork, project, ply } = state;
  const found = laying.variant !== "";
  const stale = found && laying.revision !== project!.revision;
  const other = found && laying.variant !== state.variant;
  const chosen = ply?.document;
  const piece = laying.pieces.find((p) => p.plies.some((q) => q.number === chosen?.number)) ?? laying.pieces[0];
  const off = stale || other;
  return (
    <section class="card laying" aria-label="Laying">
      <h2>Laying</h2>
      <Work work={layingWork} name="laying" what="the plies" onStop={() => void bench.laying.stop()}>
        <button type="button" onClick={() => void bench.laying.start()} data-test="laying-start">
          {found ? "Lay them again" : "Lay every ply in its mould"}
        </button>
      </Work>
      {!found && layingWork.state !== "WORKING" && (
        <p class="wait">Nothing has been laid yet. It takes about as long as a whole run.</p>
      )}
      {stale && <p class="notice">Laid from the file as it was before; lay them again.</p>}
      {other && !stale && <p class="notice">These are of “{laying.variant}”; lay those of “{state.variant}”.</p>}
      {piece && (
        <>
          <p>
            <label>
              piece{" "}
              <select
                value={piece.name}
                disabled={off}
                onChange={(e) => {
                  const to = laying.pieces.find((p) => p.name === e.currentTarget.value);
                  if (to) void bench.laying.show(to.plies[0].number);
                }}
                data-test="laying-piece"
              >
                {laying.pieces.map((p) => (
                  <option key={p.name}>{p.name}</option>
                ))}
              </select>
            </label>{" "}
            <button type="button" class="quiet" disabled={off || !before(piece.plies, chosen)} onClick={() => go(bench, before(piece.plies, chosen))} data-test="laying-before">
              ← before
            </button>{" "}
            <button type="button" class="quiet" disabled={off || !after(piece.plies, chosen)} onClick={() => go(bench, after(piece.plies, chosen))} data-test="laying-next">
              {chosen ? "next →" : "first step →"}
            </button>
          </p>
          {chosen && !off && <Ply ply={chosen} state={state} />}
          <ol class="steps" data-test="laying-steps">
            {piece.plies.map((p) => (
              <li key={p.number} value={p.step}>
                <button
                  type="button"
                  class="quiet"
                  disabled={off}
                  aria-pressed={p.number === chosen?.number}
                  onClick={() => void bench.laying.show(p.number)}
                >
                  {p.name}
                </button>{" "}
                <span class="small">
                  {p.words}
                  {p.advice.length > 0 && ", care"}
                </span>
              </li>
            ))}
          </ol>
        </>
      )}
    </section>
  );
}

function go(bench: Bench, to: PlyView | undefined): void {
  if (to) void bench.laying.show(to.number);
}

export function after(plies: readonly PlyView[], chosen: PlyView | undefined): PlyView | undefined {
  return plies[plies.findIndex((p) => p.number === chosen?.number) + 1];
}

export function before(plies: readonly PlyView[], chosen: PlyView | undefined): PlyView | undefined {
  return plies[plies.findIndex((p) => p.number === chosen?.number) - 1];
}

/** One step, as the ply book has it. */
function Ply({ ply, state }: { ply: PlyView; state: BenchState }) {
  const { units } = state;
  const facts: [string, string][] = [
    ["zones", ply.zones.join(", ") + (ply.patch ? `; patch ${ply.patch}` : "")],
    ["lies on", full(ply.area, "area", units, 3)],
    ["weighs", full(ply.mass, "mass", units, 3)],
    ["pattern", ply.outlines.length === 0 ? "none: cut to fit" : `${full(ply.size[0], "length", units, 4)} × ${full(ply.size[1], "length", units, 4)}`],
  ];
  if (ply.cloth) facts.push(["largest shear", `${figure(ply.largestShear, 3)}°, locks at ${figure(ply.locking, 3)}°`]);
  facts.push(["farthest from nominal", `${figure(ply.largestTurn, 3)}°`]);
  return (
    <div data-test="laying-ply">
      <h3>
        Step {ply.step} of {ply.steps}: {ply.name}
      </h3>
      <p>{ply.words}</p>
      {ply.outlines.length > 0 && (
        <>
          <Pattern ply={ply} />
          <p class="small">From its start: warp or fibres drawn through, the reference direction dashed.</p>
        </>
      )}
      <table>
        <tbody>
          {facts.map(([name, value]) => (
            <tr key={name}>
              <th>{name}</th>
              <td>{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {ply.advice.map((a) => (
        <p key={a} class="notice">
          Care: {a}.
        </p>
      ))}
      {ply.debulk && <p class="small">Debulk after this step.</p>}
    </div>
  );
}

/** The pattern as it is cut, warp to the right, with the reference direction at the start. */
function Pattern({ ply }: { ply: PlyView }) {
  const xs = ply.outlines.flatMap((o) => o.filter((_, i) => i % 2 === 0));
  const ys = ply.outlines.flatMap((o) => o.filter((_, i) => i % 2 === 1));
  const low = [Math.min(...xs), Math.min(...ys)];
  const size = Math.max(Math.max(...xs) - low[0], Math.max(...ys) - low[1]);
  const x = (v: number) => 6 + (308 * (v - low[0])) / size;
  const tall = (308 * (Math.max(...ys) - low[1])) / size;
  const y = (v: number) => 6 + tall - (308 * (v - low[1])) / size;
  const path = (o: readonly number[]) =>
    o.reduce((d, v, i) => (i % 2 === 0 ? `${d}${i === 0 ? "M" : "L"}${x(v).toFixed(1)} ` : `${d}${y(v).toFixed(1)}`), "") + "Z";
  const [sx, sy] = [x(ply.start[0]), y(ply.start[1])];
  return (
    <svg class="pattern" viewBox={`0 0 320 ${(tall + 12).toFixed(0)}`} role="img" aria-label={`Pattern of ${ply.name}, warp to the right`} data-test="laying-pattern">
      <path d={ply.outlines.map(path).join("")} fill-rule="evenodd" />
      <line class="warp" x1={sx} y1={sy} x2={sx + 46} y2={sy} />
      <line class="reference" x1={sx} y1={sy} x2={sx + 46 * Math.cos(ply.reference)} y2={sy - 46 * Math.sin(ply.reference)} />
      <circle cx={sx} cy={sy} r="3" />
    </svg>
  );
}
