// SPDX-License-Identifier: Apache-2.0
import { useState } from "preact/hooks";
import { Refused, type HitView } from "./ask";
import type { Bench } from "./bench";
import type { BenchState } from "./state";
import { figure, text, unit } from "./units";

const DEGREES = ["barely visible", "visible", "hole"];
/** Diameters to choose from, m. */
const SIZES = [0.05, 0.1, 0.15, 0.2, 0.3];

/** Touch the tub, take the patch away, see what changes. */
export function Patch({ bench, state }: { bench: Bench; state: BenchState }) {
  const [size, setSize] = useState(0.1);
  const [degree, setDegree] = useState("hole");
  const [hit, setHit] = useState<HitView | undefined>();
  const [waiting, setWaiting] = useState(false);
  const [trouble, setTrouble] = useState("");
  const { picked, units } = state;
  const known = picked && state.project?.variants.some((v) => v.name === picked.variant);

  async function take() {
    if (!picked) return;
    setWaiting(true);
    setTrouble("");
    try {
      setHit(await bench.ask.hit({ variant: picked.variant, place: [...picked.place], size, degree }));
    } catch (e) {
      setTrouble(e instanceof Refused ? e.message : "The program does not answer.");
    }
    setWaiting(false);
  }

  return (
    <section class="card patch" aria-label="Patch away">
      <h2>Patch away</h2>
      <p class="small">Touch the tub where it is hit, choose how large and how bad, and take the patch away.</p>
      <p>
        <label>
          Diameter{" "}
          <select value={String(size)} onChange={(e) => setSize(Number(e.currentTarget.value))} data-test="hit-size">
            {SIZES.map((s) => (
              <option key={s} value={String(s)}>
                {text(s, "length", units, 3)} {unit("length", units)}
              </option>
            ))}
          </select>
        </label>{" "}
        <label>
          Hit{" "}
          <select value={degree} onChange={(e) => setDegree(e.currentTarget.value)} data-test="hit-degree">
            {DEGREES.map((d) => (
              <option key={d}>{d}</option>
            ))}
          </select>
        </label>
      </p>
      <p>
        {picked && known ? (
          <>
            at x, y, z {picked.place.map((v) => text(v, "length", units, 3)).join(", ")} {unit("length", units)}
          </>
        ) : (
          "Nothing is touched yet."
        )}
      </p>
      <button type="button" disabled={!known || waiting} onClick={() => void take()} data-test="hit-take">
        Take it away
      </button>{" "}
      {waiting && <span role="status">{hit ? "looking" : "solving the tub once; the next ones come at once"}</span>}
      {trouble && <p class="notice">{trouble}</p>}
      {hit && <Outcome hit={hit} stale={hit.revision !== state.project?.revision} units={units} />}
    </section>
  );
}

function Outcome({ hit, stale, units }: { hit: HitView; stale: boolean; units: BenchState["units"] }) {
  return (
    <div data-test="hit-outcome">
      <h3>
        {hit.degree}, {figure(1e4 * hit.area, 3)} cm² of {hit.zone} ({hit.variant})
      </h3>
      {stale && <p class="notice">Of the file as it was before.</p>}
      <p class="small">
        at x, y, z {hit.place.map((v) => text(v, "length", units, 3)).join(", ")} {unit("length", units)}
      </p>
      <table>
        <thead>
          <tr>
            <th>stiffness</th>
            <th class="n">lost</th>
          </tr>
        </thead>
        <tbody>
          {hit.stiffness.map((s) => (
            <tr key={s.loading}>
              <td>{s.loading}</td>
              <td class="n">{s.lost === undefined || s.lost === null ? "not known" : share(s.lost)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {hit.loads.length > 0 && (
        <table data-test="hit-loads">
          <thead>
            <tr>
              <th>case, and what gives way</th>
              <th class="n">reserve before</th>
              <th class="n">after</th>
            </tr>
          </thead>
          <tbody>
            {hit.loads.map((l) => (
              <tr key={l.loading}>
                <td>
                  {l.loading} <span class="small">{l.how}</span>
                </td>
                <td class="n">{factor(l.before)}</td>
                <td class="n">{l.carried ? factor(l.after) : "not carried"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {hit.aside && <p class="notice">{hit.aside}</p>}
      <p class="small">{hit.about}</p>
    </div>
  );
}

function share(lost: number): string {
  return Math.abs(lost) < 1e-7 ? "none" : `${figure(100 * lost, 2)} %`;
}

function factor(value: number | null | undefined): string {
  if (value === undefined || value === null) return "–";
  return value > 100 ? "> 100" : value.toFixed(2);
}
