// The counting bench without a round trip: every key is counted in the page,
// kept on the phone until it is saved, and felt where the phone can tremble.
// The hidden field is the truth; it is what the form sends.
import { calc } from "./engine.js";
import { keep, tell } from "./queue.js";

const form = document.getElementById("bench");
if (form) build(form);

function build(form) {
  const next = "|";
  const kept = `aerosteep-bench-${form.dataset.batch}`;
  const letters = [...form.querySelectorAll("[data-here]")].map((e) => e.dataset.here);
  const field = form.elements.tally;
  if (!field.value) field.value = recall() ?? "";
  show();
  work();

  form.addEventListener("submit", (event) => {
    const key = event.submitter?.value;
    if (key === "save") return save(event);
    if (key === "set") return; // the server checks the set-up and keeps it
    event.preventDefault();
    press(key);
  });
  addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target.matches("input:not([type=checkbox]), textarea, select")) return;
    const onKey = event.target.matches("button, a, summary, input");
    if (letters.includes(event.key)) press(event.key);
    else if (event.key === "Backspace") press("undo");
    else if (event.key === "Enter" && !onKey) press(next);
    else return;
    event.preventDefault();
  });

  function press(key) {
    if (key === "undo") field.value = field.value.slice(0, -1);
    else field.value += key;
    if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.(key === next ? [30, 40, 30] : key === "undo" ? 60 : 20);
    remember();
    show(key);
    if (key === next || key === "undo") work();
  }

  function show(key) {
    const fields = field.value.split(next);
    const here = fields.at(-1);
    const say = form.dataset;
    for (const e of form.querySelectorAll("[data-here]")) e.textContent = count(here, e.dataset.here);
    const nth = say.field.replace("{n}", fields.length);
    document.getElementById("bench-field").textContent = nth;
    const name = form.querySelector(`[name=press][value="${CSS.escape(key ?? "")}"] .tally-name`)?.firstChild?.textContent;
    const said = key === "undo" ? say.undone : name ? `${name} ${say.count.replace("{n}", count(here, key))}` : nth;
    if (key) document.getElementById("bench-said").textContent = said;
  }

  // The server words the estimate; without signal the engine in the page does.
  async function work() {
    const asked = field.value;
    try {
      const sent = new URLSearchParams(new FormData(form));
      const answer = await fetch(form.action, { method: "POST", body: sent, signal: AbortSignal.timeout(4000) });
      if (!answer.ok) return;
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      if (asked === field.value) document.getElementById("estimates").replaceWith(page.getElementById("estimates"));
    } catch {
      await alone().catch(() => {});
    }
  }

  async function alone() {
    const fields = field.value.split(next).slice(0, -1);
    if (fields.length === 0) return;
    for (const line of document.querySelectorAll("#estimates [data-group]")) {
      const key = line.dataset.group;
      const counts = fields.map((f) => count(f, key)).join(",");
      const strands = key === "s";
      const values = { [strands ? "intersections" : "counts"]: [counts] };
      for (const flag of ["field-diameter", "coverslip-side", "drop-volume", "dilution", ...(strands ? ["grid"] : [])])
        if (form.elements[flag].value) values[flag] = [form.elements[flag].value];
      const answer = await calc(strands ? "hyphae" : "field-count", values);
      const more = fields.length > 1 ? await calc("fields-needed", { counts: [counts], within: ["20"] }) : {};
      const name = document.createElement("b");
      name.textContent = line.querySelector("b").textContent;
      line.querySelector("p").replaceChildren(name, ` ${answer.answer ?? ""} ${more.answer ?? ""} `, counts);
    }
  }

  async function save(event) {
    if (!("indexedDB" in window)) return;
    event.preventDefault();
    const fields = [...new FormData(form)].filter(([name]) => name !== "look");
    const looked = form.querySelectorAll("[name=look]:checked");
    const came = await keep(form.action, { ...Object.fromEntries(fields), press: "save", look: [...looked].map((e) => e.value).join("") });
    await tell();
    if (came === "sent" || came === "waiting") {
      forget();
      location.assign(`/batches/${encodeURIComponent(form.dataset.batch)}`);
    } else native();
  }

  // Refused: the server's page says what to mend.
  function native() {
    const press = document.createElement("input");
    Object.assign(press, { type: "hidden", name: "press", value: "save" });
    form.append(press);
    form.submit();
  }

  function count(keys, letter) { return keys.split(letter).length - 1; }
  function recall() { try { return localStorage.getItem(kept); } catch { return null; } }
  function remember() { try { localStorage.setItem(kept, field.value); } catch { /* the page still has it */ } }
  function forget() { try { localStorage.removeItem(kept); } catch { /* nothing was kept */ } }
}
