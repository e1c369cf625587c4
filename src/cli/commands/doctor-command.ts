import type { Command } from "commander";
import type { Io } from "../io.ts";
import { FOLDER_OPTION, withStore } from "./store-option.ts";

/** `shadewright doctor`: looks a workroom’s database over. */
export function addDoctor(program: Command, io: Io): void {
  program
    .command("doctor")
    .description("Look the workroom’s database over; nothing is changed")
    .option(...FOLDER_OPTION)
    .action(async ({ folder }: { folder?: string }) => {
      const { examine } = await import("../../server/index.ts");
      const troubles = await withStore(folder, async (store) => {
        let count = 0;
        for await (const { what, isWell, found } of examine(store)) {
          if (!isWell) count++;
          io.out(`${isWell ? "well   " : "TROUBLE"}  ${what}${found === undefined ? "" : `: ${found}`}\n`);
        }
        return count;
      });
      if (troubles > 0) process.exitCode = 1;
    });
}
