// SPDX-License-Identifier: Apache-2.0
// How smoothly the tub is orbited, drawn by the processor alone: node frames.mjs ADDRESS [BROWSER]
// A hand drags the tub for some seconds, a pointer event before every picture; what counts is the time from one picture on
// the screen to the next, so that nothing the browser does in between is left out. Then the picture at rest.
import { chromium } from "playwright-core";

const [, , address, executablePath = "/usr/bin/chromium"] = process.argv;
const browser = await chromium.launch({
  executablePath,
  args: ["--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--disable-background-networking"],
});
const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
page.setDefaultTimeout(300_000);
const start = Date.now();
await page.goto(address);
await page.locator('[data-test="figure-mass"]').waitFor();
await page.waitForFunction(() => window.tubStage.timed() > 0.5);
console.log(`first picture after ${Date.now() - start} ms`);
const measured = await page.evaluate(async () => {
  const canvas = document.querySelector('[data-test="canvas"]');
  const box = canvas.getBoundingClientRect();
  const at = (type, i) =>
    new PointerEvent(type, {
      bubbles: true, pointerId: 1, clientX: box.x + box.width / 2 + 120 * Math.sin(i / 14), clientY: box.y + box.height / 2 + 20 * Math.sin(i / 9),
    });
  canvas.setPointerCapture = () => {};
  const next = () => new Promise((r) => requestAnimationFrame(r));
  const sorted = (times) => times.sort((a, b) => a - b);
  canvas.dispatchEvent(at("pointerdown", 0));
  const gaps = [];
  let before = await next();
  for (let i = 1; i <= 170; i++) {
    canvas.dispatchEvent(at("pointermove", i));
    // What this event asked for is drawn in the next turn or the one after.
    const drawn = window.tubStage.pictures;
    let now = await next();
    while (window.tubStage.pictures === drawn) now = await next();
    gaps.push(now - before);
    before = now;
  }
  canvas.dispatchEvent(at("pointerup", 170));
  const alone = [];
  for (let i = 0; i < 40; i++) alone.push(window.tubStage.timed(true));
  await new Promise((r) => setTimeout(r, 1000));
  const still = [];
  for (let i = 0; i < 9; i++) still.push(window.tubStage.timed());
  return { gaps: sorted(gaps.slice(20)), alone: sorted(alone), still: sorted(still), effort: window.tubStage.effort };
});
const share = (times, s) => times[Math.min(times.length - 1, Math.floor(times.length * s))].toFixed(1);
const tell = (name, times) => console.log(`${name}: median ${share(times, 0.5)} ms, 19 of 20 below ${share(times, 0.95)} ms, longest ${share(times, 1)} ms`);
tell("from one picture to the next while it is dragged", measured.gaps);
tell("one picture while it moves, drawn", measured.alone);
tell("the whole picture at rest, drawn", measured.still);
console.log(`drawn while it moves: ${measured.effort}`);
await browser.close();
