// SPDX-License-Identifier: Apache-2.0
import vtkPolyData from "@kitware/vtk.js/Common/DataModel/PolyData";
import type vtkRenderer from "@kitware/vtk.js/Rendering/Core/Renderer";
import { clip, layer } from "./body";
import type { Rgb } from "./colours";
import { area, middle, type Cut, type Tub } from "./geometry";

/** So many strokes can be told apart on a tub that fills the screen. */
const MOST = 4000;

/** Strokes along the 0° direction of the plies, one on each element, or spread evenly where the mesh is finer than the eye. */
export class Strokes {
  private readonly layer = layer();
  private elements: number[] = [];
  private length = 0;
  private tub: Tub | undefined;

  constructor(renderer: vtkRenderer) {
    this.layer.mapper.setScalarVisibility(false);
    this.layer.actor.getProperty().setLighting(false);
    this.layer.actor.setVisibility(false);
    renderer.addActor(this.layer.actor);
  }

  build(tub: Tub, shows: (element: number) => boolean): void {
    this.tub = tub;
    ({ elements: this.elements, length: this.length } = spread(tub, shows, MOST));
    const data = vtkPolyData.newInstance();
    data.getPoints().setData(new Float32Array(6 * this.elements.length), 3);
    const cells = new Uint32Array(3 * this.elements.length);
    for (let i = 0; i < this.elements.length; i++) cells.set([2, 2 * i, 2 * i + 1], 3 * i);
    data.getLines().setData(cells);
    this.layer.mapper.setInputData(data);
  }

  /** Draws them moved by so many times the displacement of their elements. */
  move(u: Float32Array, scale: number): void {
    const { tub, elements, length } = this;
    if (!tub) return;
    const points = new Float32Array(6 * elements.length);
    elements.forEach((e, k) => {
      const m = middle(tub, e);
      const by = scale === 0 ? [0, 0, 0] : middle({ ...tub, nodes: u }, e);
      for (let i = 0; i < 3; i++) {
        const at = m[i] + scale * by[i] + 0.0012 * tub.normals[12 * e + i];
        points[6 * k + i] = at - 0.4 * length * tub.directions[3 * e + i];
        points[6 * k + 3 + i] = at + 0.4 * length * tub.directions[3 * e + i];
      }
    });
    const data = this.layer.mapper.getInputData() as ReturnType<typeof vtkPolyData.newInstance>;
    data.getPoints().setData(points, 3);
    data.getPoints().modified();
    data.modified();
  }

  visible(on: boolean): void {
    this.layer.actor.setVisibility(on && this.tub !== undefined);
  }

  ink([r, g, b]: Rgb): void {
    this.layer.actor.getProperty().setColor(r / 255, g / 255, b / 255);
  }

  cut(cut: Cut | undefined): void {
    clip(this.layer.mapper, cut);
  }
}

/** Elements to draw a stroke on, at most about so many, evenly over the surface, and the room that each has, m. */
export function spread(tub: Tub, shows: (element: number) => boolean, most: number): { elements: number[]; length: number } {
  const shown: number[] = [];
  let all = 0;
  for (let e = 0; e < tub.elements; e++) {
    if (!shows(e)) continue;
    shown.push(e);
    all += area(tub, e);
  }
  if (shown.length === 0) return { elements: shown, length: 0 };
  const cell = Math.sqrt(all / Math.min(most, shown.length));
  if (shown.length <= most) return { elements: shown, length: cell };
  const taken = new Map<string, number>();
  for (const e of shown) {
    // Skins that lie close behind each other each have their strokes: regions are kept apart.
    const key = [...middle(tub, e).map((v) => Math.floor(v / cell)), tub.regions[e]].join();
    if (!taken.has(key)) taken.set(key, e);
  }
  return { elements: [...taken.values()], length: cell };
}
