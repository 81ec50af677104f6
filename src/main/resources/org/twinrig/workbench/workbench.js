"use strict";
(function () {
  var entries = Array.from(document.querySelectorAll(".entry"));
  var here = -1;
  var onBox = document.getElementById("keys-on");

  function remembered(value) {
    try {
      if (value !== undefined) { window.localStorage.setItem("twinrig-keys", value); }
      return window.localStorage.getItem("twinrig-keys") !== "off";
    } catch (refused) { return true; }
  }
  var keysOn = remembered();
  if (onBox) {
    onBox.checked = keysOn;
    onBox.addEventListener("change", function () {
      keysOn = onBox.checked;
      remembered(keysOn ? "on" : "off");
    });
  }

  document.querySelectorAll(".scripted").forEach(function (part) { part.hidden = false; });

  // The key stands beside the control it belongs to.
  document.querySelectorAll("[data-key],[data-own-key]").forEach(function (control) {
    var key = document.createElement("kbd");
    key.textContent = control.dataset.key || control.dataset.ownKey;
    if (control.tagName === "INPUT") {
      control.labels[0].appendChild(key);
    } else {
      control.appendChild(key);
    }
  });

  function goTo(index) {
    if (index < 0 || index >= entries.length) { return; }
    if (here >= 0) { entries[here].classList.remove("here"); }
    here = index;
    entries[here].classList.add("here");
    entries[here].focus();
  }
  entries.forEach(function (entry, index) {
    entry.addEventListener("focusin", function () {
      if (here >= 0) { entries[here].classList.remove("here"); }
      here = index;
      entry.classList.add("here");
    });
  });
  document.querySelectorAll("[data-step]").forEach(function (button) {
    button.addEventListener("click", function () { goTo(here + Number(button.dataset.step)); });
  });
  function goToHash() {
    goTo(entries.findIndex(function (entry) { return "#" + entry.id === window.location.hash; }));
  }
  goToHash();
  window.addEventListener("hashchange", goToHash);

  document.addEventListener("keydown", function (event) {
    var field = event.target.matches("input:not([type=checkbox]),select,textarea");
    if (field && event.key === "Escape" && here >= 0) { entries[here].focus(); return; }
    if (!keysOn || field || event.ctrlKey || event.metaKey || event.altKey || event.key.length !== 1) { return; }
    var own = here >= 0 ? entries[here].querySelector("[data-own-key='" + CSS.escape(event.key) + "']") : null;
    var control = own || document.querySelector("[data-key='" + CSS.escape(event.key) + "']");
    if (!control) { return; }
    event.preventDefault();
    if (control.tagName === "INPUT") { control.focus(); } else { control.click(); }
  });

  document.querySelectorAll("[data-line]").forEach(function (button) {
    button.addEventListener("click", function () {
      var editor = document.getElementById("text"), lines = editor.value.split("\n"), number = Number(button.dataset.line);
      var start = lines.slice(0, number - 1).join("\n").length + (number > 1 ? 1 : 0);
      editor.focus();
      editor.setSelectionRange(start, start + (lines[number - 1] || "").length);
      editor.scrollTop = Math.max(0, (number - 4) * editor.scrollHeight / lines.length);
    });
  });

  // On paper nothing can be opened.
  var shut = [];
  window.addEventListener("beforeprint", function () {
    shut = Array.from(document.querySelectorAll("details:not([open])"));
    shut.forEach(function (part) { part.open = true; });
  });
  window.addEventListener("afterprint", function () { shut.forEach(function (part) { part.open = false; }); });

  // A form is sent once.
  document.querySelectorAll("form[method=post]").forEach(function (form) {
    form.addEventListener("submit", function (event) {
      if (form.dataset.sent) { event.preventDefault(); }
      form.dataset.sent = "yes";
    });
  });
  window.addEventListener("pageshow", function () {
    document.querySelectorAll("form[data-sent]").forEach(function (form) { delete form.dataset.sent; });
  });

  var drop = document.querySelector(".drop");
  if (drop) {
    var files = document.getElementById("files");
    ["dragenter", "dragover"].forEach(function (name) {
      drop.addEventListener(name, function (event) { event.preventDefault(); drop.classList.add("over"); });
    });
    drop.addEventListener("dragleave", function () { drop.classList.remove("over"); });
    drop.addEventListener("drop", function (event) {
      event.preventDefault();
      drop.classList.remove("over");
      files.files = event.dataTransfer.files;
      files.focus();
    });
  }

  var state = document.querySelector("[data-work]");
  if (state) {
    window.setInterval(function () {
      fetch("./work-state?id=" + state.dataset.work).then(function (answer) { return answer.text(); }).then(function (text) {
        if (text === "finished") { window.location.reload(); return; }
        var parts = text.split(" "), bar = document.querySelector("progress");
        if (bar && parts[1] !== "0") { bar.max = Number(parts[1]); bar.value = Number(parts[0]); }
        if (parts[1] !== "0") { state.textContent = parts[0] + " of " + parts[1] + " done."; }
      });
    }, 500);
  }
})();
