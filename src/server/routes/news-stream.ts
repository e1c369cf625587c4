import type { Context } from "hono";
import { streamSSE } from "hono/streaming";
import { asPerson } from "../http/as-person.ts";
import type { AskedByAnyone } from "../http/asked.ts";

/** Keeps what stands between from closing a silent connection. */
const STILL_HERE_MS = 20_000;

/** News as they come, until the browser goes or the session ends. */
export async function streamNews(c: Context, asked: AskedByAnyone): Promise<Response> {
  const { workroomId, session, person } = (
    await asPerson(asked, "signed-in", async ({ workroomId, session, person }) => ({
      body: { workroomId, session, person },
    }))
  ).body as { workroomId: string; session: string; person: { id: string; role: string } };
  c.header("X-Accel-Buffering", "no");
  return streamSSE(c, async (stream) => {
    let end = () => {};
    const ended = new Promise<void>((done) => {
      end = done;
    });
    stream.onAbort(end);
    const stop = await asked.room.news.watch(workroomId, {
      session,
      personId: person.id,
      isClass: person.role === "class",
      tell: (news) => void stream.writeSSE({ data: JSON.stringify(news) }),
      end,
    });
    const beat = setInterval(() => void stream.write(": still here\n\n"), STILL_HERE_MS);
    await ended;
    clearInterval(beat);
    stop();
  });
}
