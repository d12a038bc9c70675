// The doors that ask nothing: this one or that one, which ring height, zero clicks.
import { assert, journey } from "./lib.mjs";

for (const size of ["phone", "small", "tablet"]) {
  for (const place of ["compare", "rings", "zero"]) {
    journey(`the door ${place} is accessible and fits`, { size }, async (visitor) => {
      await visitor.open(`#/${place}`);
      await visitor.seen("h1");
      await visitor.axe();
      await visitor.fits();
    });
  }
}

journey("two sights stand beside each other as one types", { size: "phone" }, async (visitor) => {
  await visitor.open("#/compare");
  await visitor.type("#versus-one", "1-6x24 540 g");
  await visitor.type("#versus-other", "2,5–10 × 50, 640 g");
  await visitor.until("the names follow", () => {
    const names = [...document.querySelectorAll(".versus__name")].map((name) => name.textContent);
    return names[0].includes("1–6") && names[1].includes("2.5–10");
  });
  const rows = await visitor.page.$$eval(".versus__verdict", (list) => list.map((row) => row.textContent));
  assert.equal(rows.length, 7);
  assert.match(rows[4], /1–6.*lighter/, "the mass is stated, so it is decided");
});

journey("a line that is no sight is told so, and the other stays", { size: "phone" }, async (visitor) => {
  await visitor.open("#/compare");
  await visitor.type("#versus-one", "56x8");
  await visitor.keys("Tab");
  const said = await visitor.text("#versus-one-error");
  assert.match(said, /8x56/);
  await visitor.axe();
  await visitor.type("#versus-one", "8x56");
  await visitor.seen(".versus");
});

journey("a saddle height follows bell, barrel, rail and tube", { size: "phone" }, async (visitor) => {
  await visitor.open("#/rings");
  await visitor.type("#rings-bell", "63 mm");
  await visitor.type("#rings-barrel", "22 mm");
  await visitor.type("#rings-rail", "24 mm");
  // 63/2 + 2 − (24 − 11) = 20.5 over the rail, 5.5 to the saddle of a 30 mm tube: 0.22 in.
  await visitor.until("the saddle stands", () => /^(5\.5.mm|0\.22.in)$/.test(document.querySelector(".tool__line").textContent));
  await visitor.tap("label[for=rings-under]");
  // The rail under the bell: 33.5 over it, 18.5 to the saddle, 0.73 in.
  await visitor.until("the rail counts", () => /^(19.mm|18\.5.mm|0\.73.in)$/.test(document.querySelector(".tool__line").textContent));
});

journey("a rail is told by its own measures", { size: "phone" }, async (visitor) => {
  await visitor.open("#/rings");
  await visitor.type("#rings-bell", "63 mm");
  await visitor.type("#rings-barrel", "18 mm");
  await visitor.tap("label:has([name=rings-made][value=stanag_4694])");
  await visitor.gone("#rings-rail");
  await visitor.type("#rings-receiver", "34 mm");
  await visitor.type("#rings-over", "3 mm");
  // 34/2 + 3 = 20 over the bore; 63/2 + 2 − (20 − 9) = 22.5 over the rail, 7.5 to the saddle: 0.3 in.
  await visitor.until("the saddle stands", () => /^(7\.5.mm|0\.3.in|0\.30.in)$/.test(document.querySelector(".tool__line").textContent));
  await visitor.until("the rail's height stands", () => /(20.mm|0\.79.in) over the bore/.test(document.querySelector(".tool__rail").textContent));
  await visitor.type("#rings-width", "19 mm");
  await visitor.until("another width is told", () => /another rail/.test(document.querySelector(".tool__rail").textContent));
  await visitor.type("#rings-width", "21 mm");
  await visitor.until("the right width is not", () => !/another rail/.test(document.querySelector(".tool__rail").textContent));
  await visitor.type("#rings-over", "3 miles");
  await visitor.keys("Tab");
  await visitor.seen("#rings-over-error");
  await visitor.axe();
  await visitor.fits();
});

journey("a group becomes clicks, by keyboard alone", { size: "desk" }, async (visitor) => {
  await visitor.open("#/zero");
  await visitor.type("#zero-distance", "100 m");
  await visitor.type("#zero-height", "6 cm");
  await visitor.type("#zero-side", "4 cm");
  await visitor.tabTo("input[name=zero-click]");
  await visitor.keys("ArrowLeft", "ArrowLeft", "ArrowLeft", "ArrowLeft", "ArrowLeft");
  await visitor.until("a click is chosen", () => document.querySelector("input[name=zero-click]:checked") !== null);
  const chosen = await visitor.page.$eval("input[name=zero-click]:checked", (input) => input.value);
  const clicks = { tenth_mrad: [6, 4], twentieth_mrad: [12, 8], quarter_moa: [8, 6], third_moa: [6, 4], eighth_moa: [17, 11] }[chosen];
  const line = await visitor.text(".tool__line");
  assert.equal(line, `Up ${clicks[0]} clicks, left ${clicks[1]} clicks`);
});
