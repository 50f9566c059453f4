// SPDX-License-Identifier: Apache-2.0
import type { Bench } from "./bench";

/** Plies laid in their moulds, and the one that is shown. */
export class LayErrand {
  constructor(private readonly bench: Bench) {
    bench.follow("LAYING", async () => {
      const [laying, layingWork] = await Promise.all([bench.ask.laying(), bench.ask.layingWork()]);
      bench.set({ laying, layingWork });
    });
  }

  start(): Promise<void> {
    const { variant } = this.bench.state;
    return this.bench.attempt(async () => {
      this.bench.set({ layingWork: await this.bench.ask.startLaying(variant), ply: undefined });
    });
  }

  stop(): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ layingWork: await this.bench.ask.stopLaying() }));
  }

  /** Shows a ply on the tub, with its pattern. */
  show(number: number): Promise<void> {
    return this.bench.attempt(async () => {
      const ply = await this.bench.ask.ply(this.bench.state.laying.variant, number);
      this.bench.set({ ply, look: "laid", marked: undefined });
    });
  }
}
