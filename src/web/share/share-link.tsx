import { useState } from "react";
import { useJob } from "../state/fields.ts";
import { packJob } from "./packed-job.ts";

type Sharing = { state: "idle" } | { state: "made"; link: string; copied: boolean } | { state: "long" };

/** Whether it could be copied: pages that came by an unguarded line have no clipboard. */
async function copyText(text: string): Promise<boolean> {
  const clipboard: Clipboard | undefined = navigator.clipboard;
  try {
    await clipboard?.writeText(text);
    return clipboard !== undefined;
  } catch {
    return false;
  }
}

/** A link that holds the job itself: nothing is sent anywhere until the maker passes it on. */
export function ShareLink() {
  const job = useJob();
  const [sharing, setSharing] = useState<{ of: typeof job } & Sharing>();
  const now: Sharing = sharing?.of === job ? sharing : { state: "idle" };
  const make = async () => {
    const packed = await packJob(job);
    if (packed === undefined) return setSharing({ of: job, state: "long" });
    const link = `${location.href.split("#")[0]}#/shared/${packed}`;
    setSharing({ of: job, state: "made", link, copied: await copyText(link) });
  };
  return (
    <div className="share-link screen-only">
      <p>
        <button type="button" className="button" onClick={() => void make()}>
          Make a link of the job
        </button>{" "}
        <span className="quiet small">
          The link holds the job as it is now, names and prices with it; pictures of cloth are left out.
        </span>
      </p>
      <div role="status">
        {now.state === "long" ? <p>It is too long for a link. Save it as a file and pass that on.</p> : null}
        {now.state === "made" ? (
          <>
            <p>{now.copied ? "The link is copied." : "Copy the link:"}</p>
            <input
              className="field-input share-text"
              aria-label="Link of the job"
              readOnly
              value={now.link}
              onFocus={(event) => event.target.select()}
            />
          </>
        ) : null}
      </div>
    </div>
  );
}
