(function () {
  'use strict';

  // Instants are told in the time of the tables; a slow-motion video plays longer than that.
  function stretch(video) {
    var clipS = parseFloat(video.dataset.clipS);
    var ratio = video.duration / clipS;
    return isFinite(ratio) && ratio > 1.1 ? ratio : 1;
  }

  function show(video, atS) {
    function seek() {
      video.pause();
      video.currentTime = Math.min(atS * stretch(video), video.duration || Infinity);
    }
    for (var box = video.closest('details'); box; box = box.parentElement.closest('details')) {
      box.open = true;
    }
    if (video.readyState > 0) {
      seek();
    } else {
      video.addEventListener('loadedmetadata', seek, { once: true });
      video.preload = 'auto';
      video.load();
    }
    video.scrollIntoView({ block: 'nearest' });
    video.focus({ preventScroll: true });
  }

  document.addEventListener('click', function (event) {
    var link = event.target.closest('a.chapter');
    var video = link && document.getElementById(link.dataset.video);
    if (video && !event.ctrlKey && !event.metaKey && !event.shiftKey) {
      event.preventDefault();
      show(video, parseFloat(link.dataset.at));
    }
  });

  // One frame on or back, and a quarter of the speed.
  document.querySelectorAll('.steps').forEach(function (steps) {
    var video = steps.closest('.video').querySelector('video');
    steps.hidden = false;
    steps.addEventListener('click', function (event) {
      var button = event.target.closest('button');
      if (button && 'step' in button.dataset) {
        video.pause();
        video.currentTime += button.dataset.step * stretch(video) / parseFloat(video.dataset.fps);
      } else if (button) {
        var slow = video.playbackRate === 1;
        video.playbackRate = slow ? parseFloat(button.dataset.slow) : 1;
        button.setAttribute('aria-pressed', String(slow));
      }
    });
  });

  // A first picture as soon as an attempt is opened, and nothing of the others.
  document.addEventListener('toggle', function (event) {
    if (event.target.open && event.target.classList.contains('attempt')) {
      event.target.querySelectorAll('video').forEach(function (video) {
        if (video.preload === 'none') {
          video.preload = 'metadata';
        }
      });
    }
  }, true);

  window.addEventListener('beforeprint', function () {
    document.querySelectorAll('img').forEach(function (image) { image.loading = 'eager'; });
  });

  function openTarget() {
    var target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (target && target.tagName === 'DETAILS') {
      target.open = true;
      target.scrollIntoView();
    }
  }
  window.addEventListener('hashchange', openTarget);
  openTarget();

  function key(row, column) {
    var cell = row.cells[column];
    return 's' in cell.dataset ? cell.dataset.s : cell.textContent.trim();
  }

  function sort(table, column, numeric, down) {
    var collator = new Intl.Collator(document.documentElement.lang, { numeric: true });
    var rows = Array.from(table.tBodies[0].rows);
    rows.sort(function (a, b) {
      var x = key(a, column), y = key(b, column);
      if (x === '' || y === '') {
        return (x === '') - (y === ''); // what is not known comes last either way
      }
      var order = numeric ? parseFloat(x) - parseFloat(y) : collator.compare(x, y);
      return down ? -order : order;
    });
    rows.forEach(function (row) { table.tBodies[0].appendChild(row); });
  }

  document.querySelectorAll('table.sortable').forEach(function (table) {
    Array.from(table.tHead.rows[0].cells).forEach(function (head, column) {
      var numeric = head.classList.contains('n');
      var button = document.createElement('button');
      button.type = 'button';
      while (head.firstChild) {
        button.appendChild(head.firstChild);
      }
      head.appendChild(button);
      button.addEventListener('click', function () {
        var before = head.getAttribute('aria-sort');
        var down = before ? before === 'ascending' : numeric;
        Array.from(head.parentElement.cells).forEach(function (other) { other.removeAttribute('aria-sort'); });
        head.setAttribute('aria-sort', down ? 'descending' : 'ascending');
        sort(table, column, numeric, down);
      });
    });
  });
}());
