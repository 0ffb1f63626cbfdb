// Sends the upload form with a progress bar. Without this the form is sent by the browser itself.

for (const form of document.querySelectorAll("form[data-upload]")) {
  const bar = form.querySelector("progress");
  const box = form.querySelector("[data-upload-progress]");
  const status = form.querySelector("[data-upload-status]");
  const problem = form.querySelector("[data-upload-problem]");
  const button = form.querySelector("button.main");
  const file = form.querySelector("input[type=file]");

  const fail = (sentence) => {
    box.hidden = true;
    button.disabled = false;
    problem.textContent = sentence;
    problem.hidden = false;
    file.setAttribute("aria-invalid", "true");
    problem.scrollIntoView({ block: "center" });
  };

  const say = (sentence) => {
    if (status.textContent !== sentence) status.textContent = sentence;
  };

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    problem.hidden = true;
    file.removeAttribute("aria-invalid");
    const most = Number(form.dataset.mostBytes);
    if (file.files[0]?.size > most) {
      fail(`This file is larger than ${Math.floor(most / 1048576)} MB. Send the photo as the phone saved it.`);
      return;
    }
    const request = new XMLHttpRequest();
    request.open("POST", form.action);
    request.setRequestHeader("Accept", "application/json");
    request.setRequestHeader("X-Woadstone-Token", form.elements.token.value);
    request.responseType = "json";
    request.upload.addEventListener("progress", (sent) => {
      if (!sent.lengthComputable) return;
      bar.value = sent.loaded / sent.total;
      const tenths = Math.floor((sent.loaded / sent.total) * 10) * 10;
      say(tenths < 100 ? `${tenths} % sent` : "Sent. Looking for the chart …");
    });
    request.addEventListener("load", () => {
      if (request.status === 201 && request.response?.url) {
        location.assign(request.response.url);
      } else {
        // Where the chart is the trouble, the field for its corners may help.
        const code = request.response?.refused?.code ?? "";
        if (code.includes("chart") || code.includes("corners")) {
          form.querySelector("[data-upload-corners]").open = true;
        }
        fail(request.response?.refused?.message ?? "The photo was not taken, and no reason came back. Send it again.");
      }
    });
    request.addEventListener("error", () => {
      fail("Woadstone could not be reached. See whether it is still running, then send the photo again.");
    });
    box.hidden = false;
    bar.value = 0;
    button.disabled = true;
    say("Sending …");
    request.send(new FormData(form));
  });

  // Coming back to the page by the browser's Back must not leave the button dead.
  addEventListener("pageshow", () => {
    button.disabled = false;
    box.hidden = true;
  });
}
