import { useLayoutEffect } from "react";
import { useLocation } from "wouter";

const positions = new Map<string, number>();

/** Each page is found again where it was left; a new one begins at its top. */
export function ScrollPositions() {
  const [location] = useLocation();
  useLayoutEffect(() => {
    scrollTo(0, positions.get(location) ?? 0);
    const onScroll = () => positions.set(location, scrollY);
    addEventListener("scroll", onScroll, { passive: true });
    return () => removeEventListener("scroll", onScroll);
  }, [location]);
  return null;
}
