/**
 * Runs inside the page of a browser (as text: the project is compiled without a browser's types). Finds text that meets
 * other text, leaves the page or its box, or is cut, in the layout as it stands. Returns a list of sentences.
 */
;(() => {
  const faults = []
  const shown = (text) => `"${text.replace(/\s+/g, ' ').trim().slice(0, 50)}"`
  const main = document.querySelector('main').getBoundingClientRect()

  // Each line of each text, shrunk to what its letters cover: Inter's ascent is 0.97, its capitals 0.73 of its size.
  const lines = []
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const holder = node.parentElement
    if (node.data.trim() === '' || holder.closest('.unseen, title, desc, style')) continue
    const range = document.createRange()
    range.selectNodeContents(node)
    for (const { left, right, top, height } of range.getClientRects()) {
      if (right - left < 1) continue
      const size = height / 1.21
      lines.push({
        holder,
        text: node.data,
        left: left + 0.4,
        right: right - 0.4,
        top: top + 0.24 * size,
        bottom: top + 0.99 * size,
      })
    }
  }

  for (const { holder, text, left, right, top, bottom } of lines) {
    if (left < main.left - 1 || right > main.right + 1) faults.push(`${shown(text)} leaves the page`)
    const svg = holder.closest('svg')
    if (svg !== null) {
      const box = svg.getBoundingClientRect()
      if (left < box.left - 1 || right > box.right + 1 || top < box.top - 1 || bottom > box.bottom + 1)
        faults.push(`${shown(text)} leaves its drawing`)
    } else {
      const box = holder.closest('td, th, li, dd, dt, p, h1, h2, h3, h4, div').getBoundingClientRect()
      if (left < box.left - 1 || right > box.right + 1) faults.push(`${shown(text)} leaves its box`)
    }
  }

  lines.sort((a, b) => a.top - b.top)
  lines.forEach((one, i) => {
    for (let j = i + 1; j < lines.length && lines[j].top < one.bottom - 1; j++) {
      const other = lines[j]
      if (one.left < other.right - 1 && other.left < one.right - 1 && one.holder !== other.holder)
        faults.push(`${shown(one.text)} meets ${shown(other.text)}`)
    }
  })

  // What is wider than its box, or hidden by it. A sign that is set beside its element by ::after is meant to be outside.
  for (const element of document.querySelectorAll('main, main *')) {
    if (element.closest('svg, .unseen') || getComputedStyle(element, '::after').position === 'absolute') continue
    const { scrollWidth, clientWidth, scrollHeight, clientHeight } = element
    const { overflowX, display } = getComputedStyle(element)
    if (display === 'inline' || display === 'none' || clientWidth === 0) continue
    const name = `<${element.localName} class="${element.className}">`
    if (scrollWidth > clientWidth + 1) faults.push(`${name} is wider than its box`)
    if (overflowX !== 'visible' && scrollHeight > clientHeight + 1) faults.push(`${name} is cut`)
  }

  // Strokes that run through the letters of a drawing: tried at points of each text.
  for (const svg of document.querySelectorAll('svg.circuit')) {
    const strokes = [...svg.querySelectorAll('path, line, polyline, polygon, circle, rect, ellipse')].filter(
      (shape) => getComputedStyle(shape).stroke !== 'none' && !shape.closest('defs'),
    )
    const boxes = strokes.map((shape) => shape.getBoundingClientRect())
    for (const { holder, text, left, right, top, bottom } of lines) {
      if (holder.closest('svg') !== svg) continue
      strokes.forEach((shape, i) => {
        const box = boxes[i]
        if (box.left > right || box.right < left || box.top > bottom || box.bottom < top) return
        const here = shape.getScreenCTM().inverse()
        for (let x = left + 1; x < right; x += 2)
          for (let y = top + 1; y < bottom - 2; y += 1.5)
            if (shape.isPointInStroke(new DOMPoint(x, y).matrixTransform(here))) {
              faults.push(`a line of the drawing runs through ${shown(text)}`)
              return
            }
      })
    }
  }
  return [...new Set(faults)]
})()
