/**
 * Ticks and blanks are kept on the device by the name of the sheet, and one step can be shown alone. The page is whole without it.
 * The page says by its sum (`SCRIPT_SUM`) that no other script may run.
 */
export const SCRIPT = `(function () {
  var steps = Array.from(document.querySelectorAll('.step'))
  var boxes = steps.map(function (step) { return step.querySelector('input[type=checkbox]') })
  var blanks = Array.from(document.querySelectorAll('.blank'))
  var next = document.getElementById('next'), now = document.getElementById('now'), bar = document.getElementById('bar')
  var name = 'groovewright ' + document.body.dataset.sheet
  var at = -1, away = []
  function read() { try { return JSON.parse(localStorage.getItem(name) || '{}') } catch (e) { return {} } }
  function keep() {
    var kept = { ticks: [], blanks: {} }
    boxes.forEach(function (box) { if (box.checked) kept.ticks.push(box.dataset.step) })
    blanks.forEach(function (blank) { if (blank.value) kept.blanks[blank.dataset.blank] = blank.value })
    try { localStorage.setItem(name, JSON.stringify(kept)) } catch (e) {}
  }
  function mark() { steps.forEach(function (step, i) { step.classList.toggle('done', boxes[i].checked) }) }
  function restore() {
    while (away.length) { var one = away.pop(); one.place.replaceWith(one.what) }
  }
  function lend(what) {
    var place = document.createElement('span')
    away.push({ what: what, place: place })
    what.replaceWith(place)
    now.append(what)
  }
  function show(i) {
    restore()
    at = i
    next.hidden = i < 0
    document.querySelector('main').inert = i >= 0
    document.body.style.overflow = i < 0 ? '' : 'hidden'
    if (i < 0) return
    lend(steps[i])
    now.scrollTop = 0
    document.getElementById('on').focus()
  }
  function open() { return boxes.findIndex(function (box) { return !box.checked }) }
  document.addEventListener('change', function () { mark(); keep() })
  blanks.forEach(function (blank) { blank.addEventListener('input', keep) })
  document.getElementById('one').addEventListener('click', function () { show(Math.max(0, open())) })
  document.getElementById('clear').addEventListener('click', function () {
    if (!confirm('Take all ticks and measured sizes off this sheet?')) return
    boxes.forEach(function (box) { box.checked = false })
    blanks.forEach(function (blank) { blank.value = '' })
    mark(); keep()
  })
  document.getElementById('back').addEventListener('click', function () { show(Math.max(0, at - 1)) })
  function all() {
    var step = steps[at]
    show(-1)
    step.scrollIntoView({ block: 'center' })
  }
  document.getElementById('all').addEventListener('click', all)
  document.addEventListener('keydown', function (event) { if (event.key === 'Escape' && at >= 0) all() })
  document.getElementById('on').addEventListener('click', function () {
    boxes[at].checked = true
    mark(); keep()
    show(at + 1 < steps.length ? at + 1 : -1)
  })
  var kept = read()
  boxes.forEach(function (box) { box.checked = (kept.ticks || []).indexOf(box.dataset.step) >= 0 })
  blanks.forEach(function (blank) { blank.value = (kept.blanks || {})[blank.dataset.blank] || '' })
  mark()
  if (steps.length) { bar.hidden = false; document.body.classList.add('runs') }
})()
`

export const SCRIPT_SUM = 'sha256-jYTIi62MwjbQk07DpQIU20jtv17IIWPL+vhjSLNZZ04='
