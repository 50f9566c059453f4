// SPDX-License-Identifier: Apache-2.0
import type { Bench } from "./bench";
import type { BenchState } from "./state";
import { Stack } from "./stack";
import { full, text, unit } from "./units";

/** What lies at the point that was picked. */
export function ReadingAt({ bench, state }: { bench: Bench; state: BenchState }) {
  const { picked, units } = state;
  const tub = picked && state.tubs[picked.variant];
  if (!picked || !tub) return null;
  const region = tub.view.regions[tub.regions[picked.element]];
  const stack = tub.view.stacks[region.stack];
  return (
    <section class="reading card" aria-label="What lies here" aria-live="polite" data-test="reading">
      <h2>{region.zone}</h2>
      <p>
        {region.piece} · {region.wall ? "wall" : `${region.part}, ${region.mirrored ? "left" : "right"} side`}
        {region.patches.length > 0 && ` · under ${region.patches.join(", ")}`}
      </p>
      <p>
        x, y, z: {picked.place.map((v) => text(v, "length", units, 4)).join(", ")} {unit("length", units)}
      </p>
      <p class="code">{stack.code}</p>
      <Stack stack={stack} label={`Stack of ${region.zone}: ${stack.code}`} />
      <p>
        {full(stack.thickness, "length", units, 3)} thick, {full(stack.arealMass, "arealMass", units, 3)}
      </p>
      {picked.value && <p data-test="reading-value">{picked.value}</p>}
      <button
        type="button"
        onClick={() => bench.set({ marked: region.zone, picked: undefined, chapter: "plies" })}
        data-test="open-zone"
      >
        Open its plies
      </button>{" "}
      <button type="button" class="quiet" onClick={() => bench.set({ chapter: "patch" })} data-test="open-patch">
        What if it is hit here
      </button>{" "}
      <button type="button" class="quiet" onClick={() => bench.set({ picked: undefined })}>
        let go
      </button>
    </section>
  );
}
