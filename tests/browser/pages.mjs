// Every page that pictures are taken of, and how a visitor gets there.
// `readme: [{ name: "advice-360-day.webp" }]` names the pictures that documents show: they go to
// docs/; with `part` only the element that it selects.
// `sizes: ["phone"]` and `whole: false` (the screen, not the whole page) are possible.
import { answered } from "./lib.mjs";

const at = (where, until) => async (visitor) => {
  await answered(visitor);
  await visitor.open(where);
  await visitor.seen(until);
};

const QUESTIONS = ["quarry", "manner", "light", "ranges", "money", "rifle", "eye", "mount"];

/** Those that sharpen the advice: seen with the pictures, walked with the others. */
const SHARPEN = ["sight_now", "zoom", "detail", "carry", "distance", "lit_mark", "cheek", "barrel", "place", "habits"];

export const pages = [
  {
    name: "front",
    arrive: async (visitor) => {
      await visitor.open();
      await visitor.seen("h1");
    },
  },
  ...QUESTIONS.map((key) => ({
    name: `question-${key}`,
    arrive: at(`#/question/${key}`, "h1"),
    ...(key === "light" ? { readme: [{ name: "question-360-day.webp" }] } : {}),
  })),
  ...SHARPEN.map((key) => ({ name: `sharpen-${key}`, arrive: at(`#/question/${key}`, "h1") })),
  { name: "check", arrive: at("#/check", ".told__row") },
  { name: "advice", arrive: at("#/advice", ".needs"), readme: [{ name: "advice-360-day.webp" }, { name: "view-360-day.webp", part: ".view__pair" }] },
  { name: "compare", arrive: at("#/compare", "h1") },
  { name: "rings", arrive: at("#/rings", "h1") },
  { name: "zero", arrive: at("#/zero", "h1") },
  { name: "pictures", arrive: at("#/pictures", ".view__picture") },
  { name: "shop", arrive: at("#/shop", "h1") },
  { name: "after", arrive: at("#/after", "h1") },
  { name: "about", arrive: at("#/about", "h1") },
  { name: "shelf", arrive: at("#/shelf", "h1") },
  { name: "club", arrive: at("#/club", ".club__preview iframe, .club__preview scopewright-advisor") },
  { name: "counter", arrive: at("#/counter", ".counter__advice"), readme: [{ name: "counter-1180-day.webp" }], sizes: ["tablet", "desk"], whole: false },
];
