// One photo on its way: a row with its picture, how far it is, and what may be done about it.

import * as say from "./text.js";

const made = (name, properties = {}, ...children) => {
  const element = Object.assign(document.createElement(name), properties);
  element.append(...children);
  return element;
};

export class Sending {
  #request;
  #form;
  #onEnd;

  /** `onEnd` is called each time it has been sent, refused, given up or left out. */
  constructor(file, form, onEnd) {
    this.file = file;
    this.#form = form;
    this.#onEnd = onEnd;
    this.state = "chosen";
    this.share = 0;
    const picture = made("img", { alt: "", width: 96, height: 72 });
    picture.src = URL.createObjectURL(file);
    picture.addEventListener("load", () => URL.revokeObjectURL(picture.src), { once: true });
    picture.addEventListener("error", () => { picture.hidden = true; }, { once: true });
    this.words = made("span", { className: "state" });
    this.steps = made("ul", { className: "small", hidden: true });
    this.button = made("button", { type: "button" });
    this.button.addEventListener("click", () => this.#press());
    this.row = made("li", {}, picture, made("div", {}, made("strong", { textContent: file.name }), this.words, this.steps), this.button);
    this.#show("chosen", say.toBeSent(), say.leaveOut());
  }

  send() {
    const most = Number(this.#form.dataset.mostBytes);
    if (this.file.size > most) {
      this.#refuse({ code: "too_large", message: say.fileIsLarger(Math.floor(most / 1048576)), retake: [] });
      return;
    }
    const { token, stage, chart, corners } = this.#form.elements;
    const data = new FormData();
    for (const field of [token, stage, chart, corners]) data.append(field.name, field.value);
    if (this.#form.elements["by-board"].checked) data.append("by-board", "yes");
    data.append("photo", this.file, this.file.name);
    const request = new XMLHttpRequest();
    this.#request = request;
    request.open("POST", this.#form.action);
    request.setRequestHeader("Accept", "application/json");
    request.setRequestHeader("X-Woadstone-Token", token.value);
    request.responseType = "json";
    request.upload.addEventListener("progress", (sent) => {
      if (!sent.lengthComputable) return;
      this.share = sent.loaded / sent.total;
      this.#show("sending", this.share < 1 ? say.percentSent(Math.floor(this.share * 100)) : say.chartIsLookedFor(), say.stop());
    });
    request.addEventListener("load", () => this.#answered(request));
    request.addEventListener("error", () => this.#refuse({ code: "", message: say.notReached(), retake: [] }));
    request.addEventListener("abort", () => this.#end("stopped", say.stopped(), say.sendAgain()));
    this.#show("sending", say.isSent(), say.stop());
    request.send(data);
  }

  #answered(request) {
    const told = request.response;
    if ((request.status === 201 || request.status === 200) && told?.url) {
      this.url = told.url;
      this.#end("kept", told.already ? say.wasHereAlready() : say.takenIn(), null);
    } else {
      this.#refuse(told?.refused ?? { code: "", message: say.noReason(), retake: [] });
    }
  }

  #refuse(refused) {
    this.refused = refused;
    this.steps.replaceChildren(...(refused.retake ?? []).map((step) => made("li", { textContent: step })));
    this.steps.hidden = !this.steps.childElementCount;
    this.#end("refused", say.refused(refused.message), say.sendAgain());
  }

  #press() {
    if (this.state === "sending") this.#request.abort();
    else if (this.state === "chosen") this.#end("left-out", say.leftOut(), null);
    else {
      this.refused = undefined;
      this.steps.hidden = true;
      this.row.dispatchEvent(new Event("resend", { bubbles: true }));
      this.send();
    }
  }

  #end(state, words, button) {
    this.#request = undefined;
    this.share = state === "kept" ? 1 : 0;
    this.#show(state, words, button);
    this.#onEnd(this);
  }

  #show(state, words, button) {
    this.state = state;
    this.row.dataset.state = state;
    this.row.hidden = state === "left-out";
    this.words.textContent = words;
    this.button.hidden = !button;
    this.button.textContent = button ?? "";
    if (button) this.button.setAttribute("aria-label", say.buttonFor(button, this.file.name));
  }
}
