/** client/vite.config.ts - builds the client into dist/ at the top. Built on the user's machine by `npm start`, for the
 *  browsers of the last years, without a network: fonts and styles come from the packages. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

export default defineConfig({
  root: fileURLToPath(new URL(".", import.meta.url)),
  base: "/",
  cacheDir: fileURLToPath(new URL("../node_modules/.vite", import.meta.url)),
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: {
    outDir: fileURLToPath(new URL("../dist", import.meta.url)),
    emptyOutDir: true,
    target: "es2022",
    // One window, served from this machine: the size of a single script is of no account.
    chunkSizeWarningLimit: 4000,
  },
});
