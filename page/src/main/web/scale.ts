// SPDX-License-Identifier: Apache-2.0

/** A few round values between two, zero among them where it lies between. */
export function ticks(low: number, high: number, wanted = 4): number[] {
  const rough = (high - low) / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= rough * (1 - 1e-9))!;
  const result: number[] = [];
  for (let t = Math.ceil(low / step) * step; t <= high + 1e-9 * step; t += step) result.push(Math.abs(t) < step / 2 ? 0 : t);
  return result;
}
