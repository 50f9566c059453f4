// SPDX-License-Identifier: Apache-2.0
import type { Vector } from "./geometry";

/**
 * From where the tub is looked at: in parallel projection, upright, so that lengths compare and a station stands at one
 * place on the screen however high the eye.
 */
export interface View {
  /** Round the tub, degrees: 0 from its left side, nose to the left; 90 from the front. */
  turn: number;
  /** Above the horizon, degrees. */
  rise: number;
  /** What the view is centred on, m. */
  focus: Vector;
  /** Pixels for a metre. */
  scale: number;
}

/** Named directions. */
export const SIDES = {
  quarter: { turn: 32, rise: 24 },
  left: { turn: 0, rise: 0 },
  right: { turn: 180, rise: 0 },
  above: { turn: 0, rise: 90 },
  below: { turn: 0, rise: -90 },
  front: { turn: 90, rise: 0 },
  rear: { turn: -90, rise: 0 },
} as const;

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** The direction in which the screen's right lies. */
export function rightOf(view: View): Vector {
  return [Math.cos(radians(view.turn)), -Math.sin(radians(view.turn)), 0];
}

/** The direction towards the eye. */
export function eyeOf(view: View): Vector {
  const c = Math.cos(radians(view.rise));
  return [-Math.sin(radians(view.turn)) * c, -Math.cos(radians(view.turn)) * c, Math.sin(radians(view.rise))];
}

/** The direction in which the screen's top lies. */
export function upOf(view: View): Vector {
  const s = Math.sin(radians(view.rise));
  return [Math.sin(radians(view.turn)) * s, Math.cos(radians(view.turn)) * s, Math.cos(radians(view.rise))];
}

/** The view turned by pixels of dragging. */
export function turned(view: View, dx: number, dy: number): View {
  const turn = ((((view.turn + 0.4 * dx + 180) % 360) + 360) % 360) - 180;
  return { ...view, turn, rise: Math.min(90, Math.max(-90, view.rise + 0.4 * dy)) };
}

/** The view moved by pixels of dragging. */
export function moved(view: View, dx: number, dy: number): View {
  const r = rightOf(view);
  const u = upOf(view);
  const focus = view.focus.map((f, i) => f - (dx * r[i]) / view.scale + (dy * u[i]) / view.scale);
  return { ...view, focus: focus as unknown as Vector };
}

/** The view brought nearer by a factor. */
export function nearer(view: View, factor: number): View {
  return { ...view, scale: Math.min(20000, Math.max(20, view.scale * factor)) };
}

/** The view that shows a box wholly in so many pixels. */
export function fitted(side: { turn: number; rise: number }, low: Vector, high: Vector, width: number, height: number): View {
  const focus: Vector = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
  const view: View = { ...side, focus, scale: 1 };
  const r = rightOf(view);
  const u = upOf(view);
  const half = [0, 1, 2].map((i) => (high[i] - low[i]) / 2);
  const across = half.reduce((sum, h, i) => sum + h * Math.abs(r[i]), 0);
  const upward = half.reduce((sum, h, i) => sum + h * Math.abs(u[i]), 0);
  return { ...view, scale: Math.min((0.47 * width) / across, (0.44 * height) / upward) };
}

/** The ray through a pixel, counted from the middle of the picture, right and up. */
export function ray(view: View, x: number, y: number): { from: Vector; along: Vector } {
  const r = rightOf(view);
  const u = upOf(view);
  const e = eyeOf(view);
  const far = 50;
  const from = view.focus.map((f, i) => f + (x * r[i]) / view.scale + (y * u[i]) / view.scale + far * e[i]);
  return { from: from as unknown as Vector, along: [-e[0], -e[1], -e[2]] };
}

/** Where stations stand across the picture. */
export interface Ruler {
  /** Pixels from the middle of the picture for a station, m. */
  at(station: number): number;
  /** The station there. */
  station(pixels: number): number;
}

/**
 * The ruler of a view: stations of the tub's centre plane. Undefined where the tub is looked at too much along its length
 * for a chart to be read under it.
 */
export function rulerOf(view: View): Ruler | undefined {
  const c = rightOf(view)[0];
  if (Math.abs(c) < 0.3) return undefined;
  const offset = -rightOf(view)[1] * view.focus[1];
  return {
    at: (x) => ((x - view.focus[0]) * c + offset) * view.scale,
    station: (pixels) => (pixels / view.scale - offset) / c + view.focus[0],
  };
}
