import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/pump-rotation.ts'
import { judgements, severity } from '../../fixtures/check-input.ts'

type Rotation = 'clockwise' | 'counterclockwise' | 'both' | null

const fitted = (now: Rotation, there: Rotation) => ({
  circuit: { pump: { part: 'pump-x', mount: { rotation: now } } },
  before: { circuit: { pump: { mount: { rotation: there } } } },
})

describe('pump-rotation', () => {
  it.each<[Rotation, Rotation, string]>([
    ['clockwise', 'clockwise', 'ok'],
    ['both', 'counterclockwise', 'ok'],
    ['counterclockwise', 'clockwise', 'change'],
    ['clockwise', 'both', 'watch'],
  ])('a %s pump in place of a %s one is %s', (now, there, expected) => {
    expect(severity(check, fitted(now, there))).toBe(expected)
  })

  it('does not judge an unknown direction', () => {
    expect(judgements(check, fitted(null, 'clockwise'))).toBe(0)
    expect(judgements(check, fitted('clockwise', null))).toBe(0)
  })
})
