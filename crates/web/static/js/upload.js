// Sends each chosen photo by itself, with progress, two at a time. Without this the browser sends the form.
import * as say from "./text.js";
import { Sending } from "./sending.js";

const AT_ONCE = 2;

for (const form of document.querySelectorAll("form[data-upload]")) start(form);

function start(form) {
  const box = form.querySelector("[data-sending]");
  const list = form.querySelector("[data-files]");
  const bar = box.querySelector("progress");
  const status = form.querySelector("[data-upload-status]");
  const problem = form.querySelector("[data-upload-problem]");
  const inputs = [...form.querySelectorAll("input[type=file]")];
  let all = [];
  let underWay = false;

  const of = (...states) => all.filter((one) => states.includes(one.state));
  const tell = (sentence) => { if (status.textContent !== sentence) status.textContent = sentence; };

  function choose(files) {
    for (const file of files) {
      const same = all.some(({ file: f, state }) => state !== "left-out" && f.name === file.name && f.size === file.size && f.lastModified === file.lastModified);
      if (same) {
        tell(say.chosenAlready(file.name));
        continue;
      }
      const one = new Sending(file, form, ended);
      all.push(one);
      list.append(one.row);
    }
    show();
  }

  function show() {
    const left = all.filter((one) => one.state !== "left-out");
    box.hidden = !left.length;
    box.querySelector("h2").textContent = say.photos(left.length);
    bar.value = left.reduce((sum, one) => sum + one.share, 0) / Math.max(1, left.length);
    if (underWay) tell(say.sentSoFar(left.length, of("kept").length));
  }

  function fail(sentence, at) {
    problem.textContent = sentence;
    problem.hidden = false;
    at?.setAttribute("aria-invalid", "true");
    problem.scrollIntoView({ block: "center" });
  }

  function next() {
    while (of("sending").length < AT_ONCE && of("chosen").length) of("chosen")[0].send();
    show();
  }

  function ended() {
    if (!underWay) {
      show();
      return;
    }
    next();
    if (of("sending", "chosen").length) return;
    underWay = false;
    const [kept, refused, stopped] = [of("kept"), of("refused"), of("stopped")];
    if (kept.length && !refused.length && !stopped.length) {
      location.assign(kept.length === 1 ? kept[0].url : form.dataset.list);
      return;
    }
    const codes = refused.map((one) => one.refused.code);
    // Where the chart is the trouble, the field for its corners may help.
    if (codes.some((code) => code.includes("chart") || code.includes("corners"))) form.querySelector("[data-upload-corners]").open = true;
    form.querySelector("[data-upload-kept]").hidden = !kept.length;
    tell(say.outcome(kept.length, refused.length, stopped.length));
    if (refused.length === 1 && !kept.length) fail(refused[0].refused.message, inputs[0]);
    else if (refused.length) fail(say.someNotTaken(refused.length, refused.length + kept.length + stopped.length), inputs[0]);
  }

  for (const input of inputs) {
    // It is emptied after each choice, and its own "no file chosen" would mislead.
    input.dataset.live = "";
    input.addEventListener("change", () => {
      choose(input.files);
      // What is chosen next is added.
      input.value = "";
    });
  }
  list.addEventListener("resend", () => {
    underWay = true;
    problem.hidden = true;
  });

  const drop = form.querySelector(".drop");
  for (const kind of ["dragenter", "dragover"]) form.addEventListener(kind, (event) => { event.preventDefault(); drop.classList.add("over"); });
  for (const kind of ["dragleave", "drop"]) form.addEventListener(kind, () => drop.classList.remove("over"));
  form.addEventListener("drop", (event) => {
    event.preventDefault();
    choose(event.dataTransfer.files);
  });

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (underWay) return;
    problem.hidden = true;
    inputs[0].removeAttribute("aria-invalid");
    if (!of("chosen").length) {
      fail(say.chooseAPhoto(), inputs[0]);
      return;
    }
    if (form.elements.corners.value.trim() && of("chosen").length > 1) {
      fail(say.cornersOfOne(), form.elements.corners);
      return;
    }
    underWay = true;
    next();
  });

  // Coming back to the page by the browser's Back must not show photos that were sent.
  addEventListener("pageshow", (event) => {
    if (!event.persisted) return;
    all = [];
    underWay = false;
    list.replaceChildren();
    show();
  });
}
