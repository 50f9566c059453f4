// SPDX-License-Identifier: Apache-2.0
import { useEffect, useRef, useState } from "preact/hooks";
import type { CaseView } from "./ask";
import { isCoarse, type BenchState } from "./state";
import { ticks } from "./scale";
import { figure, full, shown, typed, unit, type Units } from "./units";
import { rulerOf } from "./view";

/** Room left of the line for the scale, and below it for stations, pixels. */
const LEFT = 0;
const FOOT = 22;
const HEAD = 20;

/**
 * The twist line of every variant that has been computed, on the stations of the tub above it: turned with the tub, as long
 * as that is seen from somewhere near its side.
 */
export function TwistChart({ state }: { state: BenchState }) {
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 600, height: 170 });
  useEffect(() => {
    const watch = new ResizeObserver(() => setSize({ width: box.current!.clientWidth, height: box.current!.clientHeight }));
    watch.observe(box.current!);
    return () => watch.disconnect();
  }, []);
  const tub = state.tubs[state.variant];
  // Of stored runs those that are asked for, and the one that stands beside.
  const recalled = [...new Set([...state.overlaid, state.beside ?? ""])].flatMap((n) => state.stored[n] ?? []);
  const lines = [...state.answers, ...recalled]
    .map((a) => ({ name: a.variant, torsion: a.cases.find((c) => c.twist && (c.name === state.loading || c.kind === "TORSION")) }))
    .filter((l): l is { name: string; torsion: CaseView } => l.torsion !== undefined)
    .sort((a, b) => Number(b.name === state.variant) - Number(a.name === state.variant));
  const unitTorque = typed(1000, "torque", state.units);
  const { width, height } = size;
  const seen = state.view && rulerOf(state.view);
  const span = tub ? tub.high[0] - tub.low[0] : 1;
  const plain = {
    at: (x: number) => ((x - (tub ? tub.low[0] + span / 2 : 0)) * 0.86 * width) / span,
  };
  const ruler = seen ?? plain;
  const px = (x: number) => width / 2 + ruler.at(x);
  // Twist against the held end, over the couple: what a rig would show for each unit of torque.
  const degrees = lines.map(({ torsion }) => {
    const twist = torsion.twist!;
    const held = at(twist.stations, twist.angles, torsion.rearStation);
    return twist.angles.map((a) => ((a - held) * 180) / Math.PI / torsion.load);
  });
  const measured = (state.test?.twist ?? []).map((t) => ({
    x: t.station,
    low: deg(t.perTorque - t.expanded),
    middle: deg(t.perTorque),
    high: deg(t.perTorque + t.expanded),
  }));
  const explained = state.test && state.explained.file === state.test.file ? state.explained : undefined;
  const built = explained
    ? [...explained.points.map((p) => [p.station, deg(p.built)]), ...(explained.held === undefined ? [] : [[explained.held, 0]])].sort(
        (p, q) => p[0] - q[0],
      )
    : [];
  const all = [...degrees.flat(), ...measured.flatMap((m) => [m.low, m.high]), ...built.map((b) => b[1])];
  const top = Math.max(1e-12, ...all);
  const bottom = Math.min(0, ...all);
  const py = (v: number) => HEAD + ((top - v) / (top - bottom)) * (height - HEAD - FOOT);
  const drawn = lines.map(({ torsion }, i) => torsion.twist!.stations.map((x, k) => ({ x: px(x), y: py(degrees[i][k]) })));
  const places = named(drawn, width);
  return (
    <figure class="twist">
      <figcaption>
        <h2>Twist line</h2>
        <span>
          degrees for {figure(shown(unitTorque, "torque", state.units), 3)} {unit("torque", state.units)}, against the held end
          {isCoarse(state, state.variant) && (
            <>
              {"; "}
              <span class="coarse">coarse mesh</span>
            </>
          )}
          {!seen && "; turn the tub towards its side to line it up with this"}
        </span>
      </figcaption>
      <div class="chart" ref={box}>
        {lines.length === 0 ? (
          <p class="wait">The twist line follows when the tub has been solved.</p>
        ) : (
          <svg width={width} height={height} role="img" aria-label={[words(lines, state.units), ...measuredWords(state)].join("; ")} data-test="twist">
            {tub?.view.landmarks.map((m) => {
              const [a, b] = [px(m.from), px(m.to)].sort((p, q) => p - q);
              return m.wall ? (
                <line key={m.name} class="wall" x1={(a + b) / 2} x2={(a + b) / 2} y1={HEAD} y2={height - FOOT} />
              ) : (
                <g key={m.name}>
                  <rect class="opening" x={a} width={b - a} y={HEAD} height={height - FOOT - HEAD} />
                  <text class="mark middle" x={(a + b) / 2} y={HEAD - 6}>
                    {m.name}
                  </text>
                </g>
              );
            })}
            <line class="zero" x1={LEFT} x2={width} y1={py(0)} y2={py(0)} />
            {ticks(bottom * unitTorque, top * unitTorque).filter((t) => t !== 0).map((t) => (
              <g key={t}>
                <line class="grid" x1={LEFT} x2={width} y1={py(t / unitTorque)} y2={py(t / unitTorque)} />
                <text class="axis" x={4} y={py(t / unitTorque) - 3}>
                  {figure(t, 2)}°
                </text>
              </g>
            ))}
            {tub &&
              ticks(shown(tub.low[0], "length", state.units), shown(tub.high[0], "length", state.units), 9).map((t) => typed(t, "length", state.units)).map((x, i, all) => (
                <text key={x} class={i === all.length - 1 && px(x) > width - 40 ? "axis end" : "axis middle"} x={Math.min(px(x), width - 4)} y={height - 6}>
                  {Math.round(shown(x, "length", state.units))}
                  {i === all.length - 1 && ` ${unit("length", state.units)}`}
                </text>
              ))}
            {lines.map(({ name, torsion }, i) => {
              const { stations: xs } = torsion.twist!;
              const d = xs.map((x, k) => `${k ? "L" : "M"}${px(x).toFixed(1)} ${py(degrees[i][k]).toFixed(1)}`).join("");
              return (
                <g key={name}>
                  <path class={`curve s${i % 4}`} d={d} />
                  <text class={`name middle s${i % 4}`} x={places[i].x} y={places[i].y}>
                    {name}
                  </text>
                </g>
              );
            })}
            {built.length > 1 && (
              <>
                <path class="built" d={built.map(([x, v], k) => `${k ? "L" : "M"}${px(x).toFixed(1)} ${py(v).toFixed(1)}`).join("")} />
                <text class="name built" x={px(built[0][0]) + 6} y={py(built[0][1]) - 8}>
                  as built
                </text>
              </>
            )}
            {measured.map((m) => (
              <g key={m.x} class="measured" data-test="measured">
                <path d={`M${px(m.x)} ${py(m.low)}V${py(m.high)}M${px(m.x) - 4} ${py(m.low)}h8M${px(m.x) - 4} ${py(m.high)}h8`} />
                <circle cx={px(m.x)} cy={py(m.middle)} r={3.4} />
              </g>
            ))}
          </svg>
        )}
      </div>
    </figure>
  );
}

interface Point {
  x: number;
  y: number;
}

/** Where each line's name stands: above or below the line, where the others are farthest away. */
function named(lines: readonly (readonly Point[])[], width: number): Point[] {
  const had: Point[] = [];
  return lines.map((line, i) => {
    let best = { x: 0, y: 0, room: -Infinity };
    for (const share of [0.12, 0.18, 0.24, 0.3, 0.36, 0.42, 0.48, 0.54, 0.6]) {
      const x = share * width;
      const own = heightAt(line, x);
      if (own === undefined) continue;
      const others = lines.filter((_, k) => k !== i).flatMap((l) => heightAt(l, x) ?? []);
      for (const under of [false, true]) {
        const y = own + (under ? 18 : -8);
        const clash = had.some((p) => Math.abs(p.x - x) < 110 && Math.abs(p.y - y) < 16);
        const crossed = [-36, -18, 18, 36].some((dx) => Math.abs((heightAt(line, x + dx) ?? y) - (y - 4)) < 7);
        const air = Math.min(60, ...others.map((o) => Math.abs(o - (y - 4)))) - (crossed ? 50 : 0);
        const room = air - (y < HEAD + 10 ? 100 : 0) - (clash ? 60 : 0) + 10 * share;
        if (room > best.room) best = { x, y, room };
      }
    }
    had.push(best);
    return best;
  });
}

function heightAt(line: readonly Point[], x: number): number | undefined {
  for (let k = 1; k < line.length; k++) {
    const [p, q] = [line[k - 1], line[k]];
    if (Math.min(p.x, q.x) <= x && x <= Math.max(p.x, q.x) && p.x !== q.x) return p.y + ((x - p.x) / (q.x - p.x)) * (q.y - p.y);
  }
  return undefined;
}

const deg = (perTorque: number) => (perTorque * 180) / Math.PI;

/** The measured line for whoever cannot see it. */
function measuredWords({ test, units }: BenchState): string[] {
  if (!test) return [];
  const points = test.twist.map((t) => `${figure(1000 * deg(t.perTorque), 3)}° at ${full(t.station, "length", units)}`);
  return [`measured in ${test.file}: ${points.join(", ")}`];
}

function at(xs: number[], ys: number[], x: number): number {
  if (x <= xs[0]) return ys[0];
  for (let i = 1; i < xs.length; i++) {
    if (x <= xs[i]) return ys[i - 1] + ((x - xs[i - 1]) / (xs[i] - xs[i - 1])) * (ys[i] - ys[i - 1]);
  }
  return ys[ys.length - 1];
}

/** The chart for whoever cannot see it. */
function words(lines: { name: string; torsion: CaseView }[], units: Units): string {
  return lines
    .map(({ name, torsion }) => {
      const { stations: xs, slopes } = torsion.twist!;
      let steepest = 0;
      slopes.forEach((s, i) => {
        if (xs[i] > torsion.frontStation && xs[i] < torsion.rearStation && Math.abs(s) > Math.abs(slopes[steepest])) steepest = i;
      });
      return `${name} twists most at station ${full(xs[steepest], "length", units, 3)}`;
    })
    .join("; ");
}
