// SPDX-License-Identifier: Apache-2.0
import { useEffect, useState } from "preact/hooks";
import type { ChangeRequest, DraftView, LedgerView, OwnerView, RowView } from "./ask";
import type { Bench } from "./bench";
import { troubleOf, type BenchState } from "./state";
import { drawnHeight, LayerDrawing, layerName } from "./stack";
import { Tally } from "./tally";
import { figure, full, shown, text, typed, unit, type Kind, type Units } from "./units";

/** What every ply weighs and buys, and what becomes of the tub without it. */
export function Plies({ bench, state }: { bench: Bench; state: BenchState }) {
  const { ledger, draft } = state;
  const [cheapest, setCheapest] = useState(false);
  const [alike, setAlike] = useState(true);
  const marked = state.marked;
  useEffect(() => {
    if (marked) document.getElementById(id(marked))?.scrollIntoView({ block: "nearest" });
  }, [marked]);
  if (!ledger) {
    return (
      <section class="card" aria-label="The plies">
        <h2>Plies</h2>
        <p class="wait" role="status">
          {troubleOf(state, state.variant) ? "The tub cannot be solved; its plies can be asked when it can." : "The tub is being solved; its plies follow."}
        </p>
      </section>
    );
  }
  return (
    <section class="plies" aria-label="The plies">
      <Tally bench={bench} state={state} ledger={ledger} />
      <div class="bar">
        <span role="group" aria-label="Order">
          <button type="button" class="quiet" aria-pressed={!cheapest} onClick={() => setCheapest(false)}>
            by zone
          </button>
          <button type="button" class="quiet" aria-pressed={cheapest} onClick={() => setCheapest(true)} data-test="cheapest">
            what buys least first
          </button>
        </span>
        <label title="A change of one skin is made in the other as well, so that a symmetric stack stays one">
          <input type="checkbox" checked={alike} onChange={(e) => setAlike(e.currentTarget.checked)} data-test="alike" /> both
          skins alike
        </label>
      </div>
      {ledger.ready < 1 && (
        <p class="small" role="status">
          <progress value={ledger.ready} max={1} aria-label="Share of the plies that are answered" /> asking what each ply buys …
        </p>
      )}
      {cheapest ? (
        <Cheapest bench={bench} state={state} ledger={ledger} alike={alike} />
      ) : (
        <ul class="owners">
          {ledger.owners.map((o) => (
            <Owner key={o.name} owner={o} bench={bench} state={state} ledger={ledger} draft={draft} alike={alike} />
          ))}
        </ul>
      )}
    </section>
  );
}

const id = (owner: string) => `zone-${owner.replace(/\W+/g, "-")}`;
const worthOf = (ledger: LedgerView): Kind => (ledger.kind === "TORSION" ? "twistWorth" : "bendWorth");

interface OwnerProps {
  bench: Bench;
  state: BenchState;
  ledger: LedgerView;
  draft: DraftView | undefined;
  alike: boolean;
  owner: OwnerView;
}

/** A zone or a patch with its stack, drawn as one would on paper. */
function Owner({ bench, state, ledger, draft, alike, owner }: OwnerProps) {
  const open = state.marked === owner.name;
  const edited = draft?.edited.find((e) => e.owner === owner.name);
  return (
    <li id={id(owner.name)} class={open ? "owner open" : "owner"}>
      <button
        type="button"
        class="row"
        aria-expanded={open}
        onClick={() => bench.set({ marked: open ? undefined : owner.name })}
        data-test={`owner-${owner.name}`}
      >
        <span class="what">
          {owner.patch && <span class="small">patch </span>}
          {owner.name}
          {edited && <span class="changed"> changed</span>}
        </span>
        <code>{edited ? edited.stack.code : owner.stack.code}</code>
        <span class="small">{full(owner.area, "area", state.units, 3)}</span>
      </button>
      {open && (
        <p class="small">
          Number and bar: {ledger.kind === "TORSION" ? "torsional" : "bending"} stiffness lost for the mass given back,{" "}
          {unit(worthOf(ledger), state.units)}
        </p>
      )}
      {open && (
        <ol class="layers" aria-label={`Layers of ${owner.name}, outer face first`}>
          {owner.stack.layers.map((layer, i) => (
            <LayerRow
              key={i}
              bench={bench}
              state={state}
              ledger={ledger}
              owner={owner}
              place={i + 1}
              now={edited?.layers[i] ?? { count: 1, degrees: layer.degrees, thickness: layer.thickness, material: layer.material }}
              alike={alike}
            />
          ))}
        </ol>
      )}
    </li>
  );
}

interface LayerProps {
  bench: Bench;
  state: BenchState;
  ledger: LedgerView;
  owner: OwnerView;
  place: number;
  now: DraftView["edited"][number]["layers"][number];
  alike: boolean;
}

function LayerRow({ bench, state, ledger, owner, place, now, alike }: LayerProps) {
  const designed = owner.stack.layers[place - 1];
  const kind = ledger.cores.find((c) => c.name === now.material)?.kind ?? designed.kind;
  const layer = { ...designed, kind, degrees: now.degrees, thickness: now.thickness };
  const row = ledger.rows.find((r) => r.owner === owner.name && r.place === place);
  const core = layer.kind === "HONEYCOMB" || layer.kind === "FOAM";
  const film = layer.kind === "FILM";
  const name = layerName(layer);
  const height = drawnHeight(layer, true);
  const change = (part: Omit<ChangeRequest, "owner" | "place">) =>
    void bench.drafts.change(paired(owner, place, part, alike));
  return (
    <li class={now.count === 0 ? "gone" : ""}>
      <svg class="section" width="60" height={height} aria-hidden="true">
        <LayerDrawing layer={layer} width={60} height={height} />
        {now.count > 1 && <text x={56} y={15} class="end times">×{now.count}</text>}
      </svg>
      <span class="label">
        <span class="number">{place}</span> {name}
        <Worth row={row} ledger={ledger} units={state.units} />
      </span>
      {!film && (
        <span class="acts">
          {core ? (
            <CoreChoice ledger={ledger} now={now.material} designed={designed.material} owner={owner.name} units={state.units} onChange={(material) => change({ material })} />
          ) : null}
          {core ? (
            <label>
              <input
                type="number"
                aria-label={`Thickness of the core of ${owner.name}, ${unit("length", state.units)}`}
                value={Math.round(shown(now.thickness, "length", state.units) * 100) / 100}
                min={0.1}
                step={state.units === "SI" ? 1 : 0.05}
                onChange={(e) => change({ thickness: typed(Number(e.currentTarget.value), "length", state.units) })}
                data-test={`core-${owner.name}`}
              />{" "}
              {unit("length", state.units)}
            </label>
          ) : (
            <>
              <button
                type="button"
                class="quiet"
                aria-pressed={now.count === 0}
                aria-label={`${now.count === 0 ? "back: put back" : "off: leave out"} layer ${place}, ${name}`}
                onClick={() => change({ count: now.count === 0 ? 1 : 0 })}
                data-test={`off-${owner.name}-${place}`}
              >
                {now.count === 0 ? "back" : "off"}
              </button>
              <button
                type="button"
                class="quiet"
                aria-pressed={now.count === 2}
                aria-label={`×2: ${now.count === 2 ? "no longer double" : "double"} layer ${place}, ${name}`}
                onClick={() => change({ count: now.count === 2 ? 1 : 2 })}
                data-test={`twice-${owner.name}-${place}`}
              >
                ×2
              </button>
              {layer.kind !== "SHEET" && (
                <select
                  aria-label={`Direction of layer ${place}`}
                  value={String(Math.round(now.degrees))}
                  onChange={(e) => change({ degrees: Number(e.currentTarget.value) })}
                  data-test={`turn-${owner.name}-${place}`}
                >
                  {directions(now.degrees).map((d) => (
                    <option key={d} value={String(d)}>
                      {String(d).replace("-", "−")}°
                    </option>
                  ))}
                </select>
              )}
            </>
          )}
        </span>
      )}
    </li>
  );
}

interface CoreProps {
  ledger: LedgerView;
  now: string;
  designed: string;
  owner: string;
  units: Units;
  onChange(material: string): void;
}

/** Which core is laid; lightest first, for that is what they are chosen by. */
function CoreChoice({ ledger, now, designed, owner, units, onChange }: CoreProps) {
  const cores = [...ledger.cores].sort((a, b) => a.density - b.density);
  return (
    <select
      class="core"
      aria-label={`Core of ${owner}`}
      title={now}
      value={now}
      onChange={(e) => onChange(e.currentTarget.value)}
      data-test={`material-${owner}`}
    >
      {cores.map((c) => (
        <option key={c.name} value={c.name}>
          {c.name}, {full(c.density, "volumeMass", units, 3)}
          {c.name === designed ? " (as designed)" : ""}
        </option>
      ))}
    </select>
  );
}

function directions(own: number): number[] {
  const usual = [-60, -45, -30, -15, 0, 15, 30, 45, 60, 75, 90];
  const rounded = Math.round(own);
  return usual.includes(rounded) ? usual : [...usual, rounded].sort((a, b) => a - b);
}

/** The change, and its like in the other skin of a symmetric stack. */
export function paired(owner: OwnerView, place: number, part: Omit<ChangeRequest, "owner" | "place">, alike: boolean): ChangeRequest[] {
  const mine = { owner: owner.name, place, ...part };
  const other = owner.stack.layers.length + 1 - place;
  return alike && owner.symmetric && other !== place ? [mine, { owner: owner.name, place: other, ...part }] : [mine];
}

/** What a layer buys, as a number and as the length of a bar: longer buys more. */
function Worth({ row, ledger, units }: { row: RowView | undefined; ledger: LedgerView; units: Units }) {
  if (!row) return null;
  const kind = worthOf(ledger);
  const most = Math.max(...ledger.rows.map((r) => r.lostPerKilogram));
  const share = Math.sqrt(Math.max(0, row.lostPerKilogram) / most);
  return (
    <span class="worth">
      <svg width="36" height="6" aria-hidden="true">
        <rect class="track" width={36} height={6} />
        <rect class="fill" width={36 * share} height={6} />
      </svg>
      <span class="small" title={`${full(row.mass, "mass", units, 3)} given back; ${full(row.lostPerKilogram, kind, units, 3)} lost for it`}>
        {text(row.lostPerKilogram, kind, units, 3)}
      </span>
    </span>
  );
}

function Cheapest({ bench, state, ledger, alike }: { bench: Bench; state: BenchState; ledger: LedgerView; alike: boolean }) {
  const { units, draft } = state;
  return (
    <table class="cheapest">
      <caption class="small">
        Stiffness lost for a {units === "SI" ? "kilogram" : "pound"} given back, {unit(worthOf(ledger), units)}
      </caption>
      <thead>
        <tr>
          <th>layer</th>
          <th class="n">{units === "SI" ? "g" : "lb"}</th>
          <th class="n">costs</th>
          <th>
            <span class="unseen">change</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {ledger.rows.map((r) => {
          const owner = ledger.owners.find((o) => o.name === r.owner)!;
          const layer = owner.stack.layers[r.place - 1];
          const core = layer.kind === "HONEYCOMB" || layer.kind === "FOAM";
          const now = draft?.edited.find((e) => e.owner === r.owner)?.layers[r.place - 1];
          const off = now?.count === 0;
          return (
            <tr key={`${r.owner} ${r.place}`} class={off ? "gone" : ""}>
              <td>
                <button type="button" class="quiet link" onClick={() => bench.set({ marked: r.owner })}>
                  {r.owner} {r.place}
                </button>{" "}
                <span class="small">{core ? "core, thinner" : layerName(layer)}</span>
              </td>
              <td class="n">{units === "SI" ? figure(1000 * r.mass, 3) : text(r.mass, "mass", units, 3)}</td>
              <td class="n">{text(r.lostPerKilogram, worthOf(ledger), units, 3)}</td>
              <td>
                {!core && (
                  <button
                    type="button"
                    class="quiet"
                    aria-label={`${off ? "back: put back" : "off: leave out"} layer ${r.place} of ${r.owner}`}
                    onClick={() => void bench.drafts.change(paired(owner, r.place, { count: off ? 1 : 0 }, alike))}
                  >
                    {off ? "back" : "off"}
                  </button>
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
