// SPDX-License-Identifier: Apache-2.0
import { useState } from "preact/hooks";
import type { ExchangeView } from "./ask";
import type { Bench } from "./bench";
import type { BenchState } from "./state";
import { ticks } from "./scale";
import { Tally } from "./tally";
import { figure, shown, text, unit, type Kind, type Units } from "./units";
import { Work } from "./work";

const WIDTH = 358;
const HEIGHT = 258;
const LEFT = 44;
const RIGHT = 12;
const TOP = 22;
const FOOT = 38;

/** Mass against stiffness: the lightest layup for each stiffness, and what nothing is lighter than. */
export function Exchange({ bench, state }: { bench: Bench; state: BenchState }) {
  const { exchange, exchangeWork, ledger, draft, project } = state;
  const drawn = exchange.points.length > 0;
  const stale = drawn && exchange.revision !== project!.revision;
  const other = drawn && exchange.variant !== state.variant;
  const lay = (k: number) => void bench.drafts.lay(k);
  const fixed = stale || other || exchangeWork.state === "WORKING";
  return (
    <>
      <section class="card exchange" aria-label="Mass against stiffness">
        <h2>Mass against stiffness</h2>
        <p class="small">
          Each dot is the lightest layup found for a stiffness between the hardpoints, of the plies and cores the design's
          layup rules allow. Below the thin line there is nothing. Strength, buckling and vibration are not looked at.
        </p>
        <Begin bench={bench} state={state} again={drawn} />
        {!drawn && exchangeWork.state !== "WORKING" && <p class="wait">No curve has been drawn yet.</p>}
        {stale && <p class="notice">Drawn from the file as it was before; draw it again to try its layups.</p>}
        {other && <p class="notice">This is the curve of “{exchange.variant}”; draw it again for “{state.variant}”.</p>}
        {drawn && <Curve exchange={exchange} state={state} onLay={fixed ? undefined : lay} />}
      </section>
      {ledger && draft && <Tally bench={bench} state={state} ledger={ledger} />}
      {drawn && (
        <section class="card" aria-label="The curve in numbers">
          <Table exchange={exchange} units={state.units} onLay={fixed ? undefined : lay} />
        </section>
      )}
    </>
  );
}

function Begin({ bench, state, again }: { bench: Bench; state: BenchState; again: boolean }) {
  const [points, setPoints] = useState(9);
  const [from, setFrom] = useState(60);
  const [seconds, setSeconds] = useState(90);
  return (
    <Work work={state.exchangeWork} name="exchange" what="the curve" onStop={() => void bench.exchange.stop()}>
      <form
        class="bar asks"
        onSubmit={(e) => {
          e.preventDefault();
          void bench.exchange.start({ variant: state.variant, from: from / 100, to: 1, points, seconds });
        }}
      >
        <label>
          from{" "}
          <input type="number" min={20} max={95} value={from} onChange={(e) => setFrom(Number(e.currentTarget.value))} />
          {" %"}
        </label>
        <label>
          points{" "}
          <input
            type="number"
            min={2}
            max={40}
            value={points}
            onChange={(e) => setPoints(Number(e.currentTarget.value))}
            data-test="exchange-points"
          />
        </label>
        <label>
          in{" "}
          <input
            type="number"
            min={1}
            max={3600}
            value={seconds}
            onChange={(e) => setSeconds(Number(e.currentTarget.value))}
            data-test="exchange-seconds"
          />
          {" s"}
        </label>
        <button type="submit" data-test="exchange-start" disabled={!state.ledger}>
          {again ? "Draw again" : "Draw the curve"}
        </button>
      </form>
    </Work>
  );
}

const kindOf = (exchange: ExchangeView): Kind => (exchange.kind === "TORSION" ? "twist" : "bend");

interface CurveProps {
  exchange: ExchangeView;
  state: BenchState;
  onLay: ((point: number) => void) | undefined;
}

function Curve({ exchange, state, onLay }: CurveProps) {
  const { units, draft } = state;
  const kind = kindOf(exchange);
  const trying = draft && draft.words.length > 0 && draft.variant === exchange.variant ? draft : undefined;
  const own = { x: (si: number) => shown(si, kind, units), y: (si: number) => shown(si, "mass", units) };
  const all = [
    ...exchange.points.map((p) => ({ x: p.asked, y: p.mass })),
    ...exchange.points.map((p) => ({ x: p.asked, y: p.bound })),
    ...exchange.marks.map((m) => ({ x: m.stiffness, y: m.mass })),
    ...(trying ? [{ x: trying.stiffness.low, y: trying.mass }] : []),
  ];
  const span = (values: number[], air: number): [number, number] => {
    const [low, high] = [Math.min(...values), Math.max(...values)];
    return [low - air * (high - low || high), high + air * (high - low || high)];
  };
  const [x0, x1] = span(all.map((p) => own.x(p.x)), 0.06);
  const [y0, y1] = span(all.map((p) => own.y(p.y)), 0.1);
  const px = (si: number) => LEFT + ((own.x(si) - x0) / (x1 - x0)) * (WIDTH - LEFT - RIGHT);
  const py = (si: number) => TOP + ((y1 - own.y(si)) / (y1 - y0)) * (HEIGHT - TOP - FOOT);
  const path = (of: (p: ExchangeView["points"][number]) => number) =>
    exchange.points.map((p, i) => `${i ? "L" : "M"}${px(p.asked).toFixed(1)} ${py(of(p)).toFixed(1)}`).join("");
  return (
    <svg class="curves" width={WIDTH} height={HEIGHT} role="group" aria-label={words(exchange, units)} data-test="exchange-curve">
      {ticks(y0, y1).map((t) => {
        const y = TOP + ((y1 - t) / (y1 - y0)) * (HEIGHT - TOP - FOOT);
        return (
          <g key={`y${t}`}>
            <line class="grid" x1={LEFT} x2={WIDTH - RIGHT} y1={y} y2={y} />
            <text class="axis end" x={LEFT - 6} y={y + 4}>
              {figure(t, 3)}
            </text>
          </g>
        );
      })}
      {ticks(x0, x1).map((t) => {
        const x = LEFT + ((t - x0) / (x1 - x0)) * (WIDTH - LEFT - RIGHT);
        return (
          <g key={`x${t}`}>
            <line class="zero" x1={x} x2={x} y1={HEIGHT - FOOT} y2={HEIGHT - FOOT + 4} />
            <text class="axis middle" x={x} y={HEIGHT - FOOT + 17}>
              {figure(t, 3)}
            </text>
          </g>
        );
      })}
      <text class="axis" x={2} y={12}>
        mass, {unit("mass", units)}
      </text>
      <text class="axis end" x={WIDTH - RIGHT} y={HEIGHT - 5}>
        stiffness, {unit(kind, units)}
      </text>
      <path class="curve thin s3" d={path((p) => p.bound)} />
      <path class="curve s0" d={path((p) => p.mass)} />
      {exchange.marks.map((m) => {
        const late = px(m.stiffness) > 0.6 * WIDTH;
        return (
          <g key={m.name}>
            <rect class="there" x={px(m.stiffness) - 4} y={py(m.mass) - 4} width={8} height={8} />
            <text class={late ? "mark end" : "mark"} x={px(m.stiffness) + (late ? -9 : 9)} y={py(m.mass) + (late ? -7 : 4)}>
              {m.name}
            </text>
          </g>
        );
      })}
      {trying && (
        <circle class="tried" cx={px((trying.stiffness.low + trying.stiffness.high) / 2)} cy={py(trying.mass)} r={8}>
          <title>the layup being tried</title>
        </circle>
      )}
      {exchange.points.map((p, k) => (
        <g key={k}>
          <line class="gap" x1={px(p.asked)} x2={px(p.asked)} y1={py(p.mass)} y2={py(p.bound)} />
          <circle
            class={onLay ? "choice" : "choice off"}
            cx={px(p.asked)}
            cy={py(p.mass)}
            r={5}
            role="button"
            tabindex={onLay ? 0 : -1}
            aria-disabled={!onLay}
            aria-label={`${pointWords(p, kind, units)}: lay it on the tub`}
            data-test={`exchange-point-${k}`}
            onClick={() => onLay?.(k)}
            onKeyDown={(e) => {
              if (e.key === "Enter" || e.key === " ") {
                e.preventDefault();
                onLay?.(k);
              }
            }}
          >
            <title>{pointWords(p, kind, units)}</title>
          </circle>
        </g>
      ))}
    </svg>
  );
}

function pointWords(p: ExchangeView["points"][number], kind: Kind, units: Units): string {
  return `At least ${text(p.asked, kind, units)} ${unit(kind, units)}: ${text(p.mass, "mass", units)} ${unit("mass", units)}, nothing below ${text(p.bound, "mass", units)}`;
}

/** The curve for whoever cannot see it. */
function words(exchange: ExchangeView, units: Units): string {
  const kind = kindOf(exchange);
  const [first, last] = [exchange.points[0], exchange.points.at(-1)!];
  return `Mass against stiffness of ${exchange.variant}, ${exchange.points.length} points. ${pointWords(first, kind, units)}. ${pointWords(last, kind, units)}. The table below has them all.`;
}

function Table({ exchange, units, onLay }: { exchange: ExchangeView; units: Units; onLay: ((point: number) => void) | undefined }) {
  const kind = kindOf(exchange);
  return (
    <table data-test="exchange-table">
      <thead>
        <tr>
          <th class="n">
            at least,
            <br />
            {unit(kind, units)}
          </th>
          <th class="n">
            lightest,
            <br />
            {unit("mass", units)}
          </th>
          <th class="n">
            nothing
            <br />
            below
          </th>
          <th class="n">
            gap,
            <br />%
          </th>
          <th>
            <span class="unseen">lay it on the tub</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {exchange.points.map((p, k) => (
          <tr key={k}>
            <td class="n">{text(p.asked, kind, units)}</td>
            <td class="n">{text(p.mass, "mass", units)}</td>
            <td class="n">{text(p.bound, "mass", units)}</td>
            <td class="n">{figure(100 * (1 - p.bound / p.mass), 2)}</td>
            <td>
              <button
                type="button"
                class="quiet"
                disabled={!onLay}
                aria-label={`try: lay point ${k + 1} on the tub`}
                onClick={() => onLay?.(k)}
                data-test={`exchange-lay-${k}`}
              >
                try
              </button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
