import { useEffect } from "react";
import { Link } from "wouter";
import { ROUTES, SHOP_ID } from "../../workroom/protocol/index.ts";
import { BackToShelf } from "../frame/notices.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { askServer } from "./ask-server.ts";
import { AuditSection } from "./audit-section.tsx";
import { BinSection } from "./bin-section.tsx";
import { DevicesSection } from "./devices-section.tsx";
import { foundRoom } from "./look-for-room.ts";
import { OwnSection } from "./own-section.tsx";
import { PeopleSection } from "./people-section.tsx";
import { forgetMe, type MeInside, useRoom } from "./room-state.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";
import { FirstOwner, SignInForm } from "./way-in.tsx";
import { WorkSection } from "./work-section.tsx";
import "./workroom.css";

/** The workroom itself: what is in hand, who is in it, what was binned. */
export function WorkroomPage() {
  const me = useRoom((room) => room.me);
  useEffect(() => void foundRoom(), []);
  const isIn = me?.state === "signed-in";
  return (
    <>
      <TopBar>
        <span aria-current="page">{isIn ? me.workroom.name : "Workroom"}</span>
      </TopBar>
      <Page className={isIn ? "page room-page" : "page page-narrow"} title="Workroom">
        {me === undefined ? (
          <>
            <h1>There is no workroom at this address</h1>
            <p>
              <BackToShelf />
            </p>
          </>
        ) : me.state === "new" ? (
          <FirstOwner needsCode={me.needsCode} />
        ) : me.state === "signed-out" ? (
          <SignInForm />
        ) : (
          <Inside me={me} />
        )}
      </Page>
    </>
  );
}

function Inside({ me }: { me: MeInside }) {
  const { isBusy, trouble, run } = useDeed();
  const isOwner = me.person.role === "owner";
  return (
    <>
      <div className="room-head">
        <h1>{me.workroom.name}</h1>
        <p>
          {me.person.name}{" "}
          <button
            type="button"
            className="button-plain"
            disabled={isBusy}
            onClick={() =>
              void run(async () => {
                await askServer("signOut");
                forgetMe();
              })
            }
          >
            Sign out
          </button>
          {" · "}
          <Link href="/">Jobs</Link>
          {" · "}
          <Link href={`/job/${SHOP_ID}`}>Shop</Link>
        </p>
        <Trouble words={trouble} />
      </div>
      <WorkSection />
      <PeopleSection isOwner={isOwner} self={me.person.id} />
      <OwnSection />
      <DevicesSection self={me.person.id} />
      <BinSection role={me.person.role} />
      {isOwner ? (
        <>
          <section aria-labelledby="whole-shelf-title" className="room-section">
            <h2 id="whole-shelf-title">All jobs as one file</h2>
            <p>
              <a className="button button-small" href={ROUTES.wholeShelf.path.slice(1)} download>
                Save the workroom’s shelf
              </a>
            </p>
          </section>
          <AuditSection />
        </>
      ) : null}
    </>
  );
}
