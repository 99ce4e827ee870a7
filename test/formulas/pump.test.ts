/** Pumps: the coefficients lead back to the stated efficiencies; what happens off the reference point, by hand. */
import { describe, expect, test } from 'vitest'
import {
  pumpFlow,
  pumpHydromechanicalEfficiency,
  pumpTorque,
  pumpVolumetricEfficiency,
  slipFromEfficiency,
  torqueLossFromEfficiency,
} from '../../src/formulas/pump.ts'

const V = 10e-6
const AT = { pressure: 200e5, speed: 40, mu: 0.0272 }
const slip = slipFromEfficiency(V, AT.speed, 0.92, AT.pressure, AT.mu)

describe('flow', () => {
  test('the stated efficiency at its reference point', () => {
    const flow = pumpFlow(V, AT.speed, 0, slip, 1, AT.pressure, AT.mu)
    expect(pumpVolumetricEfficiency(flow, V, AT.speed)).toBeCloseTo(0.92, 12)
  })
  /** The slip of 8 % goes with pressure and wear, against viscosity: 0.08 x 1/2 x 3 / (1/2) = 24 %. */
  test('slip at half the pressure, three times worn, half as viscous', () => {
    const flow = pumpFlow(V, AT.speed, 0, slip, 3, AT.pressure / 2, AT.mu / 2)
    expect(pumpVolumetricEfficiency(flow, V, AT.speed)).toBeCloseTo(0.76, 12)
  })
  /** The slip is a flow, not a share: at half the speed 8 % become 16 %. */
  test('slip does not fall with the speed', () => {
    const flow = pumpFlow(V, AT.speed / 2, 0, slip, 1, AT.pressure, AT.mu)
    expect(pumpVolumetricEfficiency(flow, V, AT.speed / 2)).toBeCloseTo(0.84, 12)
  })
  test('a pump never takes oil back', () => {
    expect(pumpFlow(V, 0.1, 0.02, slip, 15, AT.pressure, AT.mu)).toBe(0)
  })
})

describe('torque', () => {
  const loss = torqueLossFromEfficiency(V, AT.pressure, 0.89)
  const torque = (pressure: number, share: number, speed: number, mu: number) =>
    pumpTorque(V, pressure, share, loss, AT.pressure, speed, mu, AT.speed, AT.mu)

  /** 10e-6 x 200e5/2pi = 31.83 N.m; /0.89 = 35.77; the loss is 3.934. */
  test('the stated efficiency at its reference point', () => {
    expect(torque(AT.pressure, 1, AT.speed, AT.mu)).toBeCloseTo(35.77, 2)
    expect(pumpHydromechanicalEfficiency(V, AT.pressure, torque(AT.pressure, 1, AT.speed, AT.mu))).toBeCloseTo(0.89, 12)
  })
  /** Neutral: 0.3 x 3.934 = 1.180 N.m. */
  test('what turns against no pressure is the viscous part', () => {
    expect(torque(0, 1, AT.speed, AT.mu)).toBeCloseTo(1.18, 3)
  })
  /** Twenty times as viscous counts as ten: 3.934 x 0.3 x 10 = 11.80 N.m. */
  test('cold oil drags ten times at most', () => {
    expect(torque(0, 1, AT.speed, 20 * AT.mu)).toBeCloseTo(11.8, 2)
  })
  /** Half delivered: 31.83/2 + 3.934 = 19.85 N.m. */
  test('a starved pump loses hydraulic torque and keeps its friction', () => {
    expect(torque(AT.pressure, 0.5, AT.speed, AT.mu)).toBeCloseTo(19.85, 2)
  })
})
