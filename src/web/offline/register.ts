import { create } from "zustand";

/** A newer release that waits until the maker asks for it. */
export const useRelease = create<{ waiting?: ServiceWorker }>()(() => ({}));

/** Keeps all files of the planner on this device, so that it opens without a network. */
export function registerServiceWorker(): void {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  navigator.serviceWorker
    .register("./service-worker.js")
    .then((registration) => {
      const offer = () => {
        const { waiting } = registration;
        if (waiting && navigator.serviceWorker.controller) useRelease.setState({ waiting });
      };
      offer();
      registration.addEventListener("updatefound", () => {
        registration.installing?.addEventListener("statechange", offer);
      });
    })
    // Without it the planner works all the same as long as there is a network.
    .catch(() => {});
}

/** Changes to the newer release; whatever was edited is on the shelf already. */
export function takeRelease(): void {
  const { waiting } = useRelease.getState();
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  waiting?.postMessage("take-over");
}
