// SPDX-License-Identifier: Apache-2.0
import type { Bench } from "./bench";
import type { Cut } from "./geometry";
import type { BenchState } from "./state";
import { shown, typed, unit } from "./units";

/** Which case moves it, and how far out of shape it is drawn. */
export function CaseChoice({ bench, state }: { bench: Bench; state: BenchState }) {
  const cases = state.project!.variants.find((v) => v.name === state.variant)?.cases ?? [];
  return (
    <span class="group">
      <label>
        case
        <select value={state.loading} onChange={(e) => void bench.case(e.currentTarget.value)}>
          {cases.map((c) => (
            <option key={c}>{c}</option>
          ))}
        </select>
      </label>
      <label>
        out of shape
        <input
          type="range"
          min={0}
          max={2}
          step={0.1}
          value={state.magnify}
          aria-label="How far out of shape the tub is drawn"
          onInput={(e) => bench.set({ magnify: Number(e.currentTarget.value) })}
          data-test="magnify"
        />
      </label>
      <label>
        <input
          type="checkbox"
          checked={state.swinging}
          onChange={(e) => bench.set({ swinging: e.currentTarget.checked, magnify: state.magnify || 1 })}
        />
        swing
      </label>
    </span>
  );
}

/** What is cut away. */
export function CutChoice({ bench, state }: { bench: Bench; state: BenchState }) {
  const tub = state.tubs[state.variant];
  const { cut, units } = state;
  const put = (part: Partial<Cut>) => {
    const axis = part.axis ?? cut?.axis ?? 1;
    const middle = tub ? (tub.low[axis] + tub.high[axis]) / 2 : 0;
    const at = part.at ?? (part.axis === undefined ? cut?.at : undefined) ?? (axis === 1 ? 0 : middle);
    bench.set({ cut: { axis, at, beyond: part.beyond ?? cut?.beyond ?? false } });
  };
  return (
    <span class="group">
      <label>
        cut
        <select
          value={cut ? cut.axis : ""}
          onChange={(e) => {
            const value = e.currentTarget.value;
            if (value === "") bench.set({ cut: undefined });
            else put({ axis: Number(value) as 0 | 1 | 2 });
          }}
          data-test="cut"
        >
          <option value="">nothing away</option>
          <option value="0">across, at a station</option>
          <option value="1">along, beside the centre</option>
          <option value="2">level, at a height</option>
        </select>
      </label>
      {cut && tub && (
        <>
          <input
            type="number"
            aria-label={`Where it is cut, ${unit("length", units)}`}
            value={Math.round(shown(cut.at, "length", units) * 10) / 10}
            step={units === "SI" ? 25 : 1}
            onChange={(e) => put({ at: typed(Number(e.currentTarget.value), "length", units) })}
          />
          <span>{unit("length", units)}</span>
          <button type="button" class="quiet" onClick={() => put({ beyond: !cut.beyond })}>
            other side
          </button>
        </>
      )}
    </span>
  );
}

/** Which pieces are shown. */
export function PieceChoice({ bench, state }: { bench: Bench; state: BenchState }) {
  const pieces = state.tubs[state.variant]?.view.pieces ?? [];
  return (
    <details class="group pieces">
      <summary data-test="pieces">
        pieces{state.hidden.size > 0 && `: ${state.hidden.size} hidden`}
      </summary>
      <ul>
        {pieces.map((p) => (
          <li key={p.name}>
            <label>
              <input
                type="checkbox"
                checked={!state.hidden.has(p.name)}
                onChange={(e) => {
                  const hidden = new Set(state.hidden);
                  if (e.currentTarget.checked) hidden.delete(p.name);
                  else hidden.add(p.name);
                  bench.set({ hidden });
                }}
              />
              {p.name}
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
}
