// SPDX-License-Identifier: Apache-2.0
import vtkRenderer from "@kitware/vtk.js/Rendering/Core/Renderer";
import { Body } from "./body";
import type { Rgb } from "./colours";
import { cast, segments, triangles, type Cut, type Hit, type Segments, type Triangles, type Tub } from "./geometry";
import { cellOf, coarsened, fewer, standIns } from "./standin";
import { Strokes } from "./strokes";
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

/** One half of the stage: a tub, and what stands in for it while it moves where the machine is slow. */
export class Half {
  readonly renderer = vtkRenderer.newInstance();
  private readonly whole = new Body(this.renderer);
  private readonly strokes = new Strokes(this.renderer);
  private standIn: Body | undefined;
  private shape: Triangles | undefined;
  private edges: Segments | undefined;
  private scene: Scene | undefined;
  private tone: Tone | undefined;
  private away: Cut | undefined;
  private scale = 0;
  private light = false;

  show(scene: Scene, tone: Tone, cut: Cut | undefined): void {
    const before = this.scene;
    const toneBefore = this.tone;
    this.scene = scene;
    this.tone = tone;
    this.renderer.setBackground(...unit(tone.ground));
    const fresh = !before || before.tub !== scene.tub || before.hidden !== scene.hidden;
    if (fresh) {
      const shows = this.shows(scene);
      this.shape = triangles(scene.tub, shows);
      this.edges = segments(scene.tub, shows);
      this.whole.build(this.shape, this.edges);
      this.dropStandIn();
    }
    const colours = fresh || before.colour !== scene.colour || before.marked !== scene.marked || toneBefore !== tone;
    if (colours) this.each((b) => b.colour(this.colours(scene, tone), tone.ground, tone.ink));
    const stroked = scene.strokes && (fresh || !before.strokes);
    if (stroked) this.strokes.build(scene.tub, this.shows(scene));
    this.strokes.visible(scene.strokes);
    this.strokes.ink(tone.ink);
    if (fresh || stroked || before.shape !== scene.shape) this.move(scene.shape?.scale ?? 0);
    if (fresh || this.away !== cut) {
      this.away = cut;
      this.each((b) => b.cut(cut));
      this.strokes.cut(cut);
    }
  }

  /** Triangles that a whole picture has. */
  get size(): number {
    return this.shape?.elements.length ?? 0;
  }

  /** Whether what stands in for the tub is drawn in its place. */
  lighten(on: boolean): void {
    if (on && !this.standIn) this.makeStandIn();
    const light = on && this.standIn !== undefined;
    if (light === this.light) return;
    this.light = light;
    this.whole.visible(!light);
    this.standIn?.visible(light);
    this.move(this.scale);
  }

  /** Draws the tub so many times as far out of shape as it goes. */
  move(scale: number): void {
    const { tub, shape } = this.scene!;
    this.scale = scale;
    const u = shape?.u ?? tub.nodes;
    (this.light ? this.standIn! : this.whole).move(tub, u, shape ? scale : 0);
    if (this.scene!.strokes) this.strokes.move(u, shape ? scale : 0);
  }

  /** Draws it as far out of shape as its scene says. */
  rest(): void {
    const scale = this.scene?.shape?.scale ?? 0;
    if (this.scene && scale !== this.scale) this.move(scale);
  }

  look(view: View, height: number): void {
    const camera = this.renderer.getActiveCamera();
    const eye = eyeOf(view);
    camera.setParallelProjection(true);
    camera.setFocalPoint(...view.focus);
    camera.setPosition(view.focus[0] + 10 * eye[0], view.focus[1] + 10 * eye[1], view.focus[2] + 10 * eye[2]);
    camera.setViewUp(...upOf(view));
    camera.setParallelScale(height / 2 / view.scale);
    camera.setClippingRange(1, 20);
  }

  pick(view: View, x: number, y: number, cut: Cut | undefined): Hit | undefined {
    const { from, along } = ray(view, x, y);
    return this.shape && cast(this.shape, from, along, cut);
  }

  private each(what: (body: Body) => void): void {
    what(this.whole);
    if (this.standIn) what(this.standIn);
  }

  private dropStandIn(): void {
    if (this.light) this.lighten(false);
    this.standIn?.remove(this.renderer);
    this.standIn = undefined;
  }

  private makeStandIn(): void {
    const { tub } = this.scene!;
    const cell = cellOf(tub);
    if (cell === undefined) return;
    const nodes = standIns(tub, cell);
    this.standIn = new Body(this.renderer);
    this.standIn.build(coarsened(tub, this.shows(this.scene!), nodes), fewer(this.edges!, nodes));
    this.standIn.colour(this.colours(this.scene!, this.tone!), this.tone!.ground, this.tone!.ink);
    this.standIn.cut(this.away);
    this.standIn.visible(false);
  }

  private shows(scene: Scene): (element: number) => boolean {
    const pieces = scene.tub.view.regions.map((r) => !scene.hidden.has(r.piece));
    return (e) => pieces[scene.tub.regions[e]];
  }

  /** The scene's colours; where something is held out to the reader the rest fades. */
  private colours(scene: Scene, tone: Tone): (element: number) => Rgb {
    const { regions } = scene.tub.view;
    const { marked } = scene;
    const held = regions.map((r) => r.zone === marked || r.patches.some((p) => p === marked || p.startsWith(`${marked}: `)));
    if (marked === undefined || !held.includes(true)) return scene.colour;
    return (e) => {
      const c = scene.colour(e);
      if (held[scene.tub.regions[e]]) return c;
      return [0, 1, 2].map((i) => Math.round(0.25 * c[i] + 0.75 * tone.ground[i])) as unknown as Rgb;
    };
  }
}

function unit(c: Rgb): [number, number, number] {
  return [c[0] / 255, c[1] / 255, c[2] / 255];
}
