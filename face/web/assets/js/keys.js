// Number keys under the thumb, since the system's are too small for gloves.
export function element(name, attributes, text) {
  const e = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
  if (text !== undefined) e.textContent = text;
  return e;
}

// numberKeys makes the keys; press is told which one.
export function numberKeys(press, words) {
  const keys = element("div", { class: "keys", role: "group", "aria-label": words.keys });
  for (const key of ["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "erase"]) {
    const button = element("button", { type: "button" }, key === "erase" ? "⌫" : key);
    if (key === "erase") button.setAttribute("aria-label", words.erase);
    button.addEventListener("click", () => press(key));
    keys.append(button);
  }
  return keys;
}

// typed is what stands after a key.
export function typed(value, key) {
  if (key === "erase") return value.slice(0, -1);
  return value.length < 6 && !(key === "." && /[.,]/.test(value)) ? value + key : value;
}
