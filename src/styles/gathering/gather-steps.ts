import type { ClothMark, StyleStep } from "../../shade-plan/index.ts";
import { LADDER, listed, SHOT } from "../../words/index.ts";
import { stepWords } from "../base/step-words.ts";
import type { StyleStepInput } from "../style.ts";

/** `tape 1 at 1/2 in, 2 at 13 in and 3 at 26 in`. */
export function marksText(marks: readonly ClothMark[], name: string, len: (mm: number) => string): string {
  return listed(marks.map(({ atMm }, i) => `${i === 0 ? `${name} ` : ""}${i + 1} at ${len(atMm)}`));
}

/** Marks of one kind on the flat cloth, in the order in which they are measured. */
export function marksOf({ form }: StyleStepInput, kind: ClothMark["kind"]): ClothMark[] {
  return form.marks.filter((mark) => mark.kind === kind);
}

/** Tapes, covers and bags cut before the sewing begins. */
export function cutHaberdashery(input: StyleStepInput): StyleStep[] {
  const { len } = stepWords(input);
  const { haberdashery } = input.form;
  if (haberdashery.length === 0) return [];
  const lines = haberdashery.map(({ label, count, lengthMm, id }) =>
    id === "shot-bags"
      ? `Fill ${count} small bags with steel shot, ${len(lengthMm)} long, and sew each shut with two lines of stitching.`
      : `${label}: ${count === 1 ? "one length of" : `${count} lengths, each`} ${len(lengthMm)}.`,
  );
  return [
    {
      id: "cut-gather-tapes",
      chapter: "cut",
      after: "cut-bar",
      title: "Cut tapes and strips",
      text: lines.join(" "),
      check: "Each tape is longer than the cloth that it gathers by a finger’s length at both ends.",
      ...(haberdashery.some(({ id }) => id === "shot-bags") ? { caution: SHOT } : {}),
    },
  ];
}

/** A frill goes on the flat cloth along the hem, before anything is drawn up; at the sides once that is done. */
export function sewFrill(input: StyleStepInput): StyleStep[] {
  const { gather } = input.shade.making;
  const { frill } = input.form;
  const count = input.cloth.trims.find(({ id }) => id === "frill")?.count ?? 1;
  if (frill === undefined) return [];
  const { len } = stepWords(input);
  const atHem = frill.edges !== "sides";
  const atSides = frill.edges !== "hem";
  return [
    {
      id: "make-frill",
      chapter: "make",
      after: "make-bottom-hem",
      title: "Sew on the frill",
      text: [
        `Join the ${count === 1 ? "strip" : `${count} strips`} of the frill end to end, and ${frill.double ? "fold it lengthwise, right side out, and press" : "turn a narrow hem on both long edges"}.`,
        `It is gathered to ${gather.frillFullness} times the edge.`,
        ...(atHem
          ? [
              `For the lower edge gather it${frill.double ? " along its raw edges" : " along one edge"} until it is as long as the hem of the flat cloth, pin it on the face, its lower edge level with the hem, and sew it along the gathers.`,
            ]
          : []),
        ...(atSides
          ? [
              `For the sides wait until the cloth is drawn up: gather it then to ${len(input.size.finishedLengthMm)} for each, and sew it along the finished edge.`,
            ]
          : []),
      ].join(" "),
      check: `The frill stands ${len(frill.depthMm)} deep all along, as full at the corners as in the middle.`,
      figures: ["shape.frill", "cloth.frill-cut-depth"],
    },
  ];
}

/** Rod behind, bags of shot, or a word on having neither. */
export function hangWeight(input: StyleStepInput, lowestMm: number): StyleStep[] {
  const { form, grid } = input;
  const { len } = stepWords(input);
  const columns = grid.columns.length;
  if (form.bar !== undefined) {
    return [
      {
        id: "string-bar",
        chapter: "string",
        replaces: ["string-bar"],
        title: "Hang the rod behind",
        text: `Sew the strip for its cover into a tube, slide the rod in and close both ends. Hang it behind the shade and sew the cover to the lowest ring of each of the ${columns} columns, each as far from the left end as its column is from the edge. The cloth below hangs free in front of it.`,
        check: `The rod lies level, ${len(lowestMm)} above the lowest point of the scallops, and no scallop is caught on it.`,
        sheet: "back",
      },
    ];
  }
  if (input.shade.making.gather.weight === "none") return [];
  return [
    {
      id: "string-shot",
      chapter: "string",
      title: "Hang the bags of shot",
      text: `Sew one bag of shot behind the lowest ring of each of the ${columns} columns, where it does not show from the room.`,
      check: "All columns hang straight down when the shade is lowered.",
      caution: SHOT,
      sheet: "back",
    },
  ];
}

/** Dressed by hand, so that the folds come forward. */
export function dress(input: StyleStepInput, words: string): StyleStep {
  const { grid } = input;
  const { len } = stepWords(input);
  return {
    id: "train-fold",
    chapter: "train",
    replaces: ["train-fold"],
    title: "Dress the scallops",
    text: `${words} Raised, the shade is ${len(grid.raisedHeightMm)} from the top of the board to the lowest point of its scallops.`,
    check:
      "The scallops are alike from side to side, lowered and raised, and nothing hangs behind the cords.",
    caution: LADDER,
    sheet: "front",
    figures: ["shape.raised-height"],
  };
}
