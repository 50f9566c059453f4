// SPDX-License-Identifier: Apache-2.0
import "@kitware/vtk.js/Rendering/Profiles/Geometry";
import vtkRenderWindow from "@kitware/vtk.js/Rendering/Core/RenderWindow";
import vtkOpenGLRenderWindow from "@kitware/vtk.js/Rendering/OpenGL/RenderWindow";
import type { Cut, Hit } from "./geometry";
import { Half, type Scene, type Tone } from "./half";
import { Pace } from "./pace";
import { Smoothed } from "./smoothed";
import type { View } from "./view";

/** After so long without a movement the tub is at rest, ms. */
const REST = 250;

/** The picture of one tub, or of two above each other on the same stations. */
export class Stage {
  private readonly window = vtkRenderWindow.newInstance();
  private readonly canvas = document.createElement("canvas");
  private readonly gl: WebGL2RenderingContext | null;
  private readonly view: ReturnType<typeof vtkOpenGLRenderWindow.newInstance>;
  private readonly smoothed: Smoothed | undefined;
  private readonly pace = new Pace();
  private readonly halves: Half[] = [];
  private width = 1;
  private height = 1;
  private frame = 0;
  private swing: { phase: number; scales: number[] } | undefined;
  private lastView: View | undefined;
  /** When the tub was last moved by hand, or none: it rests. */
  private stirred: number | undefined;
  private waking = 0;
  /** Whether what is drawn next was drawn before, seen from elsewhere. */
  private alone = false;

  constructor(container: HTMLElement) {
    // The context is made here because of its samples, see Smoothed; what else it can do is as the library would have it.
    this.gl = this.canvas.getContext("webgl2", { antialias: false, depth: true, alpha: true, powerPreference: "high-performance" });
    this.smoothed = this.gl ? new Smoothed(this.gl) : undefined;
    this.view = vtkOpenGLRenderWindow.newInstance({ canvas: this.canvas, manageCanvas: true });
    this.view.setContainer(container);
    this.window.addView(this.view);
    this.canvas.setAttribute("aria-hidden", "true");
    this.canvas.addEventListener("webglcontextrestored", () => {
      this.smoothed?.release();
      this.draw();
    });
  }

  /** Whether this browser can draw at all. */
  get able(): boolean {
    return this.gl !== null;
  }

  /** Pixels, as laid out. */
  resize(width: number, height: number): void {
    this.width = width;
    this.height = height;
    this.alone = false;
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
      this.halves[i].show(scene, tone, cut);
    });
    this.alone = false;
    this.swing = undefined;
    this.draw();
  }

  /**
   * Looks from there.
   *
   * @param byHand whether more of it is to be expected at once
   */
  look(view: View, byHand: boolean): void {
    this.lastView = view;
    if (byHand) this.stirred = performance.now();
    this.draw();
  }

  /** Lets the tubs swing between their shapes and back; stops when told to. */
  animate(scales: number[] | undefined): void {
    this.swing = scales && { phase: this.swing?.phase ?? 0, scales };
    if (!scales) for (const half of this.halves) half.rest();
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
  picture(): string {
    this.render(false);
    return this.canvas.toDataURL("image/png");
  }

  /** Pictures drawn so far; for measuring. */
  pictures = 0;

  /** How much of it is drawn while it moves on this machine; for measuring. */
  get effort(): string {
    return this.pace.effort;
  }

  /** Whether it moves; for tests. */
  get moving(): boolean {
    return this.swing !== undefined || this.stirred !== undefined;
  }

  /** Draws now and says how long it took, ms; for measuring. */
  timed(moving = false): number {
    return this.render(moving);
  }

  dispose(): void {
    cancelAnimationFrame(this.frame);
    clearTimeout(this.waking);
    this.smoothed?.release();
    this.view.setContainer(null as unknown as HTMLElement);
    this.view.delete();
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
      const { moving } = this;
      const took = this.render(moving);
      if (moving) this.pace.moving(took);
      else this.pace.still(took, this.alone);
      this.alone = true;
      if (this.swing) this.draw();
      else if (this.stirred !== undefined) this.wake();
    });
  }

  /** Draws the whole picture once the hand rests. */
  private wake(): void {
    clearTimeout(this.waking);
    this.waking = window.setTimeout(() => {
      if (this.stirred !== undefined && performance.now() - this.stirred >= REST) this.stirred = undefined;
      this.draw();
    }, REST);
  }

  private render(moving: boolean): number {
    if (!this.lastView || !this.gl) return 0;
    const start = performance.now();
    const effort = moving ? this.pace.effort : "whole";
    const dense = effort === "whole" ? window.devicePixelRatio || 1 : effort === "light" ? 1 : 0.5;
    const [w, h] = [this.width, this.height].map((v) => Math.max(1, Math.round(v * dense)));
    this.view.setSize(w, h);
    for (const half of this.halves) {
      half.lighten(effort !== "whole");
      half.look(this.lastView, this.height / this.halves.length);
    }
    if (effort === "whole") this.smoothed!.draw(w, h, () => this.window.render());
    else this.window.render();
    // Waits until the picture is there: pictures that queue up would come late, and nobody could tell how long one takes.
    this.gl.readPixels(0, 0, 1, 1, this.gl.RGBA, this.gl.UNSIGNED_BYTE, new Uint8Array(4));
    this.pictures++;
    return performance.now() - start;
  }
}
