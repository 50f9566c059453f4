// SPDX-License-Identifier: Apache-2.0

/** How much of a picture is drawn while the tub moves. */
export type Effort =
  /** All of it. */
  | "whole"
  /** A coarser tub, edges with steps. */
  | "light"
  /** The same, on half as many pixels each way. */
  | "least";

/** A picture that takes no longer than this is whole while it moves, ms. */
const WHOLE = 25;
/** A lighter one that takes longer is made lighter still, ms. */
const LONG = 50;
/** Moving pictures whose median counts. */
const SEEN = 5;

/** Finds out by the clock how much of a picture this machine can draw while the tub moves. */
export class Pace {
  effort: Effort = "whole";
  private readonly times: number[] = [];

  /**
   * A whole picture took so long.
   *
   * @param alone nothing had to be made ready for it, so that the next will take as long
   */
  still(ms: number, alone: boolean): void {
    if (ms <= WHOLE) this.choose("whole");
    else if (this.effort === "whole" && (alone || ms > 3 * WHOLE)) this.choose("light");
  }

  /** A picture drawn while the tub moves took so long. */
  moving(ms: number): void {
    this.times.push(ms);
    if (this.times.length < SEEN) return;
    const median = [...this.times].sort((a, b) => a - b)[SEEN >> 1];
    this.times.length = 0;
    if (this.effort === "whole" && median > WHOLE) this.choose("light");
    else if (this.effort === "light" && median > LONG) this.choose("least");
    else if (this.effort === "least" && median < LONG / 5) this.choose("light");
  }

  private choose(effort: Effort): void {
    if (effort === this.effort) return;
    this.effort = effort;
    this.times.length = 0;
  }
}
