// SPDX-License-Identifier: Apache-2.0
import "@kitware/vtk.js/Rendering/Profiles/Geometry";
import vtkDataArray from "@kitware/vtk.js/Common/Core/DataArray";
import vtkPlane from "@kitware/vtk.js/Common/DataModel/Plane";
import vtkPolyData from "@kitware/vtk.js/Common/DataModel/PolyData";
import vtkActor from "@kitware/vtk.js/Rendering/Core/Actor";
import vtkMapper from "@kitware/vtk.js/Rendering/Core/Mapper";
import vtkRenderer from "@kitware/vtk.js/Rendering/Core/Renderer";
import vtkRenderWindow from "@kitware/vtk.js/Rendering/Core/RenderWindow";
import vtkOpenGLRenderWindow from "@kitware/vtk.js/Rendering/OpenGL/RenderWindow";
import type { Rgb } from "./colours";
import { cast, displaced, middle, type Cut, type Hit, triangles, type Triangles, type Tub } from "./geometry";
import { eyeOf, ray, upOf, type View } from "./view";

/** What one half of the stage shows. */
export interface Scene {
  tub: Tub;
  colour: (element: number) => Rgb;
  hidden: ReadonlySet<string>;
  /** Displacements and how many times as large they are drawn. */
  shape?: { u: Float32Array; scale: number } | undefined;
  strokes: boolean;
  marked?: string | undefined;
}

/** Colours of a light or a dark stage. */
export interface Tone {
  ground: Rgb;
  ink: Rgb;
  mark: Rgb;
}

/** Tub, drawn with its edges: one half of the stage. */
class Half {
  readonly renderer = vtkRenderer.newInstance();
  private readonly surface = layer();
  private readonly lines = layer();
  private readonly strokes = layer();
  private shape: Triangles | undefined;
  private lineNodes = new Int32Array(0);
  private scene: Scene | undefined;
  private tone: Tone | undefined;

  constructor() {
    const property = this.surface.actor.getProperty();
    property.setAmbient(0.32);
    property.setDiffuse(0.68);
    property.setSpecular(0);
    this.surface.mapper.setColorModeToDirectScalars();
    this.lines.mapper.setColorModeToDirectScalars();
    // Edges lie in the surface they bound; the surface steps back a hair.
    this.surface.mapper.setResolveCoincidentTopologyToPolygonOffset();
    this.surface.mapper.setRelativeCoincidentTopologyPolygonOffsetParameters(1, 1);
    this.strokes.mapper.setScalarVisibility(false);
    for (const each of [this.surface, this.lines, this.strokes]) this.renderer.addActor(each.actor);
    for (const each of [this.lines, this.strokes]) each.actor.getProperty().setLighting(false);
  }

  show(scene: Scene, tone: Tone): void {
    const before = this.scene;
    this.scene = scene;
    const [r, g, b] = tone.ground;
    this.renderer.setBackground(r / 255, g / 255, b / 255);
    const fresh = !before || before.tub !== scene.tub || before.hidden !== scene.hidden;
    if (fresh) this.build(scene);
    if (fresh || before.colour !== scene.colour || before.marked !== scene.marked || this.tone !== tone) this.colour(scene, tone);
    if (fresh || before.strokes !== scene.strokes) this.stroke(scene);
    if (fresh || before.shape !== scene.shape) this.move(scene.shape?.scale ?? 0);
    const [sr, sg, sb] = tone.ink;
    this.strokes.actor.getProperty().setColor(sr / 255, sg / 255, sb / 255);
    this.tone = tone;
  }

  private shows(scene: Scene): (element: number) => boolean {
    const pieces = scene.tub.view.regions.map((r) => !scene.hidden.has(r.piece));
    return (e) => pieces[scene.tub.regions[e]];
  }

  private build(scene: Scene): void {
    const { tub } = scene;
    const shows = this.shows(scene);
    this.shape = triangles(tub, shows);
    const { corners } = this.shape;
    const cells = new Uint32Array((4 * corners.length) / 3);
    for (let t = 0; t < corners.length / 3; t++) cells.set([3, corners[3 * t], corners[3 * t + 1], corners[3 * t + 2]], 4 * t);
    const data = vtkPolyData.newInstance();
    data.getPoints().setData(this.shape.points, 3);
    data.getPolys().setData(cells);
    data.getPointData().setNormals(vtkDataArray.newInstance({ name: "normals", numberOfComponents: 3, values: this.shape.normals }));
    this.surface.mapper.setInputData(data);
    const kept: number[] = [];
    for (let i = 0; i < tub.edges.length / 4; i++) if (shows(tub.edges[4 * i + 3])) kept.push(i);
    this.lineNodes = new Int32Array(2 * kept.length);
    const segments = new Uint32Array(3 * kept.length);
    kept.forEach((i, k) => {
      this.lineNodes[2 * k] = tub.edges[4 * i];
      this.lineNodes[2 * k + 1] = tub.edges[4 * i + 1];
      segments.set([2, 2 * k, 2 * k + 1], 3 * k);
    });
    const points = new Float32Array(3 * this.lineNodes.length);
    displaced(points, this.lineNodes, tub.nodes, tub.nodes, 0);
    const edges = vtkPolyData.newInstance();
    edges.getPoints().setData(points, 3);
    edges.getLines().setData(segments);
    this.lines.mapper.setInputData(edges);
  }

  private colour(scene: Scene, tone: Tone): void {
    const shape = this.shape!;
    const colours = new Uint8Array(3 * shape.owners.length);
    const { regions } = scene.tub.view;
    const held = regions.map((r) => r.zone === scene.marked || r.patches.some((p) => p === scene.marked || p.startsWith(`${scene.marked}: `)));
    const fades = scene.marked !== undefined && held.includes(true);
    let c: Rgb = tone.ground;
    for (let p = 0; p < shape.owners.length; p++) {
      const e = shape.owners[p];
      if (p === 0 || e !== shape.owners[p - 1]) {
        c = scene.colour(e);
        if (fades && !held[scene.tub.regions[e]]) {
          c = [0, 1, 2].map((i) => Math.round(0.25 * c[i] + 0.75 * tone.ground[i])) as unknown as Rgb;
        }
      }
      colours.set(c, 3 * p);
    }
    scalars(this.surface.mapper, colours);
    // Rims and seams stand out, zone boundaries hardly.
    const weights = [1, 0.85, 0.55, 0.5, 0.22];
    const { edges } = scene.tub;
    const shows = this.shows(scene);
    const inks = new Uint8Array(3 * this.lineNodes.length);
    let k = 0;
    for (let i = 0; i < edges.length / 4; i++) {
      if (!shows(edges[4 * i + 3])) continue;
      const w = weights[edges[4 * i + 2]];
      const ink = [0, 1, 2].map((j) => Math.round(w * tone.ink[j] + (1 - w) * tone.ground[j]));
      inks.set(ink, 6 * k);
      inks.set(ink, 6 * k + 3);
      k++;
    }
    scalars(this.lines.mapper, inks);
  }

  private stroke(scene: Scene): void {
    this.strokes.actor.setVisibility(scene.strokes);
    if (!scene.strokes) return;
    const { tub } = scene;
    const shows = this.shows(scene);
    const points: number[] = [];
    for (let e = 0; e < tub.elements; e++) {
      if (!shows(e)) continue;
      const length = 0.4 * Math.sqrt(area(tub, e));
      const d = 3 * e;
      const m = middle(tub, e);
      for (const sign of [-1, 1]) {
        for (let i = 0; i < 3; i++) {
          points.push(m[i] + sign * length * tub.directions[d + i] + 0.0012 * tub.normals[12 * e + i]);
        }
      }
    }
    const data = vtkPolyData.newInstance();
    data.getPoints().setData(new Float32Array(points), 3);
    const cells = new Uint32Array(points.length / 2);
    for (let i = 0; i < points.length / 6; i++) cells.set([2, 2 * i, 2 * i + 1], 3 * i);
    data.getLines().setData(cells);
    this.strokes.mapper.setInputData(data);
  }

  /** Draws the tub so many times as far out of shape as it goes. */
  move(scale: number): void {
    const { tub, shape } = this.scene!;
    const u = shape?.u ?? new Float32Array(tub.nodes.length);
    displaced(this.shape!.points, this.shape!.nodes, tub.nodes, u, scale);
    touch(this.surface.mapper, this.shape!.points);
    const points = this.lines.mapper.getInputData().getPoints().getData() as Float32Array;
    displaced(points, this.lineNodes, tub.nodes, u, scale);
    touch(this.lines.mapper, points);
  }

  cut(cut: Cut | undefined): void {
    for (const { mapper } of [this.surface, this.lines, this.strokes]) {
      mapper.removeAllClippingPlanes();
      if (cut) {
        const sign = cut.beyond ? -1 : 1;
        const normal: [number, number, number] = [0, 0, 0];
        const origin: [number, number, number] = [0, 0, 0];
        normal[cut.axis] = sign;
        origin[cut.axis] = cut.at;
        mapper.addClippingPlane(vtkPlane.newInstance({ normal, origin }));
      }
    }
  }

  look(view: View, height: number): void {
    const camera = this.renderer.getActiveCamera();
    const eye = eyeOf(view);
    const up = upOf(view);
    camera.setParallelProjection(true);
    camera.setFocalPoint(...view.focus);
    camera.setPosition(view.focus[0] + 10 * eye[0], view.focus[1] + 10 * eye[1], view.focus[2] + 10 * eye[2]);
    camera.setViewUp(...up);
    camera.setParallelScale(height / 2 / view.scale);
    camera.setClippingRange(1, 20);
  }

  pick(view: View, x: number, y: number, cut: Cut | undefined): Hit | undefined {
    const { from, along } = ray(view, x, y);
    return this.shape && cast(this.shape, from, along, cut);
  }
}

/** The picture of one tub, or of two above each other on the same stations. */
export class Stage {
  private readonly window = vtkRenderWindow.newInstance();
  private readonly gl = vtkOpenGLRenderWindow.newInstance();
  private readonly halves: Half[] = [];
  private width = 1;
  private height = 1;
  private frame = 0;
  private swing: { phase: number; scales: number[] } | undefined;
  private lastView: View | undefined;

  constructor(container: HTMLElement) {
    this.gl.setContainer(container);
    this.window.addView(this.gl);
    this.gl.getCanvas()?.setAttribute("aria-hidden", "true");
  }

  /** Pixels, as laid out. */
  resize(width: number, height: number): void {
    this.width = width;
    this.height = height;
    const dense = window.devicePixelRatio || 1;
    this.gl.setSize(Math.max(1, Math.round(width * dense)), Math.max(1, Math.round(height * dense)));
  }

  /** Shows one scene or two; the second stands below. */
  show(scenes: Scene[], tone: Tone, cut: Cut | undefined): void {
    while (this.halves.length > scenes.length) this.window.removeRenderer(this.halves.pop()!.renderer);
    while (this.halves.length < scenes.length) {
      const half = new Half();
      this.halves.push(half);
      this.window.addRenderer(half.renderer);
    }
    scenes.forEach((scene, i) => {
      const n = scenes.length;
      this.halves[i].renderer.setViewport(0, 1 - (i + 1) / n, 1, 1 - i / n);
      this.halves[i].show(scene, tone);
      this.halves[i].cut(cut);
    });
    this.swing = undefined;
    this.draw();
  }

  /** Looks from there. */
  look(view: View): void {
    this.lastView = view;
    this.draw();
  }

  /** Lets the tubs swing between their shapes and back; stops when told to. */
  animate(scales: number[] | undefined): void {
    this.swing = scales && { phase: 0, scales };
    this.draw();
  }

  /** What lies at a pixel of the picture, counted from its top left corner, and in which half. */
  pick(x: number, y: number, cut: Cut | undefined): { half: number; hit: Hit } | undefined {
    if (!this.lastView || this.halves.length === 0) return undefined;
    const each = this.height / this.halves.length;
    const half = Math.min(this.halves.length - 1, Math.floor(y / each));
    const hit = this.halves[half].pick(this.lastView, x - this.width / 2, each * (half + 0.5) - y, cut);
    return hit && { half, hit };
  }

  /** The picture as it is. */
  async picture(): Promise<string> {
    const captured = this.gl.captureNextImage("image/png");
    this.render();
    return (await captured) as string;
  }

  /** Draws now and says how long it took, ms; for measuring. */
  timed(): number {
    const start = performance.now();
    this.render();
    const context = this.gl.getCanvas()?.getContext("webgl2");
    // Waits until the picture is there.
    context?.readPixels(0, 0, 1, 1, context.RGBA, context.UNSIGNED_BYTE, new Uint8Array(4));
    return performance.now() - start;
  }

  dispose(): void {
    cancelAnimationFrame(this.frame);
    this.gl.setContainer(null as unknown as HTMLElement);
    this.gl.delete();
  }

  private draw(): void {
    if (this.frame) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      if (this.swing) {
        this.swing.phase += 0.09;
        const share = Math.sin(this.swing.phase);
        this.halves.forEach((half, i) => half.move(share * (this.swing!.scales[i] ?? 0)));
      }
      this.render();
      if (this.swing) this.draw();
    });
  }

  private render(): void {
    if (!this.lastView) return;
    for (const half of this.halves) half.look(this.lastView, this.height / this.halves.length);
    this.window.render();
  }
}

function layer() {
  const mapper = vtkMapper.newInstance();
  const actor = vtkActor.newInstance();
  actor.setMapper(mapper);
  return { mapper, actor };
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

function area(tub: Tub, e: number): number {
  const at = (k: number) => {
    const n = tub.corners[4 * e + k];
    return [tub.nodes[3 * n], tub.nodes[3 * n + 1], tub.nodes[3 * n + 2]];
  };
  const triangle = tub.corners[4 * e + 3] < 0;
  const [a, b, c] = [at(0), at(1), at(2)];
  const d = triangle ? a : at(3);
  const p = c.map((v, i) => v - a[i]);
  const q = d.map((v, i) => v - b[i]);
  return 0.5 * Math.hypot(p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]);
}
