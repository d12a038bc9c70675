// Every page that pictures are taken of, and how a visitor gets there.
// `readme: "size theme"` names the picture that README shows: it goes to docs/<name>.png.
export const pages = [
  {
    name: "front",
    arrive: async (visitor) => {
      await visitor.open();
      await visitor.seen("h1");
    },
  },
];
