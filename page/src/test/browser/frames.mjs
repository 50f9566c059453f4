// SPDX-License-Identifier: Apache-2.0
// How long one picture takes while the tub is orbited, drawn by the processor alone: node frames.mjs ADDRESS [BROWSER]
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
const times = await page.evaluate(async () => {
  const canvas = document.querySelector('[data-test="canvas"]');
  canvas.focus();
  const result = [];
  for (let i = 0; i < 40; i++) {
    canvas.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowRight", bubbles: true }));
    await new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
    result.push(window.tubStage.timed());
  }
  return result.slice(5).sort((a, b) => a - b);
});
console.log(`frame: median ${times[times.length >> 1].toFixed(1)} ms, nine of ten below ${times[Math.floor(times.length * 0.9)].toFixed(1)} ms`);
await browser.close();
