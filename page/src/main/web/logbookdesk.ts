// SPDX-License-Identifier: Apache-2.0
import type { Bench } from "./bench";

/** The logbook's lines and the runs it remembers. */
export class LogbookDesk {
  constructor(private readonly bench: Bench) {
    bench.follow("LOGBOOK", async () => {
      const [log, runs] = await Promise.all([bench.ask.log(), bench.ask.runs()]);
      bench.set({ log, runs });
    });
  }

  /** Fetches what a stored run answered, unless it is here or the name is no run's. */
  async recall(name: string): Promise<void> {
    const { runs, stored } = this.bench.state;
    const run = runs.find((r) => r.names.includes(name));
    if (!run || stored[name]) return;
    const answers = await this.bench.ask.runAnswers(run.id);
    this.bench.set({ stored: { ...this.bench.state.stored, ...Object.fromEntries(answers.map((a) => [a.variant, a])) } });
  }

  /** Draws the twist line of a stored run's tub beside the others, or no longer. */
  overlay(name: string, on: boolean): Promise<void> {
    const without = this.bench.state.overlaid.filter((n) => n !== name);
    this.bench.set({ overlaid: on ? [...without, name] : without });
    return this.bench.attempt(() => this.recall(name));
  }

  /** Writes a line. */
  note(words: string): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ log: await this.bench.ask.note(words) }));
  }
}
