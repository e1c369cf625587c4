import { may, type Route } from "../../workroom/protocol/index.ts";
import { signedInBy } from "../people/sessions.ts";
import { notAllowed, notSignedIn } from "../refused.ts";
import { readToken } from "../secrets.ts";
import { inWorkroom } from "../store/store.ts";
import type { Answer, AskedByAnyone, PersonHandler } from "./asked.ts";

/** Does a person's request in one transaction, once it is clear who asks and that they may. */
export async function asPerson(
  asked: AskedByAnyone,
  who: Route["who"],
  handler: PersonHandler,
): Promise<Answer> {
  const { cookie = "", room } = asked;
  const workroomId = readToken(cookie)?.workroomId;
  if (workroomId === undefined || !(await room.door.isBegun())) throw notSignedIn();
  let afterwards: (() => void)[] = [];
  const answer = await inWorkroom(await room.door.open(), workroomId, async (trx) => {
    afterwards = [];
    const signedIn = await signedInBy(trx, workroomId, cookie);
    if (!signedIn) throw notSignedIn();
    const isAllowed = who === "signed-in" || (who !== "anyone" && may(signedIn.person.role, who));
    if (!isAllowed) throw notAllowed();
    return await handler({
      ...asked,
      ...signedIn,
      trx,
      workroomId,
      afterwards: (work) => afterwards.push(work),
    });
  });
  for (const work of afterwards) work();
  return answer;
}
