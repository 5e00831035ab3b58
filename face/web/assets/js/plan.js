// Without signal the house's own engine plans on the phone: a job file that was
// pasted, or what the holding wanted when it was last seen.
import { planHere } from "./engine.js";
import { now } from "./queue.js";

const form = document.getElementById("plan-form");
const shown = document.getElementById("planned-here");
const wanted = form.dataset.wanted && fetch(form.dataset.wanted).then((answer) => answer.json()).catch(() => null);

const button = form.querySelector("[data-here]");
button.hidden = false;
button.addEventListener("click", show);

async function show() {
  const typed = form.querySelector("textarea").value.trim();
  const carried = (await wanted) ?? {};
  const job = typed || carried.job || "";
  shown.hidden = false;
  shown.textContent = shown.dataset.working;
  try {
    write(await planHere(job, now().toISOString(), carried.zone ?? "", carried.zone_data ?? ""));
  } catch {
    shown.textContent = shown.dataset.missing;
  }
}

function write(told) {
  shown.replaceChildren();
  for (const text of [...told.problems, ...told.unmet]) add("p", text);
  for (const batch of told.batches) {
    add("h3", batch.name);
    add("p", batch.line);
    const list = add("ol", "");
    for (const step of batch.steps) {
      const item = document.createElement("li");
      item.textContent = `${step.at}: ${step.text}`;
      list.append(item);
    }
  }
  if (told.batches.length + told.unmet.length + told.problems.length === 0) add("p", shown.dataset.nothing);
}

function add(kind, text) {
  const made = document.createElement(kind);
  made.textContent = text;
  shown.append(made);
  return made;
}
