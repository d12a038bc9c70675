// Every page that pictures are taken of, and how a visitor gets there.
// `readme: ["advice-360-day.png"]` names the pictures that documents show: they go to docs/.
// `sizes: ["phone"]` and `whole: false` (the screen, not the whole page) are possible.
export const pages = [
  {
    name: "front",
    arrive: async (visitor) => {
      await visitor.open();
      await visitor.seen("h1");
    },
  },
  ...["compare", "rings", "zero"].map((place) => ({
    name: place,
    arrive: async (visitor) => {
      await visitor.open(`#/${place}`);
      await visitor.seen("h1");
    },
  })),
  {
    name: "pictures",
    arrive: async (visitor) => {
      await visitor.open("#/pictures");
      await visitor.seen(".view__picture");
    },
  },
];
