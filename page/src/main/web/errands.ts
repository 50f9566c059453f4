// SPDX-License-Identifier: Apache-2.0
import type { ExchangeRequest, ExplainRequest } from "./ask";
import type { Bench } from "./bench";

/** The whole run: begun, followed, stopped. */
export class RunErrand {
  constructor(private readonly bench: Bench) {
    bench.follow("RUN", async () => bench.set({ run: await bench.ask.run() }));
  }

  start(): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ run: await this.bench.ask.startRun() }));
  }

  stop(): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ run: await this.bench.ask.stopRun() }));
  }
}

/** The curve of mass against stiffness. */
export class ExchangeErrand {
  constructor(private readonly bench: Bench) {
    bench.follow("EXCHANGE", async () => {
      const [exchange, exchangeWork] = await Promise.all([bench.ask.exchange(), bench.ask.exchangeWork()]);
      bench.set({ exchange, exchangeWork });
    });
  }

  start(asked: ExchangeRequest): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ exchangeWork: await this.bench.ask.startExchange(asked) }));
  }

  stop(): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ exchangeWork: await this.bench.ask.stopExchange() }));
  }
}

/** Buckling and vibration. */
export class ModesErrand {
  constructor(private readonly bench: Bench) {
    bench.follow("MODES", async () => {
      const [modes, modesWork] = await Promise.all([bench.ask.modes(), bench.ask.modesWork()]);
      bench.set({ modes, modesWork });
    });
  }

  start(): Promise<void> {
    const { variant } = this.bench.state;
    return this.bench.attempt(async () => this.bench.set({ modesWork: await this.bench.ask.startModes(variant) }));
  }

  stop(): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ modesWork: await this.bench.ask.stopModes() }));
  }

  /** Shows a shape on the tub, moving unless the reader asked their machine for stillness. */
  show(number: number): Promise<void> {
    return this.bench.attempt(async () => {
      const { modes, magnify, swinging } = this.bench.state;
      const mode = await this.bench.ask.shape(modes.variant, number);
      const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
      this.bench.set({ mode, look: "mode", marked: undefined, magnify: magnify || 1, swinging: swinging || !still });
    });
  }
}

/** Torsion tests and what explains them. */
export class TestErrand {
  constructor(private readonly bench: Bench) {
    bench.follow("TEST", async () => {
      const [explained, testWork] = await Promise.all([bench.ask.explained(), bench.ask.testWork()]);
      bench.set({ explained, testWork });
    });
  }

  /** Looks which files of the project may hold readings. */
  find(): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ readings: await this.bench.ask.readings() }));
  }

  /** Opens a test, or puts it away. */
  open(file: string, dropped: boolean): Promise<void> {
    return this.bench.attempt(async () =>
      this.bench.set({ test: file === "" ? undefined : await this.bench.ask.test(file, dropped) }),
    );
  }

  explain(asked: ExplainRequest): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ testWork: await this.bench.ask.startTest(asked) }));
  }

  stop(): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ testWork: await this.bench.ask.stopTest() }));
  }

  keep(): Promise<void> {
    return this.bench.attempt(async () => this.bench.set({ explained: await this.bench.ask.keepTest() }));
  }
}
