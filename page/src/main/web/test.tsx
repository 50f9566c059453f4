// SPDX-License-Identifier: Apache-2.0
import { useEffect, useState } from "preact/hooks";
import type { ExplainedView, TestView } from "./ask";
import type { Bench } from "./bench";
import type { BenchState } from "./state";
import { ticks } from "./scale";
import { figure, full, shown, text, unit, type Units } from "./units";
import { Work } from "./work";

const WIDTH = 358;
const DEGREE = Math.PI / 180;

/** A torsion test: its loops, what it measured, and what explains it. The twist line is drawn with the others, below the tub. */
export function TorsionTest({ bench, state }: { bench: Bench; state: BenchState }) {
  const { readings, test, explained, units } = state;
  const [dropped, setDropped] = useState(false);
  useEffect(() => void bench.tests.find(), [state.project!.revision]);
  const told = explained.file !== "" && explained.file === test?.file ? explained : undefined;
  return (
    <>
      <section class="card test" aria-label="Torsion test">
        <h2>Torsion test</h2>
        {readings.length === 0 ? (
          <p class="wait">
            No table of readings lies in the project's folder or in its folder <code>rig</code>. <code>tubwright rig plan</code>{" "}
            writes a form to fill in; put the filled table there as CSV.
          </p>
        ) : (
          <p class="bar asks">
            <label>
              readings{" "}
              <select
                value={test?.file ?? ""}
                onChange={(e) => void bench.tests.open(e.currentTarget.value, dropped)}
                data-test="readings"
              >
                <option value="">none</option>
                {readings.map((r) => (
                  <option key={r.file}>{r.file}</option>
                ))}
              </select>
            </label>
            <label title="The first cycle often still takes up play">
              <input
                type="checkbox"
                checked={dropped}
                onChange={(e) => {
                  setDropped(e.currentTarget.checked);
                  if (test) void bench.tests.open(test.file, e.currentTarget.checked);
                }}
              />{" "}
              without the first cycle
            </label>
          </p>
        )}
        {readings.length > 0 && !test && (
          <p class="small">Take a table: its stiffness with what makes up the ±, its loops, and its twist line beside the model's.</p>
        )}
        {test && <Measured test={test} units={units} />}
      </section>
      {test && !test.hubToHub && (
        <section class="card test" aria-label="What explains the test">
          <h2>What explains it</h2>
          <Work work={state.testWork} name="test" what="the explanation" onStop={() => void bench.tests.stop()}>
            <button
              type="button"
              onClick={() => void bench.tests.explain({ file: test.file, withoutBedIn: test.withoutBedIn, variant: state.variant })}
              data-test="test-start"
            >
              {told ? "Explain again" : `Explain by the model of “${state.variant}”`}
            </button>
          </Work>
          {!told && <p class="small">Which stiffness of the model, changed by how much, reads as the gauges did.</p>}
          {told && <Explained bench={bench} state={state} told={told} />}
        </section>
      )}
    </>
  );
}

function Measured({ test, units }: { test: TestView; units: Units }) {
  const [best, ...others] = test.estimates;
  return (
    <>
      <p data-test="test-stiffness">
        <b class="lead">{text(best.stiffness, "twist", units)}</b> ± {figure(shown(best.expanded, "twist", units), 2)}{" "}
        {unit("twist", units)} <span class="small">95 %, {best.name}; {test.test}, {test.span}</span>
      </p>
      {others.length > 0 && (
        <p class="small">
          {others.map((e) => `${e.name} ${text(e.stiffness, "twist", units)} ± ${figure(shown(e.expanded, "twist", units), 2)}`).join("; ")}
        </p>
      )}
      <Loops test={test} units={units} />
      <ul class="words plain">
        {test.loops.map((l) => (
          <li key={l.cycle}>
            cycle {l.cycle}: loop {figure(l.width / DEGREE, 2)}° wide, {figure(100 * l.share, 2)} % of the angle, {full(l.area, "work", units, 2)}{" "}
            lost{l.residual !== undefined && `, ${figure(l.residual / DEGREE, 2)}° left without load`}
          </li>
        ))}
        {test.slop !== undefined && <li>slop: {figure(test.slop / DEGREE, 2)}° are taken up before the structure stiffens</li>}
        {test.curvature !== undefined && (
          <li>
            {test.curvature > 0 ? "softens" : "stiffens"} with load: {figure(100 * Math.abs(test.curvature), 2)} % off the chord
          </li>
        )}
      </ul>
      {test.findings.map((f) => (
        <p key={f} class="remark">
          {f}
        </p>
      ))}
      <table data-test="test-twist">
        <caption class="small">Twist against the held end, degrees for {full(1000, "torque", units, 3)}; also in the chart below the tub</caption>
        <thead>
          <tr>
            <th class="n">station, {unit("length", units)}</th>
            <th class="n">twist, ± 95 %</th>
            <th>gauges</th>
          </tr>
        </thead>
        <tbody>
          {test.twist.map((t) => (
            <tr key={t.station}>
              <td class="n">{text(t.station, "length", units)}</td>
              <td class="n">
                {figure((1000 * t.perTorque) / DEGREE, 3)} ± {figure((1000 * t.expanded) / DEGREE, 2)}
              </td>
              <td>{t.gauges.join(", ")}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** Torque against angle, loading and unloading apart. */
function Loops({ test, units }: { test: TestView; units: Units }) {
  const HEIGHT = 190;
  const [left, right, top, foot] = [48, 8, 20, 34];
  const read = test.steps.filter((s) => s.angle !== undefined);
  const xs = read.map((s) => s.angle! / DEGREE);
  const ys = read.map((s) => shown(s.torque, "torque", units));
  const ends = (v: number[]): [number, number] => [Math.min(0, ...v), Math.max(1e-9, ...v)];
  const [[x0, x1], [y0, y1]] = [ends(xs), ends(ys)];
  const px = (x: number) => left + ((x - x0) / (x1 - x0)) * (WIDTH - left - right);
  const py = (y: number) => top + ((y1 - y) / (y1 - y0)) * (HEIGHT - top - foot);
  const cycles = [...new Set(read.map((s) => s.cycle))];
  const label = `Torque against angle, ${cycles.length} cycles, up to ${full(Math.max(...read.map((s) => Math.abs(s.torque))), "torque", units, 3)} and ${figure(Math.max(...xs.map(Math.abs)), 3)}°`;
  return (
    <svg class="curves" width={WIDTH} height={HEIGHT} role="img" aria-label={label} data-test="test-loops">
      {ticks(y0, y1).map((t) => (
        <g key={`y${t}`}>
          <line class={t === 0 ? "zero" : "grid"} x1={left} x2={WIDTH - right} y1={py(t)} y2={py(t)} />
          <text class="axis end" x={left - 5} y={py(t) + 4}>
            {figure(t, 2)}
          </text>
        </g>
      ))}
      {ticks(x0, x1).map((t) => (
        <g key={`x${t}`}>
          <line class={t === 0 ? "zero" : "grid"} x1={px(t)} x2={px(t)} y1={top} y2={HEIGHT - foot} />
          <text class="axis middle" x={px(t)} y={HEIGHT - foot + 14}>
            {t === 0 ? "0" : figure(t, 2)}
          </text>
        </g>
      ))}
      <text class="axis" x={2} y={11}>
        torque, {unit("torque", units)}
      </text>
      <text class="axis end" x={WIDTH - right} y={HEIGHT - 4}>
        angle, degrees
      </text>
      <text class="name s0" x={left + 8} y={top + 12}>
        loading
      </text>
      <text class="name s1" x={left + 70} y={top + 12}>
        unloading
      </text>
      {read.slice(1).map((s, i) => {
        const before = read[i];
        if (before.cycle !== s.cycle) return null;
        return <line key={i} class={s.unloading ? "branch s1" : "branch s0"} x1={px(xs[i])} y1={py(ys[i])} x2={px(xs[i + 1])} y2={py(ys[i + 1])} />;
      })}
      {read.map((s, i) => (
        <circle key={i} class={s.unloading ? "spot s1" : "spot s0"} cx={px(xs[i])} cy={py(ys[i])} r={2.6}>
          <title>{`line ${s.line}: ${full(s.torque, "torque", units)}, ${figure(xs[i], 3)}°`}</title>
        </circle>
      ))}
    </svg>
  );
}

function Explained({ bench, state, told }: { bench: Bench; state: BenchState; told: ExplainedView }) {
  const { units } = state;
  const say = (value: number, error?: number) =>
    `${text(value, "twist", units)}${error === undefined ? "" : ` ± ${figure(shown(error, "twist", units), 2)}`}`;
  const milli = (v: number) => figure((1000 * v) / DEGREE, 3);
  return (
    <>
      {told.revision !== state.project!.revision && <p class="notice">Explained by the model of the file as it was before.</p>}
      <dl class="three">
        <div>
          <dt>as designed</dt>
          <dd>{say(told.predicted)}</dd>
        </div>
        <div>
          <dt>as built, 95 %</dt>
          <dd data-test="as-built">
            <b>{say(told.calibrated, told.calibratedExpanded)}</b>
          </dd>
        </div>
        <div>
          <dt>measured, 95 %</dt>
          <dd>
            {say(told.measured, told.measuredExpanded)} {unit("twist", units)}
          </dd>
        </div>
      </dl>
      <ul class="words plain" data-test="verdict">
        {told.verdict.map((w) => (
          <li key={w}>{w}</li>
        ))}
      </ul>
      <Factors told={told} />
      <table>
        <caption class="small">Twist gained along each stretch, degrees for {full(1000, "torque", units, 3)}</caption>
        <thead>
          <tr>
            <th>stretch, {unit("length", units)}</th>
            <th class="n">measured</th>
            <th class="n">designed</th>
            <th class="n">built</th>
            <th class="n">off by, σ</th>
          </tr>
        </thead>
        <tbody>
          {told.segments.map((s) => (
            <tr key={s.from}>
              <td>
                {text(s.from, "length", units)} to {text(s.to, "length", units)}
                {s.blamed && <div class="small">{s.blamed}</div>}
              </td>
              <td class="n">{milli(s.measured)}</td>
              <td class="n">{milli(s.designed)}</td>
              <td class="n">{milli(s.built)}</td>
              <td class="n">{figure(s.significance, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {told.keptAt === undefined ? (
        <p class="bar">
          <button type="button" onClick={() => void bench.tests.keep()} data-test="test-keep">
            Keep as calibration
          </button>
          <span class="small">for “rig predict” and “run --calibrated”</span>
        </p>
      ) : (
        <p class="small" role="status" data-test="test-kept">
          Kept in rig/calibration.json.
        </p>
      )}
    </>
  );
}

/** Each stiffness in question: what was known of its factor before the test, and what is known now. */
function Factors({ told }: { told: ExplainedView }) {
  const shownFactors = told.factors.filter((f) => f.beforeHigh > 0);
  const most = Math.max(...shownFactors.flatMap((f) => [f.beforeHigh, f.afterHigh, 1 / f.beforeLow, 1 / f.afterLow]));
  const span = Math.log(Math.max(1.6, most));
  const x = (factor: number) => 150 + (Math.log(factor) / span) * 142;
  return (
    <table class="factors" data-test="factors">
      <caption class="small">
        Factor on each stiffness: pale what was known before the test, dark what is known now (95 %); the line is ×1, the ends
        ×{figure(Math.exp(-span), 2)} and ×{figure(Math.exp(span), 2)}
      </caption>
      <tbody>
        {told.factors.map((f) => (
          <tr key={f.name}>
            <th scope="row">
              {f.name}
              <div class="small">
                {f.words}; {f.learnt}
              </div>
              {f.beforeHigh > 0 && (
                <svg width="300" height="15" aria-hidden="true">
                  <line class="zero" x1={x(1)} x2={x(1)} y1={0} y2={15} />
                  <rect class="before" x={x(f.beforeLow)} width={x(f.beforeHigh) - x(f.beforeLow)} y={1} height={5} />
                  <rect class="after" x={x(f.afterLow)} width={Math.max(2, x(f.afterHigh) - x(f.afterLow))} y={8} height={6} />
                </svg>
              )}
            </th>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
