import { spawn } from "node:child_process";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "kysely";
import { jobText } from "../../job/index.ts";
import type { AskedPaper } from "../../workroom/protocol/index.ts";
import { JobStates } from "../jobs/job-states.ts";
import { inWorkroom, type Store } from "../store/store.ts";
import type { PaperTask } from "./paper-queue.ts";

const PLAN = ["plan", "-", "--out", ".", "--quiet", "--allow-findings"];
const CUT = ["cut", "-", "--out", ".", "--seconds", "20", "--allow-findings"];

/** What the command line is asked, which of its files is wanted, and its name; it writes into the folder at hand. */
const PAPERS: Record<AskedPaper["kind"], { words: readonly string[]; file: string; name: string }> = {
  workbook: { words: PLAN, file: "workbook.pdf", name: "workbook.pdf" },
  pictures: { words: [...PLAN, "--print", "client"], file: "workbook.pdf", name: "pictures.pdf" },
  cutting: { words: CUT, file: "cutting.json", name: "cutting.json" },
};

/** Longest that one paper takes; the queue gives it to another after that. */
const LONGEST_MS = 10 * 60 * 1000;

/** Makes a paper by the command line, in a process of its own, and keeps its file. One that is made already stays. */
export async function makePaper(
  store: Store,
  { workroomId, paperId }: PaperTask,
  command: readonly string[],
): Promise<void> {
  const taken = await inWorkroom(store, workroomId, async (trx) => {
    const paper = await trx
      .updateTable("papers")
      .set({ state: "in-hand" })
      .where("workroom_id", "=", workroomId)
      .where("id", "=", paperId)
      .where("state", "in", ["waiting", "in-hand"])
      .returning(["job_id", "kind", "version"])
      .executeTakeFirst();
    if (!paper) return undefined;
    const job = await new JobStates().at(trx, workroomId, paper.job_id, paper.version);
    return { kind: paper.kind, job };
  });
  if (!taken) return;
  const folder = await mkdtemp(join(tmpdir(), "shadewright-paper-"));
  try {
    const { words, file, name } = PAPERS[taken.kind];
    const said = await runIn(folder, [...command, ...words], jobText(taken.job));
    if (said === undefined) {
      await finish(
        store,
        { workroomId, paperId },
        { state: "done", file: await readFile(join(folder, file)), file_name: `${taken.job.id}-${name}` },
      );
    } else await finish(store, { workroomId, paperId }, { state: "failed", why: said });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

interface Outcome {
  state: "done" | "failed";
  file?: Uint8Array;
  file_name?: string;
  why?: string;
}

async function finish(store: Store, { workroomId, paperId }: PaperTask, outcome: Outcome): Promise<void> {
  await inWorkroom(store, workroomId, (trx) =>
    trx
      .updateTable("papers")
      .set({ ...outcome, done_at: sql<Date>`now()` })
      .where("workroom_id", "=", workroomId)
      .where("id", "=", paperId)
      // Another may have made it since, where this one was taken for dead.
      .where("state", "=", "in-hand")
      .execute(),
  );
}

/** Runs a command with a text to read; undefined when it went well, else what it said last. */
function runIn(
  cwd: string,
  [program = "", ...words]: readonly string[],
  input: string,
): Promise<string | undefined> {
  return new Promise((done, fail) => {
    // Of the surroundings it gets no more than it needs: the address of the database is none of its matter.
    const env = { PATH: process.env.PATH, NODE_OPTIONS: "--max-old-space-size=2048" };
    const child = spawn(program, words, { cwd, env, stdio: ["pipe", "ignore", "pipe"], timeout: LONGEST_MS });
    let said = "";
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      said = (said + text).slice(-2000);
    });
    child.on("error", fail);
    child.on("close", (code) =>
      done(code === 0 ? undefined : said.trim().slice(-500) || `It ended with ${code}.`),
    );
    child.stdin.on("error", () => {});
    child.stdin.end(input);
  });
}
