// SPDX-License-Identifier: Apache-2.0
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Bench } from "./bench";
import { answerOf, type BenchState, fieldKey } from "./state";
import { css, ramp, type Rgb } from "./colours";
import type { Cut } from "./geometry";
import { LOOKS, paint, type Legend, type Painting } from "./looks";
import { Stage, type Scene, type Tone } from "./stage";
import { mostAt, named } from "./modes";
import { picture } from "./picture";
import { download } from "./title";
import { shown, typed, unit } from "./units";
import { fitted, moved, nearer, SIDES, turned, type View } from "./view";

const LIGHT: Tone = { ground: [243, 241, 235], ink: [28, 35, 48], mark: [43, 79, 160] };
const DARK: Tone = { ground: [32, 37, 45], ink: [233, 230, 222], mark: [143, 177, 245] };
const BLANK: Record<"light" | "dark", Rgb> = { light: [214, 211, 202], dark: [84, 90, 100] };

/** How many times its size the greatest movement is drawn, as a share of the tub's length. */
const REACH = 0.06;

/** The tub on its plate, with what it is coloured by. */
export function TubPlate({ bench, state }: { bench: Bench; state: BenchState }) {
  const box = useRef<HTMLDivElement>(null);
  const stage = useRef<Stage>(undefined);
  const [size, setSize] = useState({ width: 0, height: 0 });
  const shownVariants = [state.variant, ...(state.beside ? [state.beside] : [])].filter((v) => state.tubs[v]);
  const first = state.tubs[state.variant];

  useEffect(() => {
    const place = box.current!;
    const made = new Stage(place);
    stage.current = made;
    (window as unknown as { tubStage?: Stage }).tubStage = made;
    const watch = new ResizeObserver(() => {
      const { clientWidth: width, clientHeight: height } = place;
      made.resize(width, height);
      setSize({ width, height });
    });
    watch.observe(place);
    return () => {
      watch.disconnect();
      made.dispose();
    };
  }, []);

  // The first view, and again when the tub is another one.
  const fitKey = first ? [...first.low, ...first.high].map((v) => v.toFixed(2)).join() : "";
  const halves = Math.max(1, shownVariants.length);
  useEffect(() => {
    if (!first || size.width === 0) return;
    const { turn, rise } = state.view ?? SIDES.quarter;
    bench.set({ view: fitted({ turn, rise }, first.low, first.high, size.width, size.height / halves) });
  }, [fitKey, size.width > 0, halves]);

  const tone = state.dark ? DARK : LIGHT;
  // Colours follow a draft only while they tell of it.
  const modeOf = (v: string) => {
    const { mode, look } = state;
    const known = mode?.document.variant === v && mode.document.revision === state.tubs[v].view.revision;
    return look === "mode" && known ? mode : undefined;
  };
  const tried = state.look === "tried" ? state.draft : undefined;
  const paintings: Painting[] = useMemo(
    () =>
      shownVariants.map((v) =>
        paint(state.tubs[v], state.look, state.units, BLANK[state.dark ? "dark" : "light"], {
          fields: state.fields[fieldKey(v, state.loading)],
          answer: answerOf(state, v),
          draft: v === state.draft?.variant ? state.draft : undefined,
          ledger: v === state.ledger?.variant ? state.ledger : undefined,
          mode: modeOf(v),
        }),
      ),
    [state.tubs, state.look, state.units, state.dark, state.fields, state.loading, state.answers, state.stored, tried, state.mode, shownVariants.join("\n")],
  );
  const fieldsOf = (v: string) => (state.look === "mode" ? undefined : state.fields[fieldKey(v, state.loading)]);
  const scales = shownVariants.map((v) => {
    const tub = state.tubs[v];
    const drawn = state.magnify * REACH * (tub.high[0] - tub.low[0]);
    const largest = modeOf(v) ? 1 : fieldsOf(v)?.document.largest;
    return largest === undefined ? 0 : drawn / Math.max(1e-12, largest);
  });
  const scenes: Scene[] = useMemo(
    () =>
      shownVariants.map((v, i) => {
        const moved = modeOf(v) ?? fieldsOf(v);
        return {
          tub: state.tubs[v],
          colour: paintings[i].of,
          hidden: state.hidden,
          shape: moved && state.magnify > 0 ? { u: moved.floats("displacements"), scale: scales[i] } : undefined,
          strokes: state.look === "directions",
          marked: state.marked,
        };
      }),
    [paintings, state.hidden, state.marked, scales.join()],
  );
  useEffect(() => {
    if (scenes.length > 0 && size.width > 0) stage.current!.show(scenes, tone, state.cut);
  }, [scenes, tone, state.cut, size]);
  useEffect(() => {
    if (state.view) stage.current!.look(state.view);
  }, [state.view, size]);
  useEffect(() => {
    stage.current!.animate(state.swinging && state.magnify > 0 ? scales : undefined);
  }, [state.swinging, scales.join(), scenes, tone, state.cut, size]);

  const pick = (x: number, y: number) => {
    const met = stage.current!.pick(x, y, state.cut);
    const variant = met && shownVariants[met.half];
    const value = met && variant ? paintings[met.half]?.says(met.hit.element) : undefined;
    bench.set({ picked: met && variant ? { variant, element: met.hit.element, place: met.hit.place, value } : undefined });
  };
  const see = (view: View | undefined) => view && bench.set({ view });
  const side = (name: keyof typeof SIDES) =>
    first && see(fitted(SIDES[name], first.low, first.high, size.width, size.height / halves));

  return (
    <div class="plate">
      <div class="bar top">
      <div class="looks" role="group" aria-label="Coloured by">
        {LOOKS.map((l) => (
          <button
            key={l.look}
            type="button"
            aria-pressed={state.look === l.look}
            title={l.tells}
            onClick={() => void bench.look(l.look)}
            data-test={`look-${l.look}`}
          >
            {l.name}
          </button>
        ))}
      </div>
      {paintings[0]?.legend.ticks && <Key legend={paintings[0].legend} />}
      </div>
      <div class="view">
      <Canvas
        label={describe(state, paintings[0]?.legend)}
        onTurn={(dx, dy) => see(state.view && turned(state.view, dx, dy))}
        onMove={(dx, dy) => see(state.view && moved(state.view, dx, dy))}
        onNear={(factor) => see(state.view && nearer(state.view, factor))}
        onPick={pick}
        onPickMiddle={() => pick(size.width / 2, size.height / halves / 2)}
        onAway={() => bench.set({ picked: undefined, marked: undefined })}
      >
        <div class="stage" ref={box} />
        {!first && <p class="wait">The tub is being meshed …</p>}
        {shownVariants.length > 1 && shownVariants.map((v, i) => (
          <p key={v} class={`tag half${i}`}>
            {v}
          </p>
        ))}
      </Canvas>
      {paintings[0] && !paintings[0].legend.ticks && <Key legend={paintings[0].legend} />}
      {first && modeOf(state.variant) && (
        <p class="naming" role="status" data-test="mode-named">
          {named(state.mode!.document)} <span class="small">{mostAt(state.mode!.document, state.units)}</span>
        </p>
      )}
      </div>
      <div class="handles">
        <span role="group" aria-label="Look from" class="sides">
          {(Object.keys(SIDES) as (keyof typeof SIDES)[]).map((name) => (
            <button key={name} type="button" class="quiet" onClick={() => side(name)} data-test={`side-${name}`}>
              {name}
            </button>
          ))}
        </span>
        <CaseChoice bench={bench} state={state} />
        <CutChoice bench={bench} state={state} />
        <PieceChoice bench={bench} state={state} />
        <button
          type="button"
          class="quiet"
          data-test="picture"
          onClick={() =>
            void bench.attempt(async () => {
              const url = await picture(await stage.current!.picture(), state, paintings[0]?.legend);
              download(url, `${state.project!.tub}-${state.look}.png`);
            })
          }
        >
          save picture
        </button>
      </div>
    </div>
  );
}

function describe(state: BenchState, legend: Legend | undefined): string {
  const mode = state.look === "mode" && state.mode?.document.variant === state.variant ? ` ${named(state.mode.document)}.` : "";
  const what = legend?.kinds?.length
    ? `${legend.title}: ${legend.kinds.map((k) => k.text).join(", ")}`
    : (legend?.title ?? "nothing yet");
  return `${state.project!.tub}, ${state.variant}, coloured by ${what}.${mode} Arrow keys turn it, with Shift they move it, plus and minus bring it nearer and farther, Enter reads the point in the middle, Escape lets go.`;
}

interface CanvasProps {
  label: string;
  children: preact.ComponentChildren;
  onTurn(dx: number, dy: number): void;
  onMove(dx: number, dy: number): void;
  onNear(factor: number): void;
  onPick(x: number, y: number): void;
  onPickMiddle(): void;
  onAway(): void;
}

/** Hand and keys on the tub. */
function Canvas(props: CanvasProps) {
  const grip = useRef<{ x: number; y: number; far: number; pan: boolean }>(undefined);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = box.current!;
    const wheel = (e: WheelEvent) => {
      e.preventDefault();
      props.onNear(Math.exp(-0.0012 * e.deltaY));
    };
    element.addEventListener("wheel", wheel, { passive: false });
    return () => element.removeEventListener("wheel", wheel);
  });
  const keys: Record<string, [number, number]> = {
    ArrowLeft: [-15, 0],
    ArrowRight: [15, 0],
    ArrowUp: [0, -15],
    ArrowDown: [0, 15],
  };
  return (
    <div
      class="canvas"
      ref={box}
      tabIndex={0}
      role="application"
      aria-label={props.label}
      data-test="canvas"
      onContextMenu={(e) => e.preventDefault()}
      onPointerDown={(e) => {
        e.currentTarget.setPointerCapture(e.pointerId);
        grip.current = { x: e.clientX, y: e.clientY, far: 0, pan: e.shiftKey || e.button !== 0 };
      }}
      onPointerMove={(e) => {
        const held = grip.current;
        if (!held) return;
        const [dx, dy] = [e.clientX - held.x, e.clientY - held.y];
        held.far += Math.abs(dx) + Math.abs(dy);
        held.x = e.clientX;
        held.y = e.clientY;
        if (held.far > 4) (held.pan ? props.onMove : props.onTurn)(dx, dy);
      }}
      onPointerUp={(e) => {
        const held = grip.current;
        grip.current = undefined;
        if (held && held.far <= 4) {
          const frame = e.currentTarget.getBoundingClientRect();
          props.onPick(e.clientX - frame.left, e.clientY - frame.top);
        }
      }}
      onKeyDown={(e) => {
        const way = keys[e.key];
        if (way && !e.ctrlKey && !e.metaKey) {
          e.preventDefault();
          (e.shiftKey ? props.onMove : props.onTurn)(way[0], way[1]);
        } else if (e.key === "+" || e.key === "=") props.onNear(1.15);
        else if (e.key === "-") props.onNear(1 / 1.15);
        else if (e.key === "Enter") props.onPickMiddle();
        else if (e.key === "Escape") props.onAway();
      }}
    >
      {props.children}
    </div>
  );
}

function Key({ legend }: { legend: Legend }) {
  if (legend.ticks) {
    const stops = Array.from({ length: 17 }, (_, i) => css((legend.colour ?? ramp)(i / 16)));
    return (
      <div class="key scale" role="img" aria-label={`${legend.title}, from ${legend.ticks[0].text} to ${legend.ticks.at(-1)!.text}`}>
        <span>{legend.title}</span>
        <svg viewBox="0 0 240 30" width="192" height="24" aria-hidden="true">
          {stops.map((c, i) => (
            <rect key={i} x={(i * 240) / 17} y={0} width={240 / 17 + 0.5} height={10} fill={c} />
          ))}
          {legend.ticks.map((t) => (
            <text key={t.at} x={Math.min(238, Math.max(1, 240 * t.at))} y={24} class={t.at === 0 ? "" : t.at === 1 ? "end" : "middle"}>
              {t.text}
            </text>
          ))}
        </svg>
      </div>
    );
  }
  return (
    <div class="key">
      <span>{legend.title}</span>
      <ul>
        {legend.kinds?.map((k) => (
          <li key={k.text}>
            <svg width="11" height="11" aria-hidden="true">
              <rect width="11" height="11" rx="2" fill={k.colour} />
            </svg>{" "}
            {k.text}
          </li>
        ))}
      </ul>
    </div>
  );
}

function CaseChoice({ bench, state }: { bench: Bench; state: BenchState }) {
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

function CutChoice({ bench, state }: { bench: Bench; state: BenchState }) {
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

function PieceChoice({ bench, state }: { bench: Bench; state: BenchState }) {
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
