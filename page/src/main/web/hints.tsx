// SPDX-License-Identifier: Apache-2.0
import type { Bench } from "./bench";

/** What a newcomer wants to know, until it is put away. */
export function Hints({ bench }: { bench: Bench }) {
  return (
    <section class="card hints" aria-label="First steps">
      <h2>First steps</h2>
      <ol>
        <li>Drag the tub to turn it, or use the arrow keys. Click a point, or press Enter for the one in the middle, to read its zone and stack.</li>
        <li>The line below stands on the same stations as the tub: steep means soft.</li>
        <li>Open a zone here and switch a ply off. Mass and stiffness answer at once, the stiffness between two proved bounds.</li>
        <li>What you try stays off the design file until you keep it. Edit the file in any editor; the page follows.</li>
      </ol>
      <button type="button" onClick={() => bench.set({ hints: false })}>
        Put these away
      </button>
    </section>
  );
}
