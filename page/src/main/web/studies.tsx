// SPDX-License-Identifier: Apache-2.0
import { useEffect, useState } from "preact/hooks";
import { Refused, type StudyView } from "./ask";
import type { Bench } from "./bench";
import { designs, heading, passes, sifted, walk, type Design, type Sieve } from "./sieve";
import type { BenchState } from "./state";
import { Scatter, Uprights, Walk } from "./studyplots";
import { figure } from "./units";

/** More rows than these help nobody. */
const ROWS = 40;

/** The studies of the design: looked through, sieved, a design taken out as a variant. */
export function Studies({ bench, state }: { bench: Bench; state: BenchState }) {
  const [studies, setStudies] = useState<StudyView[] | undefined>();
  const [name, setName] = useState("");
  const [trouble, setTrouble] = useState("");
  const revision = state.project?.revision;
  const look = () =>
    bench.ask.studies().then(
      (found) => {
        setStudies(found);
        setTrouble("");
      },
      (e: unknown) => setTrouble(e instanceof Refused ? e.message : "The program does not answer."),
    );
  useEffect(() => void look(), [revision]);
  const study = studies?.find((s) => s.name === name) ?? studies?.[0];
  return (
    <>
      <section class="card studies" aria-label="Studies">
        <h2>Studies</h2>
        {trouble && <p class="failed" role="alert">{trouble}</p>}
        {studies?.length === 0 && (
          <p class="small">
            No study has been run yet. <code>tubwright study DIR</code> names those there are, <code>tubwright study DIR NAME</code> runs
            one.
          </p>
        )}
        <p class="bar asks">
          {study && (
            <label>
              Study{" "}
              <select value={study.name} onChange={(e) => setName(e.currentTarget.value)} data-test="study-name">
                {studies!.map((s) => (
                  <option key={s.name}>{s.name}</option>
                ))}
              </select>
            </label>
          )}
          <button type="button" class="quiet" onClick={() => void look()} data-test="study-look">
            look again
          </button>
        </p>
        {study?.about && <p class="small">{study.about}</p>}
        {study && !study.current && <p class="notice">Design or study have changed since it was run; run it again to take designs from it.</p>}
        {study && !study.complete && <p class="notice">It was stopped before all its designs were there.</p>}
      </section>
      {study && <One key={`${study.name} ${study.axes.length}`} bench={bench} state={state} study={study} />}
    </>
  );
}

function One({ bench, state, study }: { bench: Bench; state: BenchState; study: StudyView }) {
  const all = designs(study);
  const along = walk(study);
  const firstRead = study.axes.findIndex((a) => !a.varied);
  const secondRead = study.axes.findIndex((a, i) => !a.varied && i > firstRead);
  const [x, setX] = useState(along ?? (secondRead < 0 ? 0 : secondRead));
  const [y, setY] = useState(Math.max(firstRead, 0));
  const [sieve, setSieve] = useState<Sieve>(new Map());
  const [chosen, setChosen] = useState<Design | undefined>();
  const failed = study.variants.flatMap((v) => v.points).length - all.length;
  const kept = all.filter((d) => passes(d, sieve));
  if (all.length === 0 || firstRead < 0) {
    return (
      <section class="card">
        <p class="small">It has no designs to draw; its own page has what else it says.</p>
      </section>
    );
  }
  const plot = {
    study,
    all,
    sieve,
    chosen,
    onChoose: setChosen,
    onSift: (ranges: readonly (readonly [number, readonly [number, number] | undefined])[]) =>
      setSieve(ranges.reduce<Sieve>((s, [axis, range]) => sifted(s, axis, range), sieve)),
  };
  return (
    <>
      <section class="card studies" aria-label="Its designs">
        {study.variants.length > 1 && (
          <p class="small">
            {study.variants.map((v, i) => (
              <span key={v.variant} class={`who s${i % 4}`}>{v.variant}</span>
            ))}
          </p>
        )}
        {along !== undefined && <Walk {...plot} along={along} />}
        <p class="bar asks">
          <AxisChoice study={study} name="up" value={y} onChoose={setY} />
          <AxisChoice study={study} name="across" value={x} onChoose={setX} />
        </p>
        <Scatter {...plot} x={x} y={y} />
        <Uprights {...plot} />
        <p class="small">Draw over a picture to keep what lies there, touch it to let all of that axis through again.</p>
        <SieveForm study={study} sieve={sieve} onSift={plot.onSift} />
        <p class="bar" data-test="study-kept">
          {kept.length} of {all.length} designs{failed > 0 && `, ${failed} more are no tub`}
          {sieve.size > 0 && (
            <button type="button" class="quiet" onClick={() => setSieve(new Map())}>
              all again
            </button>
          )}
        </p>
      </section>
      {chosen && <Chosen key={`${chosen.variant} ${chosen.point}`} bench={bench} state={state} study={study} design={chosen} />}
      <section class="card" aria-label="The designs that are kept">
        <Rows study={study} kept={kept} x={x} y={y} onChoose={setChosen} />
      </section>
    </>
  );
}

function AxisChoice({ study, name, value, onChoose }: { study: StudyView; name: string; value: number; onChoose: (axis: number) => void }) {
  return (
    <label>
      {name}{" "}
      <select value={value} onChange={(e) => onChoose(Number(e.currentTarget.value))} data-test={`study-${name}`}>
        {study.axes.map((a, i) => (
          <option key={a.name} value={i}>
            {heading(a)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The same as a stroke over a picture, by numbers. */
function SieveForm({ study, sieve, onSift }: { study: StudyView; sieve: Sieve; onSift: (ranges: readonly [number, readonly [number, number] | undefined][]) => void }) {
  const [axis, setAxis] = useState(0);
  const [low, high] = sieve.get(axis) ?? [];
  const range = (from: string, to: string) =>
    onSift([[axis, from === "" && to === "" ? undefined : [from === "" ? -1e300 : Number(from), to === "" ? 1e300 : Number(to)]]]);
  const said = (v: number | undefined) => (v === undefined || Math.abs(v) >= 1e300 ? "" : String(Number(v.toPrecision(5))));
  return (
    <p class="bar asks">
      <AxisChoice study={study} name="keep" value={axis} onChoose={setAxis} />
      <label>
        from{" "}
        <input type="number" step="any" value={said(low)} onChange={(e) => range(e.currentTarget.value, said(high))} data-test="study-from" />
      </label>
      <label>
        to{" "}
        <input type="number" step="any" value={said(high)} onChange={(e) => range(said(low), e.currentTarget.value)} data-test="study-to" />
      </label>
    </p>
  );
}

const shownAt = (study: StudyView, axis: number, value: number | undefined) =>
  value === undefined ? "–" : (study.axes[axis].words[value] ?? figure(value, 4));

/** A design by itself, to be put into the file. */
function Chosen({ bench, state, study, design }: { bench: Bench; state: BenchState; study: StudyView; design: Design }) {
  const of = study.variants[design.variant].variant;
  const [name, setName] = useState(`${study.name} ${design.point + 1}${design.variant ? ` ${of}` : ""}`);
  const [waiting, setWaiting] = useState(false);
  const there = state.project!.variants.some((v) => v.name === name);
  const open = async () => {
    setWaiting(true);
    await bench.attempt(async () => {
      await bench.ask.openPoint({ study: study.name, variant: of, point: design.point, name });
    });
    setWaiting(false);
  };
  return (
    <section class="card" aria-label="The design chosen" data-test="study-chosen">
      <h2>
        Design {design.point + 1} of {of}
      </h2>
      <dl class="numbers">
        {study.axes.map((a, i) => (
          <div key={a.name}>
            <dt>{heading(a)}</dt>
            <dd>{shownAt(study, i, design.numbers[i])}</dd>
          </div>
        ))}
      </dl>
      <form
        class="bar asks"
        onSubmit={(e) => {
          e.preventDefault();
          void open();
        }}
      >
        <label>
          as variant <input value={name} onInput={(e) => setName(e.currentTarget.value)} data-test="study-variant-name" />
        </label>
        {there ? (
          <button type="button" onClick={() => void bench.show(name)} data-test="study-show">
            show it
          </button>
        ) : (
          <button type="submit" disabled={waiting || !study.current || !name.trim()} data-test="study-open">
            put into the file
          </button>
        )}
      </form>
    </section>
  );
}

function Rows({ study, kept, x, y, onChoose }: { study: StudyView; kept: readonly Design[]; x: number; y: number; onChoose: (d: Design) => void }) {
  const axes = [...new Set([...study.axes.flatMap((a, i) => (a.varied && i !== x ? [i] : [])).slice(0, 2), x, y])];
  const rows = [...kept].sort((a, b) => a.numbers[x] - b.numbers[x]).slice(0, ROWS);
  return (
    <>
      <table data-test="study-table">
        <thead>
          <tr>
            <th class="n">design</th>
            {axes.map((a) => (
              <th class="n" key={a}>
                {heading(study.axes[a])}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((d) => (
            <tr key={`${d.variant} ${d.point}`}>
              <td class="n">
                <button type="button" class="link" onClick={() => onChoose(d)} aria-label={`choose design ${d.point + 1} of ${study.variants[d.variant].variant}`} data-test={`study-choose-${d.variant}-${d.point}`}>
                  {d.point + 1}
                  {study.variants.length > 1 && <span class={`who s${d.variant % 4}`}> {study.variants[d.variant].variant}</span>}
                </button>
              </td>
              {axes.map((a) => (
                <td class="n" key={a}>
                  {shownAt(study, a, d.numbers[a])}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {kept.length > ROWS && <p class="small">and {kept.length - ROWS} more: keep fewer to see them</p>}
    </>
  );
}
