// A load that is ticked is on the phone before anything is sent; without
// signal the card says so and the next one is there to be ticked. A release that
// waits on this phone opens its loads here.
import { keep, tell, waiting } from "./queue.js";

if ("indexedDB" in window) {
  for (const form of document.querySelectorAll("form[data-keep]")) form.addEventListener("submit", tick);
  open();
}

async function open() {
  const look = `${location.pathname}/release`;
  const released = (await waiting()).some((e) => !e.refused && new URL(e.action, location.href).pathname === look && e.fields.released === "yes");
  if (!released) return;
  for (const button of document.querySelectorAll("form[data-keep] button[disabled]")) {
    const here = document.createElement("input");
    Object.assign(here, { type: "hidden", name: "released-here", value: "1" });
    button.form.append(here);
    button.disabled = false;
  }
}

async function tick(event) {
  event.preventDefault();
  const form = event.currentTarget;
  const button = event.submitter ?? form.querySelector("button[type=submit]");
  button.disabled = true;
  const fields = Object.fromEntries([...new FormData(form)].filter(([, v]) => v !== ""));
  if (button.name) fields[button.name] = button.value;
  const came = await keep(form.action, fields);
  await tell();
  if (form.dataset.release && came !== "refused") location.assign(`/run/${encodeURIComponent(form.dataset.release)}`);
  else if (came === "sent") location.reload();
  else if (came === "waiting") form.closest("li, section").classList.add("kept-here");
  else plainly(form, button); // refused: the server's page says what to mend
}

function plainly(form, button) {
  button.disabled = false;
  form.removeEventListener("submit", tick);
  form.requestSubmit(button);
}
