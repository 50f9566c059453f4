// SPDX-License-Identifier: Apache-2.0

/** A place where two texts differ: the lines of each, and where they begin, counted from 1. */
export interface Change {
  at: { theirs: number; ours: number };
  theirs: string[];
  ours: string[];
}

/** Where two texts differ, line by line, with as many lines the same as can be (longest common subsequence). */
export function changes(theirs: string, ours: string): Change[] {
  const a = theirs.split("\n");
  const b = ours.split("\n");
  let head = 0;
  while (head < Math.min(a.length, b.length) && a[head] === b[head]) head++;
  let tail = 0;
  while (tail < Math.min(a.length, b.length) - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail++;
  const p = a.slice(head, a.length - tail);
  const q = b.slice(head, b.length - tail);
  // common[i][j]: lines that p from i on and q from j on have in common.
  const common = Array.from({ length: p.length + 1 }, () => new Uint32Array(q.length + 1));
  for (let i = p.length - 1; i >= 0; i--) {
    for (let j = q.length - 1; j >= 0; j--) {
      common[i][j] = p[i] === q[j] ? common[i + 1][j + 1] + 1 : Math.max(common[i + 1][j], common[i][j + 1]);
    }
  }
  const result: Change[] = [];
  let open: Change | undefined;
  let i = 0;
  let j = 0;
  while (i < p.length || j < q.length) {
    if (i < p.length && j < q.length && p[i] === q[j]) {
      open = undefined;
      i++;
      j++;
      continue;
    }
    if (!open) {
      open = { at: { theirs: head + i + 1, ours: head + j + 1 }, theirs: [], ours: [] };
      result.push(open);
    }
    if (i < p.length && (j === q.length || common[i + 1][j] >= common[i][j + 1])) open.theirs.push(p[i++]);
    else open.ours.push(q[j++]);
  }
  return result;
}
