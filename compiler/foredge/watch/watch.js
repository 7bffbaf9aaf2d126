"use strict";
// Only the watching server adds this: it renews the page and shows what is wrong with the spec.
(() => {
  const page = document.currentScript.dataset.page;
  const panel = document.createElement("section");
  panel.id = "watch-problems";
  panel.className = "stop screen";
  panel.setAttribute("aria-label", "Problems in the spec");
  panel.setAttribute("role", "alert");
  panel.hidden = true;
  document.body.prepend(panel);
  const show = (problems) => {
    panel.replaceChildren();
    panel.hidden = problems.length === 0;
    if (panel.hidden) return;
    const head = document.createElement("p");
    const signal = document.createElement("b");
    signal.className = "signal";
    signal.textContent = "ERROR";
    head.append(signal, " The spec does not compile. Below stands the last good page, if there was one.");
    const list = document.createElement("ul");
    for (const problem of problems) {
      const item = document.createElement("li");
      const code = document.createElement("code");
      code.textContent = problem;
      item.append(code);
      list.append(item);
    }
    panel.append(head, list);
    window.scrollTo(0, 0);
  };
  const changes = new EventSource("/-/changes");
  changes.addEventListener("message", (event) => {
    const told = JSON.parse(event.data);
    if (String(told.page) !== page) location.reload();
    else show(told.problems);
  });
})();
