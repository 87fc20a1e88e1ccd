/** Engine: crank and piston, ports, compression, squish, speed and mean pressure, pipe, compression over the hours. */
export { boreArea, fullRatio, squishShare, sweptVolume, trappedRatio } from './compression.ts';
export { angleOfDrop, type Crank, dropBelowTop, dropWithoutRod, timingSlope } from './crank.ts';
export { engine } from './engine.ts';
export { meanEffectivePressure, meanPistonSpeed, PRESSURES_1973, powerOf, topAcceleration } from './pace.ts';
export { gasTemperature, pipeOf1973, tunedLength, WAVE_SPEED_1973, waveSpeed } from './pipe.ts';
export { afterGasket, blowdown, type Port, portDuration, roofFrom } from './ports.ts';
export { LEAST_SQUISH, SOLDER_LIMITS, type Solder, type Squish, squishVerdict } from './squish.ts';
export { type Compression, type CompressionTrend, compressionTrend } from './trend.ts';
