// The number being typed, huge, with keys under the thumb. The form beneath
// stays the truth: keys write into its fields, and it is what is sent.
import { keep, tell } from "./queue.js";

const form = document.getElementById("log");
const pad = document.getElementById("keypad");
if (form && pad) build(form, pad);
if (form && "indexedDB" in window) form.addEventListener("submit", submit);

// A reading is on the phone before anything is sent; then the page of the
// batch says the rest.
async function submit(event) {
  event.preventDefault();
  const fields = Object.fromEntries([...new FormData(form)].filter(([, v]) => v !== ""));
  const came = await keep(form.action, fields);
  await tell();
  if (came === "sent" || came === "waiting") location.assign(`/batches/${encodeURIComponent(form.dataset.batch)}`);
  else form.submit(); // refused: the server's page says what to mend
}

function build(form, pad) {
  const say = pad.dataset;
  const kinds = [
    { name: "do", word: say.oxygen, unit: "mg/L" },
    { name: "temp", word: say.temperature, unit: say.unitTemp },
    { name: "ph", word: "pH", unit: "" },
  ];
  let current = kinds[0];
  const row = element("div", { class: "kinds", role: "group", "aria-label": say.kinds });
  const typed = element("p", { class: "typed" });
  const output = element("output", {});
  const unit = element("span", {});
  typed.append(output, unit);
  const note = element("div", { class: "note", role: "status", hidden: "" });
  const keys = element("div", { class: "keys", role: "group", "aria-label": say.keys });
  pad.append(row, typed, note, keys);

  for (const kind of kinds) {
    kind.field = form.elements[kind.name];
    kind.button = element("button", { type: "button" });
    kind.button.addEventListener("click", () => choose(kind));
    kind.field.addEventListener("input", show);
    row.append(kind.button);
  }
  for (const key of ["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "erase"]) {
    const button = element("button", { type: "button" });
    if (key === "erase") button.setAttribute("aria-label", say.erase);
    button.textContent = key === "erase" ? "⌫" : key;
    button.addEventListener("click", () => press(key));
    keys.append(button);
  }
  document.getElementById("by-hand").addEventListener("focusin", (e) => {
    const kind = kinds.find((k) => k.name === e.target.name);
    if (kind) choose(kind, false);
  });

  function choose(kind) {
    current = kind;
    show();
  }

  function press(key) {
    const value = current.field.value;
    if (key === "erase") current.field.value = value.slice(0, -1);
    else if (value.length < 6 && !(key === "." && /[.,]/.test(value))) current.field.value = value + key;
    show();
  }

  function show() {
    for (const kind of kinds) {
      kind.button.setAttribute("aria-pressed", String(kind === current));
      kind.button.replaceChildren(element("b", {}, kind.field.value || kind.word), document.createTextNode(kind.field.value ? kind.unit : ""));
    }
    output.textContent = current.field.value;
    output.setAttribute("aria-label", current.word);
    unit.textContent = current.unit;
    const value = form.elements.do.value;
    for (const save of form.querySelectorAll("[data-save]")) if (save.type === "submit") save.textContent = value ? `${say.save} ${value} mg/L` : say.save;
    judge(parseFloat(value.replace(",", ".")), value);
  }

  // Compared with what the server said of this water and this hour.
  function judge(value, text) {
    const told = form.dataset;
    note.hidden = current.name !== "do" || !Number.isFinite(value) || !told.hold || text.length < 2;
    if (note.hidden) return;
    note.className = "note";
    if (value > told.hold * 1.03) return mark("care", say.over);
    if (value < told.low - 0.3 || value > +told.high + 0.3) return mark("care", say.doubt);
    return mark("good", `${say.fits} ${told.expected} mg/L.`);
  }

  function mark(kind, text) {
    note.classList.add(kind);
    note.replaceChildren(element("span", {}), element("p", {}, text));
  }

  show();
}

function element(name, attributes, text) {
  const e = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
  if (text !== undefined) e.textContent = text;
  return e;
}
