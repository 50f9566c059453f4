// SPDX-License-Identifier: Apache-2.0
import type { AnswerView, CaseView } from "./ask";
import { answerOf, type BenchState } from "./state";
import type { Tub } from "./geometry";
import { figure, shown, text, unit, type Kind } from "./units";

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
          {names.filter((_, i) => ![a, b][i]).join(" and ") || "They"} {a || b ? "is" : "are"} still being computed.
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
            {inWords(ta, tb, names, a, b).map((w) => (
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
    const [r, s] = [a.reserves[0].value, b.reserves[0].value];
    result.push({ name: "lowest reserve factor", unit: "", first: figure(r, 3), second: figure(s, 3), ratio: figure(s / r, 3) });
  }
  const torsion = (x: AnswerView): CaseView | undefined => x.cases.find((c) => c.kind === "TORSION");
  const [ka, kb] = [torsion(a), torsion(b)];
  if (ka && kb) {
    result.push(row("torsion over mass", "twistWorth", ka.stiffness / a.mass, kb.stiffness / b.mass));
  }
  return result;
}

const when = (a: AnswerView) => new Date(a.stamp).toLocaleString();

/** What differs, in words. */
export function inWords(a: Tub, b: Tub, names: readonly [string, string], x: AnswerView, y: AnswerView): string[] {
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
  const codes = (t: Tub) => new Map(t.view.regions.filter((r) => r.patches.length === 0).map((r) => [r.zone, t.view.stacks[r.stack].code]));
  const [ca, cb] = [codes(a), codes(b)];
  const both = [...ca.keys()].filter((z) => cb.has(z));
  for (const zone of both) {
    if (ca.get(zone) !== cb.get(zone)) result.push(`${zone}: ${ca.get(zone)} against ${cb.get(zone)}`);
  }
  if (both.length === ca.size && both.length === cb.size && both.every((z) => ca.get(z) === cb.get(z))) {
    result.push("every zone has the same stack in both; patches, joints and shape are not compared here");
  }
  const only = [...ca.keys()].filter((z) => !cb.has(z)).length;
  if (only > 0 && both.length < ca.size) result.push(`${only} zones of ${names[0]} are divided otherwise in ${names[1]}`);
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
