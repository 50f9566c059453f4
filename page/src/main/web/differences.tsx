// SPDX-License-Identifier: Apache-2.0
import type { AnswerView, CaseView } from "./ask";
import { answerOf, isCoarse, type BenchState } from "./state";
import type { Tub } from "./geometry";
import { figure, full, shown, text, unit, type Kind, type Units } from "./units";

/** Two variants in numbers and in words. */
export function Differences({ state }: { state: BenchState }) {
  const names = [state.variant, state.beside!] as const;
  const [a, b] = names.map((n) => answerOf(state, n));
  const [ta, tb] = names.map((n) => state.tubs[n]);
  return (
    <section class="card" aria-label="Two designs compared" data-test="differences">
      <h2>Side by side</h2>
      {!a || !b || !ta || !tb ? (
        <p class="wait" role="status">
          {names.filter((_, i) => ![a, b][i]).length > 0
            ? `Being computed: ${names.filter((_, i) => ![a, b][i]).join(", ")}.`
            : "Their surfaces are being drawn."}
        </p>
      ) : (
        <>
          <table>
            <thead>
              <tr>
                <th>
                  <span class="unseen">quantity</span>
                </th>
                {names.map((n) => (
                  <th key={n} class="n">
                    {n}
                  </th>
                ))}
                <th class="n">ratio</th>
              </tr>
            </thead>
            <tbody>
              {rows(a, b, state).map((r) => (
                <tr key={r.name}>
                  <th>
                    {r.name} <span class="small">{r.unit}</span>
                  </th>
                  <td class="n">{r.first}</td>
                  <td class="n">{r.second}</td>
                  <td class="n">{r.ratio}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <ul class="words plain">
            {names.filter((n) => isCoarse(state, n)).map((n) => (
              <li key={`coarse ${n}`}>numbers of {n} are of a coarse mesh, for a quick look</li>
            ))}
            {shortened(inWords(ta, tb, names, a, b, state.units)).map((w) => (
              <li key={w}>{w}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

interface Row {
  name: string;
  unit: string;
  first: string;
  second: string;
  ratio: string;
}

function rows(a: AnswerView, b: AnswerView, state: BenchState): Row[] {
  const row = (name: string, kind: Kind, x: number, y: number): Row => ({
    name,
    unit: unit(kind, state.units),
    first: text(x, kind, state.units),
    second: text(y, kind, state.units),
    ratio: figure(y / x, 3),
  });
  const result: Row[] = [];
  for (const c of a.cases) {
    const other = b.cases.find((d) => d.name === c.name);
    if (!other) continue;
    const kind: Kind = c.kind === "TORSION" ? "twist" : "bend";
    const both = row(c.name, kind, c.stiffness, other.stiffness);
    const error = (e: number | undefined) => (e === undefined ? "" : ` ± ${figure(shown(e, kind, state.units), 2)}`);
    result.push({ ...both, first: both.first + error(c.error), second: both.second + error(other.error) });
  }
  result.push(row("mass", "mass", a.mass, b.mass));
  for (const p of a.pieces) {
    const other = b.pieces.find((q) => q.name === p.name);
    if (other && Math.abs(other.mass - p.mass) > 5e-4) result.push(row(`mass of ${p.name}`, "mass", p.mass, other.mass));
  }
  if (a.reserves.length > 0 && b.reserves.length > 0) {
    const [r, s] = [a.reserves[0], b.reserves[0]];
    const star = (x: typeof r) => figure(x.value, 3) + (x.local ? "\u202f*" : "");
    const name = r.local || s.local ? "lowest reserve factor (* depends on the mesh)" : "lowest reserve factor";
    result.push({ name, unit: "", first: star(r), second: star(s), ratio: figure(s.value / r.value, 3) });
  }
  const torsion = (x: AnswerView): CaseView | undefined => x.cases.find((c) => c.kind === "TORSION");
  const [ka, kb] = [torsion(a), torsion(b)];
  if (ka && kb) {
    result.push(row("torsion over mass", "twistWorth", ka.stiffness / a.mass, kb.stiffness / b.mass));
  }
  return result;
}

/** At most so many lines, and how many more there are. */
function shortened(lines: string[]): string[] {
  return lines.length <= LINES + 1 ? lines : [...lines.slice(0, LINES), `and ${lines.length - LINES} more differences`];
}

const LINES = 24;

const when = (a: AnswerView) => new Date(a.stamp).toLocaleString();

type Names = readonly [string, string];

/** Whether they have the same shape, and which is larger. */
function shapes(a: Tub, b: Tub, names: Names, units: Units): string[] {
  const far = (i: number) => Math.abs(a.nodes[i] - b.nodes[i]) > 1e-6;
  if (a.nodes.length === b.nodes.length && !a.nodes.some((_, i) => far(i))) return [];
  const result: string[] = [];
  ["long", "wide", "high"].forEach((word, i) => {
    const [p, q] = [a, b].map((t) => t.high[i] - t.low[i]);
    if (Math.abs(p - q) > 5e-4) result.push(`${names[0]} is ${full(p, "length", units)} ${word}, ${names[1]} ${full(q, "length", units)}`);
  });
  return result.length > 0 ? result : ["their surfaces are meshed differently: shape, pieces or zones are not the same everywhere"];
}

/** Which zones and patches carry other stacks. */
function stacks(a: Tub, b: Tub, names: Names): string[] {
  const codes = (t: Tub) =>
    new Map(t.view.regions.map((r) => [[r.zone, ...r.patches].join(" under "), t.view.stacks[r.stack].code] as const));
  const [ca, cb] = [codes(a), codes(b)];
  const both = [...ca.keys()].filter((z) => cb.has(z));
  const result = both.filter((z) => ca.get(z) !== cb.get(z)).map((z) => `${z}: ${ca.get(z)} against ${cb.get(z)}`);
  if (both.length === ca.size && both.length === cb.size && result.length === 0) {
    return ["every zone and patch has the same stack in both; joints are not compared here"];
  }
  [ca, cb].forEach((own, i) => {
    const only = [...own.keys()].filter((z) => !both.includes(z));
    if (only.length > 0) result.push(`only in ${names[i]}: ${only.slice(0, 4).join(", ")}${only.length > 4 ? ` and ${only.length - 4} more` : ""}`);
  });
  return result;
}

/** What differs, in words. */
export function inWords(a: Tub, b: Tub, names: Names, x: AnswerView, y: AnswerView, units: Units): string[] {
  const result: string[] = [];
  if (x.revision !== y.revision) {
    result.push(`${names[0]} is of file ${x.revision.slice(0, 6)}, computed ${when(x)}; ${names[1]} of file ${y.revision.slice(0, 6)}, ${when(y)}`);
  }
  if (x.extrapolated !== y.extrapolated) {
    const [fine, plain] = x.extrapolated ? names : [names[1], names[0]];
    result.push(`stiffness of ${fine} is carried to mesh size zero, that of ${plain} is of one mesh: some of the difference is the mesh`);
  }
  if (x.construction !== y.construction) result.push(`${names[0]} is ${x.construction}; ${names[1]} ${y.construction}`);
  const pieces = (t: Tub) => t.view.pieces.map((p) => p.name);
  if (pieces(a).join() !== pieces(b).join()) {
    result.push(`${names[0]} has ${pieces(a).length} pieces (${pieces(a).join(", ")}), ${names[1]} ${pieces(b).length} (${pieces(b).join(", ")})`);
  }
  result.push(...shapes(a, b, names, units), ...stacks(a, b, names));
  if (x.reserves.length > 0 && y.reserves.length > 0) {
    const weak = (v: AnswerView) => `${v.reserves[0].zone} (${v.reserves[0].load})`;
    if (weak(x) !== weak(y)) result.push(`the lowest reserve factor is at ${weak(x)} in ${names[0]}, at ${weak(y)} in ${names[1]}`);
  }
  const top = (v: AnswerView) => v.cases.find((c) => c.kind === "TORSION")?.energy[0];
  const [ea, eb] = [top(x), top(y)];
  if (ea && eb) {
    result.push(
      `most of the give in torsion: ${ea.name} in ${names[0]} (${figure(100 * ea.share, 2)} %), ${eb.name} in ${names[1]} (${figure(100 * eb.share, 2)} %)`,
    );
  }
  return result;
}
