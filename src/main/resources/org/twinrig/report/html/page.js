
document.querySelectorAll("table").forEach(function (table) {
  var heads = Array.from(table.tHead.rows[0].cells), body = table.tBodies[0];
  function key(row, column) {
    var cell = row.cells[column], order = cell.getAttribute("data-order");
    return order === null ? cell.textContent : Number(order);
  }
  function compare(x, y) {
    return typeof x === "number" && typeof y === "number" ? x - y : String(x).localeCompare(String(y), "en", { numeric: true });
  }
  if (body.rows.length < 2) { return; }
  heads.forEach(function (head, column) {
    var button = document.createElement("button");
    button.type = "button";
    button.textContent = head.textContent;
    head.replaceChildren(button);
    button.addEventListener("click", function () {
      var up = head.getAttribute("aria-sort") !== "ascending";
      heads.forEach(function (other) { other.removeAttribute("aria-sort"); });
      head.setAttribute("aria-sort", up ? "ascending" : "descending");
      Array.from(body.rows).sort(function (a, b) {
        var order = compare(key(a, column), key(b, column));
        return up ? order : -order;
      }).forEach(function (row) { body.appendChild(row); });
    });
  });
});
