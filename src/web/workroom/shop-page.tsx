import { Link } from "wouter";
import { Colophon } from "../frame/colophon.tsx";
import { Page } from "../frame/page.tsx";
import { TopBar } from "../frame/top-bar.tsx";
import { WorkshopChapters } from "../job/workshop-chapters.tsx";
import { RoomPanel } from "./room-panel.tsx";
import { useRoom } from "./room-state.ts";
import "../job/job-page.css";

/** What a workroom has for all of its jobs: kept, merged and undone as a job is, and without windows. */
export function ShopPage() {
  const name = useRoom(({ me }) => (me?.state === "signed-in" ? me.workroom.name : "the workroom"));
  return (
    <>
      <TopBar withJob>
        <Link href="/workroom">Workroom</Link> <span aria-current="page">Shop</span>
      </TopBar>
      <Page className="job-page shop-page" title="Shop">
        <div className="job-work">
          <h1>Shop of {name}</h1>
          <p className="quiet">
            Cloths, parts, stock, habits and rates for every job. A job takes a copy, and says when the shop’s
            has changed. A remnant goes to one job; a plain bolt is shared by length, as cutting plans take
            it.
          </p>
          <RoomPanel />
          <WorkshopChapters />
        </div>
      </Page>
      <Colophon />
    </>
  );
}
