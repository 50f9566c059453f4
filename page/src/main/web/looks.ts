// SPDX-License-Identifier: Apache-2.0
import type { AnswerView, DraftView, FieldsView, LedgerView, PlyView, ShapeView } from "./ask";
import type { Parcel } from "./binary";
import { balance, css, kindColour, ramp, type Rgb } from "./colours";
import type { Tub } from "./geometry";
import { full, figure, shown, unit, type Units } from "./units";

/** What the tub is coloured by. */
export type Look = "zones" | "pieces" | "thickness" | "directions" | "energy" | "movement" | "reserve" | "tried" | "mode" | "laid";

export const LOOKS: readonly { look: Look; name: string; tells: string }[] = [
  { look: "zones", name: "zones", tells: "one colour for each zone" },
  { look: "pieces", name: "pieces", tells: "one colour for each piece" },
  { look: "thickness", name: "thickness", tells: "of the laminate, patches included" },
  { look: "directions", name: "directions", tells: "strokes along the 0° direction" },
  { look: "energy", name: "energy", tells: "where it gives: strain energy for each area" },
  { look: "movement", name: "movement", tells: "how far each point moves" },
  { look: "reserve", name: "reserve", tells: "lowest reserve factor of each zone in the load cases" },
  { look: "tried", name: "tried", tells: "where the layup being tried is lighter or heavier than designed" },
  { look: "mode", name: "mode", tells: "how it buckles or vibrates; choose which in the margin" },
  { look: "laid", name: "laid", tells: "a ply as it lies: its shear, and strokes along warp or fibres; choose it in the margin, under Laying" },
];

/** A key to the colours. */
export interface Legend {
  title: string;
  /** For a ramp: what stands at its ends and between, 0 to 1. */
  ticks?: { at: number; text: string }[];
  /** The ramp, where it is not the usual one. */
  colour?: (at: number) => Rgb;
  /** For kinds. */
  kinds?: { colour: string; text: string }[];
}

/** Colours and their key. */
export interface Painting {
  of(element: number): Rgb;
  legend: Legend;
  /** The value at an element, for a reader. */
  says(element: number): string | undefined;
}

/** What a tub may be painted by, as far as it is there. */
export interface Known {
  fields?: Parcel<FieldsView> | undefined;
  answer?: AnswerView | undefined;
  draft?: DraftView | undefined;
  ledger?: LedgerView | undefined;
  mode?: Parcel<ShapeView> | undefined;
  ply?: Parcel<PlyView> | undefined;
}

/** The ends of the ramps, the same for everything that is looked at side by side. */
export interface Scale {
  /** m. */
  thickness: number;
  /** J/m². */
  energyLow: number;
  energyHigh: number;
  /** m. */
  movement: number;
}

/** The scale on which all of these can be laid. */
export function scaleOf(tubs: readonly Tub[], fields: readonly (Parcel<FieldsView> | undefined)[]): Scale {
  const known = fields.flatMap((f) => (f ? [f.document] : []));
  return {
    thickness: Math.max(0, ...tubs.flatMap((t) => t.view.stacks.map((s) => s.thickness))),
    energyLow: Math.min(...known.map((f) => f.energyLow)),
    energyHigh: Math.max(...known.map((f) => f.energyHigh)),
    movement: Math.max(0, ...known.map((f) => f.largest)),
  };
}

/** Paints a tub; what is not known yet is left blank. */
export function paint(tub: Tub, look: Look, units: Units, blank: Rgb, known: Known, scale: Scale): Painting {
  const { fields, answer, draft, ledger, mode, ply } = known;
  const { regions, stacks } = tub.view;
  const region = (e: number) => regions[tub.regions[e]];
  switch (look) {
    case "zones":
    case "pieces": {
      const names = [...new Set(regions.map((r) => (look === "zones" ? r.zone : r.piece)))];
      const colours = regions.map((r) => kindColour(names.indexOf(look === "zones" ? r.zone : r.piece)));
      return {
        of: (e) => colours[tub.regions[e]],
        legend: { title: look, kinds: names.map((text, i) => ({ colour: css(kindColour(i)), text })) },
        says: () => undefined,
      };
    }
    case "thickness": {
      const values = stacks.map((s) => s.thickness);
      const high = scale.thickness;
      return {
        of: (e) => ramp(values[region(e).stack] / high),
        legend: {
          title: `thickness, ${unit("length", units)}`,
          ticks: [0, 0.25, 0.5, 0.75, 1].map((at) => ({ at, text: figure(shown(at * high, "length", units), 2) })),
        },
        says: (e) => `${full(values[region(e).stack], "length", units, 3)} thick`,
      };
    }
    case "directions":
      return {
        of: () => blank,
        legend: { title: "0° direction of the plies", kinds: [] },
        says: () => undefined,
      };
    case "energy": {
      if (!fields) return nothing(blank);
      const energy = fields.floats("energy");
      const { energyLow, energyHigh } = scale;
      const span = Math.log(energyHigh / energyLow);
      return {
        of: (e) => ramp(Math.log(Math.max(energy[e], energyLow) / energyLow) / span),
        legend: {
          title: `strain energy, ${unit("density", units)}`,
          ticks: [0, 0.5, 1].map((at) => ({
            at,
            text: figure(shown(energyLow * Math.exp(at * span), "density", units), 2),
          })),
        },
        says: (e) => `strain energy ${full(energy[e], "density", units, 3)}`,
      };
    }
    case "reserve": {
      if (!answer) return nothing(blank);
      // The list comes lowest first. A factor of 1 is hot, of 5 and more quiet: it is the inverse that tells how used a zone is.
      const lowest = new Map<string, AnswerView["reserves"][number]>();
      for (const r of answer.reserves) if (!lowest.has(r.zone)) lowest.set(r.zone, r);
      if (lowest.size === 0) return { ...nothing(blank), legend: { title: "the design has no load cases to answer", kinds: [] } };
      return {
        of: (e) => {
          const found = lowest.get(region(e).zone);
          return found ? ramp(1 / Math.max(1, found.value)) : blank;
        },
        legend: {
          title: "lowest reserve factor of the zone",
          ticks: [10, 4, 2, 1].map((v) => ({ at: 1 / v, text: String(v) })),
        },
        says: (e) => {
          const found = lowest.get(region(e).zone);
          return found && `lowest reserve factor ${figure(found.value, 3)}${found.local ? " (depends on the mesh)" : ""}: ${found.check}${found.ply ? `, ${found.ply}` : ""}, case ${found.load}`;
        },
      };
    }
    case "tried": {
      if (!draft || !ledger || draft.edited.length === 0) {
        return { ...nothing(blank), legend: { title: "no other layup is being tried", kinds: [] } };
      }
      const laid = (name: string, patch: string) => patch === name || patch.startsWith(`${name}: `);
      const change = regions.map((r) =>
        draft.edited.reduce((sum, e) => {
          const owner = ledger.owners.find((o) => o.name === e.owner);
          const here = owner && (owner.patch ? r.patches.some((p) => laid(e.owner, p)) : r.zone === e.owner);
          return here ? sum + e.stack.arealMass - owner.stack.arealMass : sum;
        }, 0),
      );
      const most = Math.max(1e-9, ...change.map(Math.abs));
      return {
        of: (e) => balance(change[tub.regions[e]] / most),
        legend: {
          title: `lighter −, heavier +, ${unit("arealMass", units)}`,
          ticks: [0, 0.5, 1].map((at) => ({ at, text: at === 0.5 ? "0" : figure(shown((2 * at - 1) * most, "arealMass", units), 2) })),
          colour: (at) => balance(2 * at - 1),
        },
        says: (e) => {
          const by = change[tub.regions[e]];
          return by === 0 ? "as designed here" : `${full(Math.abs(by), "arealMass", units, 3)} ${by < 0 ? "lighter" : "heavier"} than designed`;
        },
      };
    }
    case "mode": {
      if (!mode) return { ...nothing(blank), legend: { title: "choose a shape beside the tub, under Modes", kinds: [] } };
      const u = mode.floats("displacements");
      return {
        of: (e) => ramp(movement(tub, u, e)),
        legend: {
          title: "movement, of the largest",
          ticks: [0, 0.5, 1].map((at) => ({ at, text: `${100 * at} %` })),
        },
        says: (e) => `moves ${figure(100 * movement(tub, u, e), 2)} % of the largest movement in this shape`,
      };
    }
    case "laid": {
      if (!ply) return { ...nothing(blank), legend: { title: "choose a ply beside the tub, under Laying", kinds: [] } };
      const shear = ply.floats("shear");
      const { cloth, locking, name } = ply.document;
      const high = cloth ? locking : 45;
      return {
        of: (e) => (Number.isNaN(shear[e]) ? blank : ramp(Math.min(1, shear[e] / high))),
        legend: cloth
          ? { title: `shear of ${name}`, ticks: [0, 0.5, 1].map((at) => ({ at, text: `${at === 1 ? "locks at " : ""}${figure(at * high, 2)}°` })) }
          : { title: name, kinds: [{ colour: css(ramp(0)), text: "lies here, does not shear" }] },
        says: (e) => (Number.isNaN(shear[e]) ? "this ply does not lie here" : cloth ? `shear ${figure(shear[e], 3)}°` : "this ply lies here"),
      };
    }
    case "movement": {
      if (!fields) return nothing(blank);
      const u = fields.floats("displacements");
      const largest = scale.movement;
      const at = (e: number) => movement(tub, u, e);
      return {
        of: (e) => ramp(at(e) / largest),
        legend: {
          title: `movement, ${unit("length", units)}`,
          ticks: [0, 0.5, 1].map((t) => ({ at: t, text: figure(shown(t * largest, "length", units), 2) })),
        },
        says: (e) => `moves ${full(at(e), "length", units, 3)}`,
      };
    }
  }
}

/** How far the middle of an element moves. */
function movement(tub: Tub, u: Float32Array, e: number): number {
  let sum = 0;
  let n = 0;
  for (let k = 0; k < 4; k++) {
    const node = tub.corners[4 * e + k];
    if (node < 0) continue;
    n++;
    sum += Math.hypot(u[3 * node], u[3 * node + 1], u[3 * node + 2]);
  }
  return sum / n;
}

function nothing(blank: Rgb): Painting {
  return { of: () => blank, legend: { title: "still being computed", kinds: [] }, says: () => undefined };
}
