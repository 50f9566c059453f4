// SPDX-License-Identifier: Apache-2.0
import { css, ramp } from "./colours";
import type { Legend } from "./looks";

/** Colours drawn of a ramp. */
const STOPS = 60;

/** The key to the colours. */
export function Key({ legend }: { legend: Legend }) {
  if (legend.ticks) {
    const stops = Array.from({ length: STOPS }, (_, i) => css((legend.colour ?? ramp)(i / (STOPS - 1))));
    return (
      <div class="key scale" role="img" aria-label={`${legend.title}, from ${legend.ticks[0].text} to ${legend.ticks.at(-1)!.text}`}>
        <span>{legend.title}</span>
        <svg viewBox="0 0 240 30" width="192" height="24" aria-hidden="true">
          {stops.map((c, i) => (
            <rect key={i} x={(i * 240) / STOPS} y={0} width={240 / STOPS + 0.5} height={10} fill={c} />
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
