import { defineConfig } from "vitest/config";

/** Tests that judge changed code, as `scripts/mutate.mjs` names them, in one project: its tool knows no others. */
export default defineConfig({
  test: {
    setupFiles: "test/seed.ts",
    include: (process.env.MUTATION_TESTS ?? "src/**/*.test.ts").split(","),
    testTimeout: 240_000,
  },
});
