// SPDX-License-Identifier: Apache-2.0
import vtkDataArray from "@kitware/vtk.js/Common/Core/DataArray";
import vtkPlane from "@kitware/vtk.js/Common/DataModel/Plane";
import vtkPolyData from "@kitware/vtk.js/Common/DataModel/PolyData";
import vtkActor from "@kitware/vtk.js/Rendering/Core/Actor";
import vtkMapper from "@kitware/vtk.js/Rendering/Core/Mapper";
import type vtkRenderer from "@kitware/vtk.js/Rendering/Core/Renderer";
import type { Rgb } from "./colours";
import { displaced, type Cut, type Segments, type Triangles, type Tub } from "./geometry";

/** Rims and seams stand out, zone boundaries hardly: shares of ink, by kind of edge. */
const WEIGHTS = [1, 0.85, 0.55, 0.5, 0.22];

/** A surface with its edges, drawn: the tub itself, or what stands in for it while it moves. */
export class Body {
  private readonly surface = layer();
  private readonly lines = layer();
  private shape: Triangles | undefined;
  private segments: Segments = { nodes: new Int32Array(0), kinds: new Uint8Array(0) };
  private moved: { u: Float32Array; scale: number } | undefined;

  constructor(renderer: vtkRenderer) {
    const property = this.surface.actor.getProperty();
    property.setAmbient(0.32);
    property.setDiffuse(0.68);
    property.setSpecular(0);
    this.surface.mapper.setColorModeToDirectScalars();
    this.lines.mapper.setColorModeToDirectScalars();
    // Edges lie in the surface they bound; the surface steps back a hair.
    this.surface.mapper.setResolveCoincidentTopologyToPolygonOffset();
    this.surface.mapper.setRelativeCoincidentTopologyPolygonOffsetParameters(1, 1);
    this.lines.actor.getProperty().setLighting(false);
    for (const { actor } of [this.surface, this.lines]) renderer.addActor(actor);
  }

  /** Takes other triangles and edges; they are drawn where "move" puts them. */
  build(shape: Triangles, segments: Segments): void {
    this.shape = shape;
    this.segments = segments;
    this.moved = undefined;
    const { corners } = shape;
    const cells = new Uint32Array((4 * corners.length) / 3);
    for (let t = 0; t < corners.length / 3; t++) cells.set([3, corners[3 * t], corners[3 * t + 1], corners[3 * t + 2]], 4 * t);
    const data = vtkPolyData.newInstance();
    data.getPoints().setData(shape.points, 3);
    data.getPolys().setData(cells);
    data.getPointData().setNormals(vtkDataArray.newInstance({ name: "normals", numberOfComponents: 3, values: shape.normals }));
    this.surface.mapper.setInputData(data);
    const pairs = new Uint32Array(3 * segments.kinds.length);
    for (let k = 0; k < segments.kinds.length; k++) pairs.set([2, 2 * k, 2 * k + 1], 3 * k);
    const edges = vtkPolyData.newInstance();
    edges.getPoints().setData(new Float32Array(3 * segments.nodes.length), 3);
    edges.getLines().setData(pairs);
    this.lines.mapper.setInputData(edges);
  }

  /** Colours elements, and edges between ground and ink. */
  colour(of: (element: number) => Rgb, ground: Rgb, ink: Rgb): void {
    const { owners } = this.shape!;
    const colours = new Uint8Array(3 * owners.length);
    let c: Rgb = ground;
    for (let p = 0; p < owners.length; p++) {
      if (p === 0 || owners[p] !== owners[p - 1]) c = of(owners[p]);
      colours.set(c, 3 * p);
    }
    scalars(this.surface.mapper, colours);
    const mixed = WEIGHTS.map((w) => [0, 1, 2].map((j) => Math.round(w * ink[j] + (1 - w) * ground[j])));
    const inks = new Uint8Array(3 * this.segments.nodes.length);
    this.segments.kinds.forEach((kind, k) => {
      inks.set(mixed[kind], 6 * k);
      inks.set(mixed[kind], 6 * k + 3);
    });
    scalars(this.lines.mapper, inks);
  }

  /** Draws it moved by so many times its displacement. */
  move(tub: Tub, u: Float32Array, scale: number): void {
    if (this.moved?.u === u && this.moved.scale === scale) return;
    this.moved = { u, scale };
    const { points, nodes } = this.shape!;
    displaced(points, nodes, tub.nodes, u, scale);
    touch(this.surface.mapper, points);
    const ends = this.lines.mapper.getInputData().getPoints().getData() as Float32Array;
    displaced(ends, this.segments.nodes, tub.nodes, u, scale);
    touch(this.lines.mapper, ends);
  }

  remove(renderer: vtkRenderer): void {
    for (const { actor, mapper } of [this.surface, this.lines]) {
      renderer.removeActor(actor);
      actor.delete();
      mapper.delete();
    }
  }

  visible(on: boolean): void {
    this.surface.actor.setVisibility(on);
    this.lines.actor.setVisibility(on);
  }

  cut(cut: Cut | undefined): void {
    clip(this.surface.mapper, cut);
    clip(this.lines.mapper, cut);
  }
}

/** Something drawn. */
export function layer() {
  const mapper = vtkMapper.newInstance();
  const actor = vtkActor.newInstance();
  actor.setMapper(mapper);
  return { mapper, actor };
}

/** Takes away what lies on one side of a plane, or nothing. */
export function clip(mapper: vtkMapper, cut: Cut | undefined): void {
  mapper.removeAllClippingPlanes();
  if (!cut) return;
  const normal: [number, number, number] = [0, 0, 0];
  const origin: [number, number, number] = [0, 0, 0];
  normal[cut.axis] = cut.beyond ? -1 : 1;
  origin[cut.axis] = cut.at;
  mapper.addClippingPlane(vtkPlane.newInstance({ normal, origin }));
}

function scalars(mapper: vtkMapper, values: Uint8Array): void {
  const data = mapper.getInputData() as ReturnType<typeof vtkPolyData.newInstance>;
  data.getPointData().setScalars(vtkDataArray.newInstance({ name: "colour", numberOfComponents: 3, values }));
  data.modified();
}

function touch(mapper: vtkMapper, points: Float32Array): void {
  const data = mapper.getInputData() as ReturnType<typeof vtkPolyData.newInstance>;
  data.getPoints().setData(points, 3);
  data.getPoints().modified();
  data.modified();
}
