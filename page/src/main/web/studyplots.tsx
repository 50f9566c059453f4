// SPDX-License-Identifier: Apache-2.0
import { useRef, useState } from "preact/hooks";
import type { StudyView } from "./ask";
import { ticks } from "./scale";
import { heading, passes, span, type Design, type Sieve } from "./sieve";
import { figure } from "./units";

const WIDTH = 358;
const LEFT = 46;
const RIGHT = 12;
/** Room for the slanted name of the last upright, px. */
const SLANT = 26;
/** Shorter than this a stroke of the pointer is a touch, px. */
const TOUCH = 4;

export interface PlotProps {
  study: StudyView;
  all: readonly Design[];
  sieve: Sieve;
  chosen: Design | undefined;
  onChoose: (design: Design) => void;
  /** Ranges for some axes at once; none lifts an axis' range. */
  onSift: (ranges: readonly (readonly [axis: number, range: readonly [number, number] | undefined])[]) => void;
}

const same = (a: Design, b: Design | undefined) => a.variant === b?.variant && a.point === b.point;

interface Stroke {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

/** Follows a pointer that draws over a picture. */
function useStroke(done: (stroke: Stroke) => void) {
  const [stroke, setStroke] = useState<Stroke | undefined>();
  const ref = useRef<SVGSVGElement>(null);
  const at = (e: PointerEvent) => {
    const box = ref.current!.getBoundingClientRect();
    return { x: e.clientX - box.left, y: e.clientY - box.top };
  };
  const events = {
    onPointerDown: (e: PointerEvent) => {
      if ((e.target as Element).getAttribute("role") === "button") return;
      const { x, y } = at(e);
      (e.currentTarget as Element).setPointerCapture(e.pointerId);
      setStroke({ x0: x, y0: y, x1: x, y1: y });
    },
    onPointerMove: (e: PointerEvent) => {
      if (!stroke) return;
      const { x, y } = at(e);
      setStroke({ ...stroke, x1: x, y1: y });
    },
    onPointerUp: () => {
      if (stroke) done(stroke);
      setStroke(undefined);
    },
    onPointerCancel: () => setStroke(undefined),
  };
  return { ref, stroke, events };
}

/** One axis against another; a stroke across it keeps what lies inside. */
export function Scatter({ study, all, sieve, chosen, onChoose, onSift, x, y }: PlotProps & { x: number; y: number }) {
  const height = 250;
  const [top, foot] = [20, 36];
  const [[x0, x1], [y0, y1]] = [span(all, x), span(all, y)];
  const px = (v: number) => LEFT + 6 + ((v - x0) / (x1 - x0)) * (WIDTH - LEFT - RIGHT - 12);
  const py = (v: number) => top + 6 + ((y1 - v) / (y1 - y0)) * (height - top - foot - 12);
  const vx = (p: number) => x0 + ((p - LEFT - 6) / (WIDTH - LEFT - RIGHT - 12)) * (x1 - x0);
  const vy = (p: number) => y1 - ((p - top - 6) / (height - top - foot - 12)) * (y1 - y0);
  const { ref, stroke, events } = useStroke((s) => {
    const touch = Math.abs(s.x1 - s.x0) < TOUCH && Math.abs(s.y1 - s.y0) < TOUCH;
    onSift(
      touch
        ? [[x, undefined], [y, undefined]]
        : [[x, [vx(Math.min(s.x0, s.x1)), vx(Math.max(s.x0, s.x1))]], [y, [vy(Math.max(s.y0, s.y1)), vy(Math.min(s.y0, s.y1))]]],
    );
  });
  const [kx, ky] = [sieve.get(x), sieve.get(y)];
  const kept = stroke
    ? { x: Math.min(stroke.x0, stroke.x1), y: Math.min(stroke.y0, stroke.y1), w: Math.abs(stroke.x1 - stroke.x0), h: Math.abs(stroke.y1 - stroke.y0) }
    : (kx ?? ky) && {
        x: px(kx ? kx[0] : x0),
        y: py(ky ? ky[1] : y1),
        w: px(kx ? kx[1] : x1) - px(kx ? kx[0] : x0),
        h: py(ky ? ky[0] : y0) - py(ky ? ky[1] : y1),
      };
  const words = study.axes[x].words;
  return (
    <svg class="curves sieve" ref={ref} width={WIDTH} height={height} role="group" aria-label={`${heading(study.axes[y])} against ${heading(study.axes[x])}`} data-test="study-scatter" {...events}>
      {ticks(y0, y1).map((t) => (
        <g key={`y${t}`}>
          <line class="grid" x1={LEFT} x2={WIDTH - RIGHT} y1={py(t)} y2={py(t)} />
          <text class="axis end" x={LEFT - 4} y={py(t) + 4}>{figure(t, 4)}</text>
        </g>
      ))}
      {(words.length ? words.map((_, i) => i) : ticks(x0, x1)).map((t) => (
        <text key={`x${t}`} class="axis middle" x={px(t)} y={height - foot + 15}>{words[t] ?? figure(t, 4)}</text>
      ))}
      <text class="axis" x={2} y={11}>{heading(study.axes[y])}</text>
      <text class="axis end" x={WIDTH - RIGHT} y={height - 4}>{heading(study.axes[x])}</text>
      {kept && <rect class="kept" x={kept.x} y={kept.y} width={kept.w} height={kept.h} />}
      {all.map((d) => (
        <circle
          key={`${d.variant} ${d.point}`}
          class={`design s${d.variant % 4} ${passes(d, sieve) ? "in" : "out"} ${same(d, chosen) ? "chosen" : ""} ${d.unbeaten ? "unbeaten" : ""}`}
          cx={px(d.numbers[x])}
          cy={py(d.numbers[y])}
          r={same(d, chosen) ? 6 : 4}
          role="button"
          tabindex={-1}
          data-test={`study-dot-${d.variant}-${d.point}`}
          onClick={() => onChoose(d)}
        >
          <title>{`${study.variants[d.variant].variant}, design ${d.point + 1}: ${figure(d.numbers[x], 4)}, ${figure(d.numbers[y], 4)}`}</title>
        </circle>
      ))}
    </svg>
  );
}

/** Every design a line across all axes; a stroke along an axis keeps what crosses it there. */
export function Uprights({ study, all, sieve, chosen, onSift }: PlotProps) {
  const height = 246;
  const [top, foot] = [72, 16];
  const count = study.axes.length;
  const step = count > 1 ? (WIDTH - 36 - SLANT) / (count - 1) : 0;
  const px = (a: number) => 18 + a * step;
  const spans = study.axes.map((_, a) => span(all, a));
  const py = (a: number, v: number) => top + ((spans[a][1] - v) / (spans[a][1] - spans[a][0])) * (height - top - foot);
  const vy = (a: number, p: number) => spans[a][1] - ((p - top) / (height - top - foot)) * (spans[a][1] - spans[a][0]);
  const nearest = (p: number) => Math.max(0, Math.min(count - 1, Math.round((p - 18) / (step || 1))));
  const { ref, stroke, events } = useStroke((s) => {
    const a = nearest(s.x0);
    onSift([[a, Math.abs(s.y1 - s.y0) < TOUCH ? undefined : [vy(a, Math.max(s.y0, s.y1)), vy(a, Math.min(s.y0, s.y1))]]]);
  });
  const path = (d: Design) => d.numbers.map((v, a) => `${a ? "L" : "M"}${px(a).toFixed(1)} ${py(a, v).toFixed(1)}`).join("");
  const sorted = [...all].sort((a, b) => Number(passes(a, sieve)) - Number(passes(b, sieve)) || Number(same(a, chosen)) - Number(same(b, chosen)));
  return (
    <svg class="curves sieve" ref={ref} width={WIDTH} height={height} role="img" aria-label="Every design a line across what is varied and what was read; the table below has the numbers" data-test="study-uprights" {...events}>
      {sorted.map((d) => (
        <path key={`${d.variant} ${d.point}`} class={`thread s${d.variant % 4} ${passes(d, sieve) ? "in" : "out"} ${same(d, chosen) ? "chosen" : ""}`} d={path(d)} />
      ))}
      {study.axes.map((axis, a) => {
        const kept = sieve.get(a);
        return (
          <g key={axis.name}>
            <line class="zero" x1={px(a)} x2={px(a)} y1={top} y2={height - foot} />
            {kept && <rect class="kept" x={px(a) - 5} width={10} y={py(a, kept[1])} height={Math.max(2, py(a, kept[0]) - py(a, kept[1]))} />}
            <text class="axis" transform={`translate(${px(a) + 2} ${top - 6}) rotate(-58)`} text-anchor="start">
              <title>{heading(axis)}</title>
              {axis.name.length > 13 ? `${axis.name.slice(0, 12)}…` : axis.name}
            </text>
          </g>
        );
      })}
      {stroke && <rect class="kept" x={px(nearest(stroke.x0)) - 5} width={10} y={Math.min(stroke.y0, stroke.y1)} height={Math.abs(stroke.y1 - stroke.y0)} />}
    </svg>
  );
}

/** What one step costs: each reading against the only thing that is varied, a line for each variant. */
export function Walk({ study, all, along, chosen, onChoose }: PlotProps & { along: number }) {
  const [width, height, left, top, foot] = [174, 112, 38, 20, 18];
  const [x0, x1] = span(all, along);
  const px = (v: number) => left + ((v - x0) / (x1 - x0)) * (width - left - 10);
  return (
    <div class="walk" data-test="study-walk">
      {study.axes.map((axis, a) => {
        // Variants with nothing but noughts, as the plies of a tub of sheet, are left out and do not stretch the scale.
        const some = all.filter((d) => all.some((e) => e.variant === d.variant && e.numbers[a]));
        if (axis.varied || some.every((d) => d.numbers[a] === undefined)) return null;
        const [low, high] = span(some, a);
        const py = (v: number) => top + ((high - v) / (high - low)) * (height - top - foot);
        return (
          <svg key={axis.name} class="curves" width={width} height={height} role="group" aria-label={`${heading(axis)} against ${heading(study.axes[along])}`}>
            <text class="axis" x={0} y={10}>
              <title>{heading(axis)}</title>
              {heading(axis).length > 27 ? `${heading(axis).slice(0, 26)}…` : heading(axis)}
            </text>
            {ticks(low, high, 2).map((t) => (
              <g key={t}>
                <line class="grid" x1={left} x2={width - 8} y1={py(t)} y2={py(t)} />
                <text class="axis end" x={left - 3} y={py(t) + 4}>{figure(t, 3)}</text>
              </g>
            ))}
            {[x0, x1].map((t) => (
              <text key={t} class={t === x1 ? "axis end" : "axis middle"} x={t === x1 ? width : px(t)} y={height - 4}>{figure(t, 3)}</text>
            ))}
            {study.variants.map((_, v) => {
              const line = some.filter((d) => d.variant === v && Number.isFinite(d.numbers[a])).sort((p, q) => p.numbers[along] - q.numbers[along]);
              return (
                <g key={v}>
                  <path class={`curve thin s${v % 4}`} d={line.map((d, i) => `${i ? "L" : "M"}${px(d.numbers[along]).toFixed(1)} ${py(d.numbers[a]).toFixed(1)}`).join("")} />
                  {line.map((d) => (
                    <circle key={d.point} class={`design s${v % 4} in ${same(d, chosen) ? "chosen" : ""}`} cx={px(d.numbers[along])} cy={py(d.numbers[a])} r={same(d, chosen) ? 5 : 3} role="button" tabindex={-1} onClick={() => onChoose(d)}>
                      <title>{`${study.variants[v].variant}: ${figure(d.numbers[a], 4)}`}</title>
                    </circle>
                  ))}
                </g>
              );
            })}
          </svg>
        );
      })}
    </div>
  );
}
