/** Bounds inside which readings may move the model; outside them they do not agree (method: "Calibration"). */

/** Pump's flow offset e, either way. Assumption: three tolerances of displacement and speed together. */
export const OFFSET_BOUND = 0.07
/** Slip factor w. Common practice, no source. */
export const SLIP_BOUNDS = { least: 0.2, most: 15 } as const
/** Surface cooling against the stated one. Published coefficients span 2.5 times (physics reference section 7). */
export const COOLING_BOUNDS = { least: 0.3, most: 3 } as const
/** Speed over what the metered pump gives. Common practice, no source. */
export const SPEED_FACTOR_BOUNDS = { least: 0.7, most: 1.07 } as const

/** A relief or an engine this much under what is stated is a fault. Common practice, no source. */
export const FAULT_SHARE = 0.95
/** A speed factor under this is a fault behind the pump. */
export const DRAG_FACTOR = 0.93
/** A pump that loses more than this between 7 and 69 bar is worn: a published military manual's flow-loss test. */
export const WORN_LOSS = { share: 0.1, low: 7e5, high: 69e5 } as const
/** On a timed run alone: above `worn` the pump is called worn; from `doubtful` on the flow is to be metered first. */
export const SLIP_FROM_RUN = { doubtful: 3, worn: 5 } as const
