// SPDX-License-Identifier: Apache-2.0
import type { AnswerView, CaseView } from "./ask";
import type { BenchState } from "./bench";
import type { Tub } from "./geometry";
import { figure, text, unit, type Kind } from "./units";

/** Two variants in numbers and in words. */
export function Differences({ state }: { state: BenchState }) {
  const names = [state.variant, state.beside!] as const;
  const [a, b] = names.map((n) => state.answers.find((x) => x.variant === n));
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
          <ul class="words">
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
    if (other) result.push(row(c.name, c.kind === "TORSION" ? "twist" : "bend", c.stiffness, other.stiffness));
  }
  result.push(row("mass", "mass", a.mass, b.mass));
  const torsion = (x: AnswerView): CaseView | undefined => x.cases.find((c) => c.kind === "TORSION");
  const [ka, kb] = [torsion(a), torsion(b)];
  if (ka && kb) {
    result.push(row("torsion over mass", "twistWorth", ka.stiffness / a.mass, kb.stiffness / b.mass));
  }
  return result;
}

/** What differs, in words. */
export function inWords(a: Tub, b: Tub, names: readonly [string, string], x: AnswerView, y: AnswerView): string[] {
  const result: string[] = [];
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
  const only = [...ca.keys()].filter((z) => !cb.has(z)).length;
  if (only > 0 && both.length < ca.size) result.push(`${only} zones of ${names[0]} are divided otherwise in ${names[1]}`);
  const top = (v: AnswerView) => v.cases.find((c) => c.kind === "TORSION")?.energy[0];
  const [ea, eb] = [top(x), top(y)];
  if (ea && eb) {
    result.push(
      `most of the give in torsion: ${ea.name} in ${names[0]} (${figure(100 * ea.share, 2)} %), ${eb.name} in ${names[1]} (${figure(100 * eb.share, 2)} %)`,
    );
  }
  return result;
}
