// A load that is ticked is on the phone before anything is sent; without
// signal the card says so and the next one is there to be ticked.
import { keep, tell } from "./queue.js";

if ("indexedDB" in window) {
  for (const form of document.querySelectorAll("form[data-keep]")) form.addEventListener("submit", tick);
}

async function tick(event) {
  event.preventDefault();
  const form = event.currentTarget;
  const button = form.querySelector("button[type=submit]");
  button.disabled = true;
  const fields = Object.fromEntries([...new FormData(form)].filter(([, v]) => v !== ""));
  const came = await keep(form.action, fields);
  await tell();
  if (came === "sent") location.reload();
  else if (came === "waiting") form.closest("li, section").classList.add("kept-here");
  else form.submit(); // refused: the server's page says what to mend
}
