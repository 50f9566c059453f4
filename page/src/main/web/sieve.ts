// SPDX-License-Identifier: Apache-2.0
import type { StudyView } from "./ask";

/** Between which numbers a design has to lie, by the axis' number. */
export type Sieve = ReadonlyMap<number, readonly [number, number]>;

/** A design with where it comes from. */
export interface Design {
  variant: number;
  point: number;
  numbers: readonly number[];
  unbeaten: boolean;
}

/** The designs that could be computed. */
export function designs(study: StudyView): Design[] {
  return study.variants.flatMap((rows, variant) =>
    rows.points.flatMap((p, point) =>
      p.reason === "" ? [{ variant, point, numbers: p.numbers, unbeaten: p.unbeaten }] : [],
    ),
  );
}

/** Whether a design lies between all of them. */
export function passes(design: Design, sieve: Sieve): boolean {
  for (const [axis, [low, high]] of sieve) {
    const value = design.numbers[axis];
    if (value === undefined || value < low || value > high) return false;
  }
  return true;
}

/** The sieve with one axis more, another range for it, or, where that is next to nothing, none. */
export function sifted(sieve: Sieve, axis: number, range: readonly [number, number] | undefined): Sieve {
  const next = new Map(sieve);
  next.delete(axis);
  if (range) next.set(axis, range[0] <= range[1] ? range : [range[1], range[0]]);
  return next;
}

/** From the least to the greatest of an axis, with some air where all are the same. */
export function span(all: readonly Design[], axis: number): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const design of all) {
    const value = design.numbers[axis];
    if (value === undefined) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (low > high) return [0, 1];
  const air = low === high ? Math.abs(low) * 0.05 || 1 : 0;
  return [low - air, high + air];
}

/** The only axis that is varied, if it is the only one and has numbers. */
export function walk(study: StudyView): number | undefined {
  const varied = study.axes.filter((a) => a.varied);
  return varied.length === 1 && varied[0].words.length === 0 ? study.axes.indexOf(varied[0]) : undefined;
}

/** Name with unit. */
export function heading(axis: StudyView["axes"][number]): string {
  return axis.unit ? `${axis.name}, ${axis.unit}` : axis.name;
}
