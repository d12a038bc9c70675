// The counter: three invented customers within fifteen taps and one screen each.
import { assert, journey } from "./lib.mjs";

const pick = (part, at) => `.crow:has(input[name="counter-${part}"]) .segment:nth-child(${at})`;

/** Kind of shooting, and what is tapped then. The list counts as two taps. */
const CUSTOMERS = [
  ["boar_by_night", [pick("age", 5), pick("glasses", 2), pick("annoys", 1), pick("rings", 4), pick("band", 4), pick("zoom", 1)]],
  ["driven", [pick("age", 3), pick("glasses", 1), pick("annoys", 2), pick("rings", 1), pick("band", 3), pick("zoom", 2)]],
  ["paper_100", [pick("age", 6), pick("glasses", 3), pick("annoys", 5), pick("rings", 5), pick("band", 2), pick("zoom", 3)]],
];

journey("three customers one after the other", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.seen("#counter-kind");
  for (const [kind, taps] of CUSTOMERS) {
    assert.equal(await visitor.page.$$eval(".counter input:checked", (on) => on.length), 0, "nothing is left of the one before");
    visitor.counted = 2;
    await visitor.page.select("#counter-kind", kind);
    for (const what of taps) await visitor.tap(what);
    await visitor.seen(".counter__advice:not(.stale) .line__glass");
    assert.ok(visitor.counted <= 15, `${visitor.counted} taps`);
    const [tall, room] = await visitor.page.evaluate(() => [document.documentElement.scrollHeight, innerHeight]);
    assert.ok(tall <= room, `${tall} px on a screen of ${room}`);
    await visitor.fits();
    await visitor.axe();
    await visitor.tap(".counter__acts .button:last-child");
    await visitor.until("nothing is left", () => !document.querySelector(".counter input:checked") && !document.querySelector(".counter__advice"));
    const left = await visitor.page.evaluate(() => localStorage.getItem("scopewright.answers"));
    assert.equal(left, null, "nothing is left on the device");
  }
});

journey("undo takes back the last answer", { size: "tablet" }, async (visitor) => {
  await visitor.open("#/counter");
  await visitor.tap(pick("age", 4));
  await visitor.tap(pick("age", 6));
  await visitor.tap(".counter__acts .button:first-child");
  assert.ok(await visitor.page.$eval(`${pick("age", 4)} input`, (radio) => radio.checked));
});
