// The pump-off test: a big clock, a reading every 15 s with one thumb, a line
// that grows. The readings stand in the form's text, which is what is sent.
import { calc } from "./engine.js";
import { element, numberKeys, typed } from "./keys.js";
import { keep, tell } from "./queue.js";

const every = 15; // s between readings
const enoughRise = 8; // readings of the rise: two over what a fit needs
const form = document.getElementById("pumpoff");
const watch = document.getElementById("stopwatch");
if (form && watch) build(form, watch);
if (form) form.addEventListener("submit", submit);

// What is kept is on the phone before anything is sent.
async function submit(event) {
  if (event.submitter?.name === "keep" && "indexedDB" in window) {
    event.preventDefault();
    if (form.dataset.keeping) return; // a thumb that pressed twice
    form.dataset.keeping = "1";
    const fields = Object.fromEntries([...new FormData(form)].filter(([, v]) => v !== ""));
    const came = await keep(form.action, { ...fields, keep: "1" });
    await tell();
    if (came === "sent") location.assign(`${form.dataset.back}&kept=1`);
    else if (came === "waiting") location.assign(form.dataset.back);
    else plainly(event.submitter); // refused: the server's page says what to mend
  } else if (!navigator.onLine) {
    event.preventDefault();
    await answer().catch(() => plainly(event.submitter));
  }
}

function plainly(submitter) {
  form.removeEventListener("submit", submit);
  form.requestSubmit(submitter);
}

function inputs() {
  const values = { file: [form.elements.file.value], limit: [`${form.dataset.limit} mg/L`] };
  const temp = withUnit(form.elements.temp);
  if (temp) {
    values.temp = [temp];
    if (form.dataset.altitude) values.altitude = [form.dataset.altitude];
  }
  const lag = withUnit(form.elements["probe-tau"]);
  if (lag) values["probe-tau"] = [lag];
  return values;
}

function withUnit(field) {
  const text = field?.value.trim() ?? "";
  const unit = field?.parentElement.querySelector("span")?.textContent;
  return text && unit && /^[-−+]?[\d.,/ ½¼¾]+$/.test(text) ? `${text} ${unit}` : text;
}

// answer shows what the house's own engine says of the readings so far.
async function answer() {
  const said = await calc("uptake", inputs());
  const output = document.querySelector("output.result");
  output.hidden = false;
  output.className = said.faults ? "result cannot" : "result";
  output.textContent = said.faults ? said.faults.map((f) => [f.what, f.advice].filter(Boolean).join("; ")).join(" ") : [said.answer, ...(said.notes ?? [])].join(" ");
  return said;
}

function build(form, watch) {
  const say = watch.dataset;
  const rows = []; // {s, air, oxygen}
  let began = 0, backAt, text = "", enough = false;
  document.getElementById("by-text").open = form.elements.file.value !== "";
  if (form.elements.file.value !== "") return; // a test that was worked out: nothing to run

  const clock = element("p", { class: "big-clock", role: "timer", "aria-label": say.clock }, "0:00");
  const note = element("div", { class: "note", role: "status" });
  const number = element("p", { class: "typed" });
  const output = element("output", {});
  number.append(output, element("span", {}, "mg/L"));
  const take = element("button", { type: "button", class: "act full", hidden: "" }, say.take);
  const turn = element("button", { type: "button", class: "act full" }, say.off);
  const again = element("button", { type: "button", class: "act plain full", hidden: "" }, say.again);
  const picture = line(say.line);
  const keys = numberKeys((key) => { text = typed(text, key); show(); }, say);
  for (const part of [number, keys]) part.hidden = true;
  watch.append(clock, note, number, keys, take, turn, picture.figure, again);
  turn.addEventListener("click", next);
  take.addEventListener("click", reading);
  again.addEventListener("click", () => { rows.pop(); write(); show(); });
  setInterval(tick, 250);
  note.hidden = true;

  const seconds = () => (performance.now() - began) / 1000;

  // next goes from before the test to the air off, then to the air back on.
  function next() {
    if (!began) {
      began = performance.now();
      for (const part of [number, keys, take]) part.hidden = false;
      clock.scrollIntoView(); // the guide has been read; the keys are wanted now
      turn.textContent = say.backOn;
      turn.classList.add("plain");
    } else {
      backAt = Math.round(seconds());
      turn.hidden = true;
      form.elements.on_at.value = backAt;
    }
    show();
  }

  function reading() {
    const oxygen = parseFloat(text.replace(",", "."));
    if (!Number.isFinite(oxygen) || oxygen > 50) return;
    const s = Math.max(Math.round(seconds()), (rows.at(-1)?.s ?? -1) + 1);
    rows.push({ s, air: backAt === undefined ? 0 : 1, oxygen });
    text = "";
    write();
    show();
    judge();
  }

  function write() {
    form.elements.file.value = rows.length ? ["seconds;air;do_mg_per_l", ...rows.map((r) => `${r.s};${r.air};${r.oxygen}`)].join("\n") : "";
  }

  // judge asks the engine whether the fall says enough: a range within a fifth
  // either way. Without an engine sixteen readings (four minutes) are enough.
  async function judge() {
    const fall = rows.filter((r) => r.air === 0).length;
    if (backAt !== undefined || fall < 5) return;
    try {
      const said = await answer();
      const range = said.data?.our_mg_per_l_h;
      enough = Boolean(range) && range.low95 > 0 && range.high95 - range.low95 < 0.4 * range.estimate;
    } catch {
      enough = fall >= 16;
    }
    enough ||= fall >= 16;
    show();
  }

  function tick() {
    if (!began) return;
    const s = Math.floor(seconds());
    clock.textContent = `${Math.floor(s / 60)}:${String(s % 60).padStart(2, "0")}`;
    const left = every - (s % every);
    clock.classList.toggle("due", left <= 3 || left === every);
    if (!note.classList.contains("stop") && !enough) status(left);
  }

  function status(left) {
    const taken = say.taken.replace("{n}", rows.length);
    if (backAt !== undefined) mark("note", rows.filter((r) => r.air).length >= enoughRise ? say.riseEnough : `${say.rising} ${taken}`);
    else mark("note", left === every ? say.now : `${say.next.replace("{n}", left)} ${taken}`);
  }

  function mark(kind, words) {
    note.hidden = false;
    note.className = kind;
    if (note.textContent !== words) note.textContent = words;
    note.setAttribute("role", kind.includes("stop") ? "alert" : "status");
  }

  function show() {
    output.textContent = text;
    take.disabled = text === "";
    take.textContent = text ? `${say.take} ${text} mg/L` : say.take;
    again.hidden = rows.length === 0;
    picture.draw(rows, +form.dataset.limit);
    const [before, last] = rows.slice(-2);
    const low = rows.at(-1)?.oxygen <= +form.dataset.limit || (last && last.oxygen - (before.oxygen - last.oxygen) < +form.dataset.limit);
    if (backAt !== undefined) { enough = false; mark("note", say.rising); } else if (low && rows.length) mark("note stop", say.limitWord);
    else if (enough) mark("note good", say.enough);
    else if (began) mark("note", say.taken.replace("{n}", rows.length));
    if (backAt === undefined && (low || enough)) turn.classList.remove("plain");
  }
  show();
}

// line draws the readings as they come, the limit as heavy dashes.
function line(words) {
  const figure = element("figure", { class: "gap", hidden: "" });
  const plot = element("div", { class: "plot low" });
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  for (const [key, value] of Object.entries({ viewBox: "0 0 1000 400", preserveAspectRatio: "none", role: "img", "aria-label": words })) svg.setAttribute(key, value);
  plot.append(svg);
  figure.append(plot);
  const path = (kind, d) => {
    const p = document.createElementNS("http://www.w3.org/2000/svg", "path");
    p.setAttribute("class", kind);
    p.setAttribute("d", d);
    svg.append(p);
  };
  return { figure, draw };

  function draw(rows, limit) {
    figure.hidden = rows.length === 0;
    svg.replaceChildren();
    if (!rows.length) return;
    const most = Math.max(...rows.map((r) => r.oxygen), limit + 1), least = Math.min(...rows.map((r) => r.oxygen), limit - 0.5);
    const x = (s) => (s / Math.max(240, rows.at(-1).s)) * 1000, y = (o) => 380 - ((o - least) / (most - least)) * 360;
    path("limit", `M0 ${y(limit)}H1000`);
    path("line", rows.map((r, i) => `${i ? "L" : "M"}${x(r.s)} ${y(r.oxygen)}`).join(""));
    path("ring", rows.map((r) => `M${x(r.s)} ${y(r.oxygen)}h.01`).join(""));
    path("ring-in", rows.slice(0, -1).map((r) => `M${x(r.s)} ${y(r.oxygen)}h.01`).join(""));
  }
}
