// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from "vitest";
import { changes } from "../../main/web/lines";

describe("where two texts differ", () => {
  it("is nowhere in the same text", () => {
    expect(changes("a\nb", "a\nb")).toEqual([]);
  });

  it("names the lines of each and where they stand", () => {
    expect(changes("a\nb\nc\nd", "a\nB\nc\nd\ne")).toEqual([
      { at: { theirs: 2, ours: 2 }, theirs: ["b"], ours: ["B"] },
      { at: { theirs: 5, ours: 5 }, theirs: [], ours: ["e"] },
    ]);
  });

  it("keeps as many lines the same as it can", () => {
    const found = changes("1\n2\n3\n4\n5", "1\n3\n4\nx\n5");
    expect(found).toEqual([
      { at: { theirs: 2, ours: 2 }, theirs: ["2"], ours: [] },
      { at: { theirs: 5, ours: 4 }, theirs: [], ours: ["x"] },
    ]);
  });
});
