// A worksheet asks the server; without signal it asks the engine in the page.
import { calc, engine } from "./engine.js";

const form = document.querySelector("form[data-sheet]");
if (form) {
  form.addEventListener("submit", submit);
  const idle = window.requestIdleCallback ?? ((work) => setTimeout(work, 1500));
  idle(() => engine().catch(() => {})); // so that it is there when the signal is not
  askedWithoutServer();
}

// An address with inputs that the offline worker answered with the page as it
// was seen before: the engine fills in the answer.
function askedWithoutServer() {
  const asked = new URLSearchParams(location.search);
  asked.delete("lang"); asked.delete("units"); asked.delete("look");
  if ([...asked.keys()].length === 0 || form.dataset.asked === location.search) return;
  for (const [name, value] of asked) if (form.elements[name]) form.elements[name].value = value;
  if (!navigator.onLine || form.dataset.asked === "") work().catch(() => {});
}

async function submit(event) {
  event.preventDefault();
  const native = () => { form.removeEventListener("submit", submit); form.requestSubmit(); };
  try {
    await fetch("/healthz", { cache: "no-store", signal: AbortSignal.timeout(2500) });
    native();
  } catch {
    await work().catch(native);
  }
}

async function work() {
  const values = {};
  for (const field of form.elements) {
    if (!field.name || field.type === "submit" || (field.type === "checkbox" && !field.checked)) continue;
    const text = field.value.trim();
    if (text) values[field.name] = [withUnit(field, text)];
  }
  show(await calc(form.dataset.sheet, values));
}

// A bare number takes the unit that stands in the box.
function withUnit(field, text) {
  const unit = field.parentElement.querySelector("span")?.textContent;
  return unit && /^[-−+]?[\d.,/ ½¼¾]+$/.test(text) ? `${text} ${unit}` : text;
}

function show(answer) {
  const output = document.querySelector("output.result");
  output.replaceChildren();
  output.classList.toggle("cannot", Boolean(answer.faults));
  const say = document.createElement("span");
  if (answer.faults) say.textContent = answer.faults.map((f) => [f.what, f.allowed, f.advice].filter(Boolean).join("; ")).join(" ");
  else { say.className = "say"; say.textContent = answer.answer; }
  output.append(say);
  const figures = document.createElement("dl");
  figures.className = "figures";
  for (const line of answer.lines ?? []) {
    const row = document.createElement("div");
    const name = document.createElement("dt");
    const value = document.createElement("dd");
    name.textContent = line.Label;
    value.textContent = line.Value;
    value.dataset.key = line.Key;
    row.append(name, value);
    figures.append(row);
  }
  document.querySelector(".figures")?.remove();
  output.after(figures);
}
