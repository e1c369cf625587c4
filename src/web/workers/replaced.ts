import { create } from "zustand";

/** Whether a worker died and another does its work since; the maker is told once. */
export const useReplaced = create<{ isTold: boolean; isShown: boolean }>()(() => ({
  isTold: false,
  isShown: false,
}));

export function noteReplaced(): void {
  if (!useReplaced.getState().isTold) useReplaced.setState({ isTold: true, isShown: true });
}

export function dismissReplaced(): void {
  useReplaced.setState({ isShown: false });
}
