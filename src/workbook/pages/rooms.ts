import { drawRoom, type RoomView, roomViews } from "../../drawing/index.ts";
import type { Plan, ShadePlan } from "../../plan/index.ts";
import type { Book } from "../typeset/book.ts";
import { figure } from "../typeset/figure.ts";
import { openPage, section } from "../typeset/heading.ts";
import { notedList } from "../typeset/noted-list.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { TYPE } from "../typeset/type-scale.ts";

/** Most that one drawing takes of a page, pt: lowered and raised stand under each other. */
const DRAWN_PT = 185;

/** Rooms of two windows or more, each to one scale, with what their windows share and what gave for it. */
export function roomPages(book: Book, plan: Plan, shades: readonly ShadePlan[]): void {
  const views = roomViews({ rooms: plan.rooms, shades: [...shades] }).filter(
    (view) => view.shades.length > 1,
  );
  if (views.length === 0) return;
  openPage(book, {
    title: "Rooms",
    lead: "The windows of a room on one floor, to one scale, in their order along the wall.",
  });
  for (const view of views) setRoom(book, plan, view);
}

function setRoom(book: Book, plan: Plan, view: RoomView): void {
  const { alignment } = view;
  section(book, view.roomName, DRAWN_PT);
  if (alignment !== undefined) paragraph(book, alignment.words, { style: TYPE.lead });
  figure(book, drawRoom(plan, view), DRAWN_PT);
  if (alignment === undefined) return;
  figure(book, drawRoom(plan, view, { raise: 1 }), DRAWN_PT);
  const shown = new Set(view.shades.map(({ shadeId }) => shadeId));
  notedList(
    book,
    alignment.windows
      .filter(({ shadeId }) => shown.has(shadeId))
      .map(({ windowName, words }) => ({ word: windowName, text: [{ words, style: TYPE.body }] })),
  );
}
