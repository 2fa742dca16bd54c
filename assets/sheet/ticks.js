
(function () {
  // Ticks stay with the title; where the browser keeps nothing they last as long as the page.
  var key = "plumpline ticks: " + document.body.dataset.sheet, ticks = {};
  try { ticks = JSON.parse(localStorage.getItem(key)) || {}; } catch (e) { ticks = {}; }
  function mark(box) {
    var row = box.closest("tr"), all = row.querySelectorAll("input");
    row.classList.toggle("ticked", Array.prototype.every.call(all, function (b) { return b.checked; }));
  }
  document.querySelectorAll("input[data-tick]").forEach(function (box) {
    box.checked = ticks[box.dataset.tick] === true;
    mark(box);
    box.addEventListener("change", function () {
      if (box.checked) { ticks[box.dataset.tick] = true; } else { delete ticks[box.dataset.tick]; }
      try { localStorage.setItem(key, JSON.stringify(ticks)); } catch (e) { /* nothing is kept */ }
      mark(box);
    });
  });
})();
