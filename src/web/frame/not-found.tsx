import { BackToShelf } from "./notices.tsx";
import { TopBar } from "./top-bar.tsx";

export function NotFound() {
  return (
    <>
      <TopBar />
      <main className="page page-narrow" id="main">
        <h1>There is nothing here</h1>
        <p>The address leads to no job.</p>
        <p className="page-actions">
          <BackToShelf />
        </p>
      </main>
    </>
  );
}
