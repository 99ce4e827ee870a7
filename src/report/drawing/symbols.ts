/**
 * Graphic symbols in the manner of ISO 1219-1, from memory of its rules: filled triangle = flow of oil, square = valve that
 * opens by pressure, one box per position, diamond = the oil is treated, circle = something turns. Each is drawn around a
 * middle (x, y) and says which box it takes. Classes: `body` white under the symbol, `solid` filled, `fine` thin even on a
 * changed component; the weight of the outline is that of the component, set outside.
 */
import { area, around, arrow, frame, path, ring, spring } from './pen.ts'
import type { Box, Sign } from './scene.ts'

export const PUMP_RADIUS = 15
export const MOTOR_RADIUS = 14

/** Fixed pump, one direction of flow: the triangle points out, upward. */
export const pump = (x: number, y: number): Sign => {
  const top = y - PUMP_RADIUS
  return {
    svg: ring('body', x, y, PUMP_RADIUS) + area('solid', x, top, x - 6, top + 9, x + 6, top + 9),
    box: around(x, y, PUMP_RADIUS, PUMP_RADIUS),
  }
}

/** Motor of two directions: triangles point in from both ports, left and right. With two displacements: an arrow across. */
export const motor = (x: number, y: number, twoSpeed: boolean): Sign => {
  const triangle = (sign: number) =>
    area(
      'solid',
      x + sign * (MOTOR_RADIUS - 9),
      y,
      x + sign * (MOTOR_RADIUS - 0.5),
      y - 5,
      x + sign * (MOTOR_RADIUS - 0.5),
      y + 5,
    )
  const across = twoSpeed ? arrow(x - 9, y + 15, x + 9, y - 15, 5) : ''
  return {
    svg: ring('body', x, y, MOTOR_RADIUS) + triangle(-1) + triangle(1) + across,
    box: around(x, y, MOTOR_RADIUS, MOTOR_RADIUS + 1),
  }
}

/** A prime mover that is no electric motor: M in a square. */
export const engine = (x: number, y: number): Sign => ({
  svg:
    frame('body', around(x, y, 15, 15)) +
    path('letter', x - 6, y + 6, x - 6, y - 6, x, y + 2, x + 6, y - 6, x + 6, y + 6),
  box: around(x, y, 15, 15),
})

/** Coupling on the shaft: two halves facing. */
export const coupling = (x: number, y: number): Sign => ({
  svg: [-2.5, 2.5].map((off) => path('bar', x + off, y - 7, x + off, y + 7)).join(''),
  box: around(x, y, 4, 8),
})

export const RELIEF_HALF = 9

/** Relief valve, inlet left, outlet right: closed at rest, pilot from the inlet below, adjustable spring above. */
export const relief = (x: number, y: number): Sign => {
  const [left, right, top, bottom] = [x - RELIEF_HALF, x + RELIEF_HALF, y - RELIEF_HALF, y + RELIEF_HALF]
  return {
    svg:
      frame('body', around(x, y, RELIEF_HALF, RELIEF_HALF)) +
      arrow(left + 1.5, y + 4, right - 1.5, y + 4) +
      spring(x, top, x, top - 11, 3.5) +
      arrow(x - 8, top - 3, x + 8, top - 10, 4) +
      path('fine pilot', left - 5, y, left - 5, bottom + 5, x, bottom + 5, x, bottom),
    box: { left: left - 6, top: top - 12, right, bottom: bottom + 6 },
  }
}

/** Side of one box of a control valve, and how far its ports stand from the middle of the box. */
export const VALVE_BOX = 16
export const VALVE_PORT = 4
export const VALVE_HALF_WIDTH = VALVE_BOX * 1.5 + 8

/** One section of a control valve: three positions, lever, springs to the middle; there its centre is open, its ports closed. */
export const valveSection = (x: number, y: number, isRead: boolean): Sign => {
  const half = VALVE_BOX / 2
  const edge = VALVE_BOX * 1.5
  const [top, bottom, port] = [y - half, y + half, VALVE_PORT]
  const boxes = [-VALVE_BOX, 0, VALVE_BOX].map((off) =>
    frame(isRead ? 'body' : 'body unread', around(x + off, y, half, half)),
  )
  const stop = (at: number) => path('fine', at, top, at, top + 4) + path('fine', at - 2.5, top + 4, at + 2.5, top + 4)
  const through = path('fine', x - port, bottom, x - port, y + 1, x + port, y + 1, x + port, bottom)
  const up = (from: number, to: number) => arrow(from, bottom - 1, to, top + 1)
  const down = (from: number, to: number) => arrow(from, top + 1, to, bottom - 1)
  const [left, right] = [x - VALVE_BOX, x + VALVE_BOX]
  const lever =
    path('fine', x - edge, y - 4, x - edge - 7, y - 4) + path('fine', x - edge - 3, y - 4, x - edge - 7, y - 9)
  return {
    svg: [
      ...boxes,
      stop(x - port),
      stop(x + port),
      through,
      up(left - port, left - port),
      down(left + port, left + port),
      up(right - port, right + port),
      down(right - port, right + port),
      lever,
      spring(x - edge, y + 4, x - edge - 8, y + 4, 2.5),
      spring(x + edge, y, x + edge + 8, y, 3),
    ].join(''),
    box: { ...around(x, y, VALVE_HALF_WIDTH, half), top: y - 10 },
  }
}

/** Turning joint of one vertical line: a ring on the line inside the swivel. */
export const joint = (x: number, y: number): Sign => ({ svg: ring('body', x, y, 4), box: around(x, y, 4, 4) })

/** A long body across lines: the swivel, a block on the motors. */
export const body = (box: Box): Sign => ({ svg: frame('body', box), box })

/** Narrow passage of a vertical line. */
export const throttle = (x: number, y: number): Sign => ({
  svg: [-1, 1]
    .map((sign) => path('fine', x + sign * 5, y - 6, x + sign * 2.2, y - 2, x + sign * 2.2, y + 2, x + sign * 5, y + 6))
    .join(''),
  box: around(x, y, 5, 6),
})

export const DIAMOND = 15

const diamond = (x: number, y: number) => area('body', x, y - DIAMOND, x + DIAMOND, y, x, y + DIAMOND, x - DIAMOND, y)

/** Filter in a vertical line. */
export const filter = (x: number, y: number): Sign => ({
  svg: diamond(x, y) + path('fine pilot', x - DIAMOND, y, x + DIAMOND, y),
  box: around(x, y, DIAMOND, DIAMOND),
})

/** Cooler in a vertical line: heat leaves at both sides. */
export const cooler = (x: number, y: number): Sign => ({
  svg: diamond(x, y) + arrow(x - 3, y, x - DIAMOND + 1, y, 5) + arrow(x + 3, y, x + DIAMOND - 1, y, 5),
  box: around(x, y, DIAMOND, DIAMOND),
})

/** Check valve that a spring holds shut, in a vertical line, flow down: a bypass. */
export const bypass = (x: number, y: number): Sign => ({
  svg:
    frame('under', around(x, y + 3, 6, 9)) +
    path('fine', x - 5, y + 1, x, y - 6, x + 5, y + 1) +
    ring('body fine', x, y + 0.5, 3) +
    spring(x, y + 3.5, x, y + 12, 3),
  box: { left: x - 6, top: y - 6, right: x + 6, bottom: y + 12 },
})

/** Cylinder with oil on both sides of its piston; its ports are below at these distances from the middle. */
export const CYLINDER_PORTS: readonly [number, number] = [-12, 12]
export const cylinder = (x: number, y: number): Sign => ({
  svg:
    frame('body', { left: x - 18, top: y - 6, right: x + 18, bottom: y + 6 }) +
    path('bar', x - 3, y - 6, x - 3, y + 6) +
    path('fine', x - 3, y, x + 27, y),
  box: { left: x - 18, top: y - 6, right: x + 28, bottom: y + 6 },
})

/** Quick coupling with a check valve in each half, in a vertical line. */
export const quickCoupling = (x: number, y: number): Sign => {
  const half = (sign: number) =>
    path('fine', x - 4.5, y + sign * 4, x, y + sign * 10, x + 4.5, y + sign * 4) +
    ring('body fine', x, y + sign * 4, 2.6)
  return { svg: frame('under', around(x, y, 5, 10)) + half(-1) + half(1), box: around(x, y, 6, 10) }
}
