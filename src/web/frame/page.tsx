import { type ReactNode, useEffect, useRef } from "react";

interface PageProps {
  /** Shown in the tab and spoken on arrival. */
  title: string;
  className: string;
  busy?: boolean;
  /** Which side the shade is worked from, where the page minds. */
  control?: "left" | "right";
  children: ReactNode;
}

let firstPage = true;

/** The body of a screen: names the tab, and takes the focus when the maker arrives from another screen. */
export function Page({ title, className, busy, control, children }: PageProps) {
  const main = useRef<HTMLElement>(null);
  useEffect(() => {
    document.title = title === "Shadewright" ? title : `${title} · Shadewright`;
  }, [title]);
  useEffect(() => {
    if (!firstPage) main.current?.focus({ preventScroll: true });
    firstPage = false;
  }, []);
  return (
    <main ref={main} id="main" tabIndex={-1} className={className} aria-busy={busy} data-control={control}>
      {children}
    </main>
  );
}
