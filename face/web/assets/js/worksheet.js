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
  const native = () => { form.removeEventListener("submit", submit); form.requestSubmit(form.elements.ask); };
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
  for (const note of answer.notes ?? []) output.append(element("span", "say-more", ` ${note}`));
  for (const old of output.parentElement.querySelectorAll(".figures, .cautions, figure, .scroll")) old.remove();
  const cautions = element("ul", "cautions");
  cautions.append(...(answer.cautions ?? []).map((text) => element("li", "", text)));
  const figures = element("dl", "figures");
  for (const line of answer.lines ?? []) {
    const row = element("div");
    const value = element("dd", "", line.Value);
    value.dataset.key = line.Key;
    row.append(element("dt", "", line.Label), value);
    figures.append(row);
  }
  output.after(figures, ...(answer.grids ?? []).map(table), cautions);
}

function table(grid) {
  const frame = element("div", "scroll gap");
  frame.tabIndex = 0;
  frame.setAttribute("role", "region");
  frame.setAttribute("aria-label", grid.Label);
  const made = document.createElement("table");
  made.createCaption().textContent = grid.Label;
  const head = made.createTHead().insertRow();
  for (const text of grid.Heads) head.append(heading("col", text));
  const body = made.createTBody();
  for (const cells of grid.Rows) {
    const row = body.insertRow();
    row.append(heading("row", cells[0]));
    for (const text of cells.slice(1)) row.insertCell().textContent = text;
  }
  frame.append(made);
  return frame;
}

function heading(scope, text) {
  const cell = element("th", "", text);
  cell.scope = scope;
  return cell;
}

function element(name, kind, text) {
  const e = document.createElement(name);
  if (kind) e.className = kind;
  if (text) e.textContent = text;
  return e;
}
