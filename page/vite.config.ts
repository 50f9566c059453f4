// SPDX-License-Identifier: Apache-2.0
import { defineConfig } from "vitest/config";

// For "npm run dev" beside "./tubwright page DIR --port 45321": changes of the page are seen at once.
const program = `http://127.0.0.1:${process.env["TUBWRIGHT_PORT"] ?? "45321"}`;

export default defineConfig({
  root: "src/main/web",
  base: "./",
  build: {
    outDir: "../../../target/classes/tubwright/page",
    emptyOutDir: true,
    target: "es2023",
    // One script, loaded once: the three-dimensional library is most of it and is needed at once.
    chunkSizeWarningLimit: 2000,
    modulePreload: false,
    assetsInlineLimit: 0,
  },
  server: { proxy: { "/api": { target: program, changeOrigin: true, headers: { origin: program } } } },
  test: { root: ".", include: ["src/test/unit/**/*.test.ts"], environment: "node" },
});
