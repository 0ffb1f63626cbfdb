// Keys for whoever judges: 1 to 9 choose a grade, 0 says that it can't be told.
const form = document.querySelector("[data-judge]");

if (form) {
  form.querySelector("[data-keys]").hidden = false;
  let sent = false;
  form.addEventListener("submit", (event) => {
    // A second tap before the page answers is the same tap.
    if (sent) event.preventDefault();
    sent = true;
  });
  addEventListener("pageshow", () => { sent = false; });
  addEventListener("keydown", (event) => {
    const typing = event.target.closest("input, textarea, select");
    if (typing || event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
    const button = form.querySelector(`[data-key="${CSS.escape(event.key)}"]`);
    if (!button) return;
    event.preventDefault();
    button.click();
  });
}
