import { defineConfig } from "vitest/config";

/** Command-line tests start processes and browser tests start Chromium, so each is a project to run apart. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "unit",
          setupFiles: "test/seed.ts",
          include: ["src/**/*.test.{ts,tsx}", "test/**/*.test.ts"],
          exclude: ["test/cli/**", "test/hostile/**", "test/e2e/**"],
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: "cli",
          setupFiles: "test/seed.ts",
          include: ["test/cli/**/*.test.ts", "test/hostile/**/*.test.ts"],
          globalSetup: "test/cli/build.ts",
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: "e2e",
          include: ["test/e2e/**/*.test.ts"],
          globalSetup: "test/e2e/build.ts",
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
