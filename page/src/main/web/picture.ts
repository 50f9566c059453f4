// SPDX-License-Identifier: Apache-2.0
import { isCoarse, type BenchState } from "./state";
import { css, ramp } from "./colours";
import type { Legend } from "./looks";
import { named } from "./modes";
import { full } from "./units";

/** A picture to hand to a colleague: the tub as it is seen, what it is, and the key to its colours. An object address. */
export async function picture(source: string, state: BenchState, legend: Legend | undefined): Promise<string> {
  const image = new Image();
  image.src = source;
  await image.decode();
  const foot = 74;
  const canvas = document.createElement("canvas");
  canvas.width = image.width;
  canvas.height = image.height + foot;
  const pen = canvas.getContext("2d")!;
  const style = getComputedStyle(document.documentElement);
  pen.fillStyle = style.getPropertyValue("--plate");
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(image, 0, 0);
  pen.fillStyle = style.getPropertyValue("--ink");
  pen.font = "600 18px system-ui, sans-serif";
  pen.fillText(`${state.project!.tub}: ${[state.variant, state.beside].filter(Boolean).join(", below it ")}`, 16, image.height + 26);
  pen.font = "13px system-ui, sans-serif";
  const answer = state.answers.find((a) => a.variant === state.variant);
  const torsion = answer?.cases.find((c) => c.kind === "TORSION");
  const mesh = isCoarse(state, state.variant) ? "coarse mesh" : undefined;
  const facts = [torsion && full(torsion.stiffness, "twist", state.units), answer && full(answer.mass, "mass", state.units), mesh];
  pen.fillText([...facts.filter(Boolean), `file ${state.project!.revision}`].join(" · "), 16, image.height + 50);
  if (legend?.ticks) {
    const left = canvas.width - 300;
    for (let i = 0; i < 256; i++) {
      pen.fillStyle = css((legend.colour ?? ramp)(i / 255));
      pen.fillRect(left + i, image.height + 26, 2, 12);
    }
    pen.fillStyle = style.getPropertyValue("--ink");
    pen.fillText(legend.title, left, image.height + 18);
    for (const t of legend.ticks) pen.fillText(t.text, left + 250 * t.at - (t.at === 0 ? 0 : 12), image.height + 56);
  }
  if (state.look === "mode" && state.mode) pen.fillText(named(state.mode.document), 16, image.height + 68);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
  return URL.createObjectURL(blob!);
}
