import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

export default defineConfig({
  plugins: [svelte({ configFile: false })],
  build: {
    // The page runs in the system's web view alone; Debian 12's is the oldest one meant.
    target: "safari16",
    // The content security policy allows no `data:` scripts or styles, so every file stays a file.
    assetsInlineLimit: 0,
  },
  test: {
    include: ["src/**/*.test.ts"],
    // Against hanging only: a busy machine may take long.
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
