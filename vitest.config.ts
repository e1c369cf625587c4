import { defineConfig } from "vitest/config";

/**
 * Command-line tests start processes and browser tests start Chromium, so each is a project to run apart.
 * How much a test does is bounded by counts; the time limits only end what hangs, on a machine many times slower.
 */
const HANGS_MS = 240_000;

/** What a screen is to show it shows at once or, on a busy machine, later; asked for again and again until then. */
const poll = { interval: 50, timeout: 60_000 };

export default defineConfig({
  test: {
    // Every core works; without it one of them is left idle, which on two is half the machine.
    maxWorkers: "100%",
    projects: [
      {
        test: {
          name: "unit",
          setupFiles: "test/seed.ts",
          include: ["src/**/*.test.{ts,tsx}", "test/**/*.test.ts"],
          exclude: [
            "test/cli/**",
            "test/hostile/**",
            "test/rooms/**",
            "test/e2e/**",
            "test/{firefox,webkit}/**",
          ],
          // The core keeps no state that a test could leave behind, and is read once instead of by each file.
          isolate: false,
          testTimeout: HANGS_MS,
          hookTimeout: HANGS_MS,
        },
      },
      {
        test: {
          name: "cli",
          setupFiles: "test/seed.ts",
          include: ["test/cli/**/*.test.ts", "test/hostile/**/*.test.ts"],
          globalSetup: "test/cli/build.ts",
          testTimeout: HANGS_MS,
          hookTimeout: HANGS_MS,
        },
      },
      {
        test: {
          name: "rooms",
          expect: { poll },
          setupFiles: "test/seed.ts",
          include: ["test/rooms/**/*.test.ts"],
          globalSetup: ["test/rooms/postgres.ts", "test/cli/build.ts"],
          testTimeout: HANGS_MS,
          hookTimeout: HANGS_MS,
        },
      },
      {
        test: {
          name: "e2e",
          expect: { poll },
          include: ["test/e2e/**/*.test.ts"],
          globalSetup: "test/e2e/build.ts",
          testTimeout: HANGS_MS,
          hookTimeout: HANGS_MS,
        },
      },
      {
        test: {
          name: "webkit",
          expect: { poll },
          include: ["test/webkit/**/*.test.ts"],
          globalSetup: "test/e2e/build.ts",
          testTimeout: HANGS_MS,
          hookTimeout: HANGS_MS,
        },
      },
      {
        test: {
          name: "firefox",
          expect: { poll },
          include: ["test/firefox/**/*.test.ts"],
          globalSetup: "test/e2e/build.ts",
          testTimeout: HANGS_MS,
          hookTimeout: HANGS_MS,
        },
      },
    ],
  },
});
