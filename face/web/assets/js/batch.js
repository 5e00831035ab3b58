// A reading that waits for signal moves the forecast on the phone: the house's
// own engine makes it anew from what the server said last.
import { foresee } from "./engine.js";
import { now, waiting } from "./queue.js";

const stand = document.querySelector("[data-carried]");
const address = stand.dataset.carried;
const asked = fetch(address).then((answer) => answer.text()); // also keeps it for when there is no signal
refresh().catch(() => {}); // built without an engine: the server says it later
addEventListener("online", () => refresh().catch(() => {}));

async function refresh() {
  const log = `${location.pathname}/log`;
  const mine = (await waiting()).filter((e) => !e.refused && new URL(e.action, location.href).pathname === log);
  if (mine.length === 0) return;
  const told = await foresee(await asked, mine.map((e) => e.fields), now().toISOString());
  if (told.fault) return say(told.fault);
  for (const [key, text] of Object.entries(told.figures)) {
    for (const place of document.querySelectorAll(`[data-key="${key}"]`)) place.textContent = text;
  }
  stand.dataset.minDo = told.min_do_mg_per_l ?? "";
  stand.dataset.chance = told.chance_below_limit ?? "";
  say(stand.dataset.here.replace("{n}", mine.length).replace("{chance}", told.figures.chance_below_limit ?? "").replace("{low}", told.figures.min_do_mg_per_l ?? ""));
}

function say(text) {
  stand.hidden = false;
  stand.querySelector("p").textContent = text;
}
