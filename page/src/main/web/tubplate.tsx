// SPDX-License-Identifier: Apache-2.0
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { Bench } from "./bench";
import { answerOf, fieldKey, isStored, type BenchState } from "./state";
import { Canvas } from "./canvas";
import type { Rgb } from "./colours";
import { CaseChoice, CutChoice, PieceChoice } from "./handles";
import { Key } from "./legend";
import { LOOKS, paint, scaleOf, type Legend, type Painting } from "./looks";
import type { Scene, Tone } from "./half";
import { Stage } from "./stage";
import { mostAt, named } from "./modes";
import { picture } from "./picture";
import { download } from "./title";
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
  const [able, setAble] = useState(true);
  const shownVariants = [state.variant, ...(state.beside ? [state.beside] : [])].filter((v) => state.tubs[v]);
  const first = state.tubs[state.variant];

  useEffect(() => {
    const place = box.current!;
    const made = new Stage(place);
    stage.current = made;
    setAble(made.able);
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
  const plyOf = (v: string) => {
    const { laying, ply } = state;
    const known = laying.variant === v && laying.revision === state.tubs[v].view.revision;
    return state.look === "laid" && known ? ply : undefined;
  };
  const tried = state.look === "tried" ? state.draft : undefined;
  const scale = scaleOf(
    shownVariants.map((v) => state.tubs[v]),
    shownVariants.map((v) => state.fields[fieldKey(v, state.loading)]),
  );
  const paintings: Painting[] = useMemo(
    () =>
      shownVariants.map((v) => {
        const known = {
          fields: state.fields[fieldKey(v, state.loading)],
          answer: answerOf(state, v),
          draft: v === state.draft?.variant ? state.draft : undefined,
          ledger: v === state.ledger?.variant ? state.ledger : undefined,
          mode: modeOf(v),
          ply: plyOf(v),
        };
        return paint(state.tubs[v], state.look, state.units, BLANK[state.dark ? "dark" : "light"], known, scale);
      }),
    [state.tubs, state.look, state.units, state.dark, state.fields, state.loading, state.answers, state.stored, tried, state.mode, state.ply, state.laying, shownVariants.join("\n")],
  );
  const fieldsOf = (v: string) => (state.look === "mode" ? undefined : state.fields[fieldKey(v, state.loading)]);
  // What stands side by side is drawn the same number of times out of shape.
  const scales = shownVariants.map((v) => {
    const drawn = first ? state.magnify * REACH * (first.high[0] - first.low[0]) : 0;
    const largest = modeOf(v) ? 1 : fieldsOf(v) && scale.movement;
    return largest === undefined ? 0 : drawn / Math.max(1e-12, largest);
  });
  const scenes: Scene[] = useMemo(
    () =>
      shownVariants.map((v, i) => {
        const moved = modeOf(v) ?? fieldsOf(v);
        const ply = plyOf(v);
        return {
          // The strokes of a ply run along its warp, and only where it lies.
          tub: ply ? { ...state.tubs[v], directions: ply.floats("warp").map((d) => (Number.isNaN(d) ? 0 : d)) } : state.tubs[v],
          colour: paintings[i].of,
          hidden: state.hidden,
          shape: moved && state.magnify > 0 ? { u: moved.floats("displacements"), scale: scales[i] } : undefined,
          strokes: state.look === "directions" || ply !== undefined,
          marked: state.marked,
        };
      }),
    [paintings, state.hidden, state.marked, scales.join()],
  );
  useEffect(() => {
    if (scenes.length > 0 && size.width > 0) stage.current!.show(scenes, tone, state.cut);
  }, [scenes, tone, state.cut, size]);
  const byHand = useRef(false);
  useEffect(() => {
    if (state.view) stage.current!.look(state.view, byHand.current);
    byHand.current = false;
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
  const see = (view: View | undefined) => {
    if (!view) return;
    byHand.current = true;
    bench.set({ view });
  };
  const side = (name: keyof typeof SIDES) =>
    first && bench.set({ view: fitted(SIDES[name], first.low, first.high, size.width, size.height / halves) });

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
        {!first && <p class="wait" role="status">The tub is being meshed …</p>}
        {!able && (
          <p class="wait" role="alert">
            This browser draws nothing in three dimensions (it has no WebGL 2), so the tub itself is not shown. Everything
            beside and below it works. Switching on graphics acceleration in the browser's settings usually helps.
          </p>
        )}
        {shownVariants.length > 1 && shownVariants.map((v, i) => (
          <p key={v} class={`tag half${i}`}>
            {v}
            {waits(state, v) && <span class="small" role="status"> {waits(state, v)}</span>}
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
              const url = await picture(stage.current!.picture(), state, paintings[0]?.legend);
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

/** Why a tub has no colours yet, in the looks that want its fields. */
function waits(state: BenchState, name: string): string | undefined {
  if (state.look !== "energy" && state.look !== "movement") return undefined;
  if (state.fields[fieldKey(name, state.loading)]) return undefined;
  const answer = answerOf(state, name);
  if (answer && !answer.cases.some((c) => c.name === state.loading)) return `has no case “${state.loading}”`;
  return isStored(state, name) ? "its fields are being solved from the design of that day …" : "is being solved …";
}

function describe(state: BenchState, legend: Legend | undefined): string {
  const mode = state.look === "mode" && state.mode?.document.variant === state.variant ? ` ${named(state.mode.document)}.` : "";
  const what = legend?.kinds?.length
    ? `${legend.title}: ${legend.kinds.map((k) => k.text).join(", ")}`
    : (legend?.title ?? "nothing yet");
  return `${state.project!.tub}, ${state.variant}, coloured by ${what}.${mode} Arrow keys turn it, with Shift they move it, plus and minus bring it nearer and farther, Enter reads the point in the middle, Escape lets go.`;
}
