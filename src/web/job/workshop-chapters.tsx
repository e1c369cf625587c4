import { ClothsChapter } from "./cloths-chapter.tsx";
import { HabitsChapter } from "./habits-chapter.tsx";
import { HardwareChapter } from "./hardware-chapter.tsx";
import { RatesChapter } from "./rates-chapter.tsx";
import { StockChapter } from "./stock-chapter.tsx";

/** What a job or a shop has to work with. */
export function WorkshopChapters() {
  return (
    <>
      <ClothsChapter />
      <HardwareChapter />
      <StockChapter />
      <HabitsChapter />
      <RatesChapter />
    </>
  );
}
