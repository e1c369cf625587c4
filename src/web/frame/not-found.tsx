import { BackToShelf } from "./notices.tsx";
import { Page } from "./page.tsx";
import { TopBar } from "./top-bar.tsx";

export function NotFound() {
  return (
    <>
      <TopBar />
      <Page className="page page-narrow" title="Nothing here">
        <h1>There is nothing here</h1>
        <p>The address leads to no job.</p>
        <p className="page-actions">
          <BackToShelf />
        </p>
      </Page>
    </>
  );
}
