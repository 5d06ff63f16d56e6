"use strict";
// Ticking without loading the page anew. Without this script the same forms are sent as they are.
(() => {
  const said = document.getElementById("said");

  function tell(words, isFault) {
    said.textContent = words;
    said.classList.toggle("fault", isFault);
  }

  function put(boxes) {
    for (const place of document.querySelectorAll(".tick")) {
      const box = boxes[place.dataset.task];
      if (box !== undefined) {
        place.innerHTML = box;
      }
    }
  }

  async function send(form) {
    const place = form.closest(".tick");
    for (const button of place.querySelectorAll("button")) {
      button.disabled = true;
    }
    tell("Noting ...", false);
    let answer;
    try {
      const sent = await fetch("tick", {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify(Object.fromEntries(new FormData(form))),
      });
      answer = await sent.json();
    } catch {
      tell("No answer from the computer that shares this page, so it may not be noted. "
        + "See that it runs and that you are in its network, then load the page anew.", true);
      for (const button of place.querySelectorAll("button")) {
        button.disabled = false;
      }
      return;
    }
    put(answer.boxes);
    for (const button of place.querySelectorAll("button")) {
      button.disabled = false;
    }
    tell(answer.said.join(" "), answer.is_fault);
    const next = place.querySelector("button, a");
    if (next) {
      next.focus({ preventScroll: true });
    }
  }

  document.addEventListener("submit", (event) => {
    if (event.target.method === "post" && event.target.closest(".tick")) {
      event.preventDefault();
      send(event.target);
    }
  });
})();
