/** Sources of the numbers of air, engine, fuel, drive and tyres. */
import type { Source } from './source.ts';

export const TRACK_SOURCES = {
  'cipm-2007': {
    title:
      'A. Picard, R. S. Davis, M. Gläser, K. Fujii, Revised formula for the density of moist air (CIPM-2007), Metrologia 45 (2008) 149-155: constants as in two open code bases; range from memory',
    seen: 'excerpt',
  },
  'ashrae-psychrometrics': {
    title:
      'ASHRAE Handbook Fundamentals 2017, chapter 1, equations 5 and 6 and table 3, as quoted in the open psychrometric library PsychroLib and its tests',
    seen: 'excerpt',
  },
  'iso-2533': {
    title:
      'ISO 2533:1975, Standard atmosphere (the same as ICAO Doc 7488 and US Standard Atmosphere 1976 below 11 km): constants and table values as reprinted in public code and at crnslab.org/util/atmo.php',
    seen: 'excerpt',
  },
  'density-altitude-rules': {
    title:
      'Density altitude of the US weather service as quoted at metpod.co.uk; 120 ft a kelvin as worked at expressjetpilots.com and in a meteorological training module',
    seen: 'read',
  },
  'sea-level-reduction': {
    title:
      'QNH as the standard atmosphere turned round; exponential form of a weather station manual; reduction with the real temperature as quoted from observing practice, where brackets are unclear',
    seen: 'excerpt',
  },
  'weather-span': {
    title:
      'Weather seldom moves pressure more than 45 hPa from the standard atmosphere of a height, usually less than 25 hPa',
    seen: 'common practice',
  },
  'power-standards': {
    title:
      'SAE J1349 (June 1990) as quoted at passionford.com/forum/6282141-post33.html, DIN 70020 at corsa-d.de thread 2830, J607 with worked example at teamzr1.com',
    seen: 'excerpt',
  },
  'iso-1585': {
    title: 'ISO 1585, Road vehicles, engine test code, net power: exponents and limits for spark ignition',
    seen: 'memory',
  },
  'paddock-instruments': {
    title:
      'Where no limits are given: thermometer ± 1 K, barometer ± 1 hPa, hygrometer ± 5 points, elevation from a map ± 10 m',
    seen: 'common practice',
  },
  'crank-geometry': {
    title:
      'Slider-crank and its inverse by the cosine rule, cylinder volumes, piston speed and acceleration at top; plane geometry, rows worked outside the project',
    seen: 'memory',
  },
  'mean-pressure': {
    title:
      "G. Jennings, Two-Stroke Tuner's Handbook, 1973: mean pressures by use and power from mean pressure, as quoted at toostroke.blogspot.com, 2007/12, predicting-power; above 14 bar doubtful from memory",
    seen: 'excerpt',
  },
  'tuned-pipe': {
    title:
      'Tuned length and sections of an exhaust pipe after the handbook of G. Jennings, 1973: worked example at aerialpursuits.com, tuned; speed of sound of an ideal gas',
    seen: 'read',
  },
  'squish-least': {
    title:
      'Squish of 125 cm³ two-strokes 0.75 mm or more, read with solder on both sides, unless the maker says otherwise',
    seen: 'common practice',
  },
  'compression-tenth': {
    title: 'Compression down a tenth against the best on the same gauge, hot, throttle held open: top end due',
    seen: 'common practice',
  },
  'student-t': {
    title:
      "M. Abramowitz, I. A. Stegun (ed.), Handbook of Mathematical Functions, NBS AMS 55, 1964; 26.7.3 and 26.7.4, Student's t",
    seen: 'memory',
  },
  'gear-ratios': {
    title:
      'Products of tooth counts from crankshaft to axle; arithmetic, rows worked outside the project. Speed from engine speed in miles as quoted at a forum page from P. Van Valkenburgh',
    seen: 'excerpt',
  },
  'shift-crossing': {
    title:
      'Shift up when the next gear gives more thrust: P. Van Valkenburgh as quoted at a forum page; rows worked outside the project',
    seen: 'excerpt',
  },
  'drag-balance': {
    title: 'Push against air drag and rolling resistance; first principles, rows worked outside the project',
    seen: 'memory',
  },
  'driveline-loss': {
    title: 'About 92 % of the torque of the crankshaft reaches the ground through two pairs of gears and a chain',
    seen: 'memory',
  },
  'sprocket-teeth': {
    title: 'Kart sprockets have 8 to 100 teeth, with at least as many behind as in front',
    seen: 'common practice',
  },
  'chain-length': {
    title:
      'Length of a chain round two sprockets and its distance: worked example in a paper on chain-drive design read at th4.ilovetranslation.com; with 39.6 for 4π² at engpowerdata.com/mech/ketting.php, which gives the pitch diameter too',
    seen: 'read',
  },
  'chain-sizes': {
    title:
      'Pitch, roller and width: two tables of motorcycle chain, a table of ASME/ANSI B29.1, pitch of 219 in a kart magazine; roller and width of 219 from memory',
    seen: 'read',
  },
  'chain-wear': {
    title:
      "Most stretch 3 % or 200 % over the teeth, 1.5 % on fixed centres: two chain makers' answers, one citing ANSI B29.1; order at 1 % is common practice",
    seen: 'read',
  },
  'chain-slack': {
    title:
      'Whole movement at mid-span 10 to 15 mm on the short run of a kart, driver in; published shares of the distance, 2 to 3 % at cycloidal-reducer.com and 4 to 6 % at bearingservice.com, disagree',
    seen: 'common practice',
  },
  'chain-line': {
    title:
      'Sprocket faces within 1 mm for distances under 0.5 m: read in a chain fitting text, cycloidal-reducer.com; 0.5 mm as the target is common practice',
    seen: 'read',
  },
  'chain-clip': {
    title:
      'Closed end of the clip leads in the direction of travel: read on a kart page; wire through it common practice',
    seen: 'read',
  },
  'chain-force': {
    title:
      'Pull is power over chain speed, its own speed adds m v², a sprocket of few teeth makes it swing; first principles, 17 teeth for smooth running from memory',
    seen: 'memory',
  },
  'tyre-gas': {
    title:
      "Gas law at constant volume with absolute pressure: a chemical engineer's worked example, 20 psi at 70 °F, on the team.net list, 2002-07, message 00126; liquid water by Dalton's law from memory",
    seen: 'read',
  },
  'line-fit': {
    title:
      'Least squares and prediction interval of a straight line; NIST Statistical Reference Datasets, Norris, data and certified values recalled (an independent fit of the recalled data gives the recalled values)',
    seen: 'memory',
  },
  'tyre-cone': {
    title: 'Two tyres of unequal size on one axle roll like a cone; plane geometry, rows worked outside the project',
    seen: 'memory',
  },
  'tread-three': {
    title:
      'Three readings across a tread, 20 °F largest spread: northstarmotorsports.com, tech.tips2; probe at once after a hot lap: circletrack.com, race tire technology',
    seen: 'read',
  },
  'tyre-practice': {
    title:
      'Stagger within 2 mm for corners both ways, 3 K of crown, similar days within 15 K of track, six heat cycles, two years; the maker may say otherwise',
    seen: 'common practice',
  },
  'coast-down': {
    title:
      'Constant and square-law slowing of a vehicle rolling out, closed form and averaging of two directions; first principles, rows worked outside the project. That karts have been measured so: Biancolini and others, AIAS 2007, seen as a listing only',
    seen: 'memory',
  },
  'jet-theory': {
    title:
      'Fuel follows the square root of air density at a fixed jet: A. Sarangan, What exactly does mixture control do?, aviation.sarangan.org, 2020; carried on to area, bore and dry air outside the project',
    seen: 'read',
  },
  'jet-linear': {
    title: 'The number on the main jet goes with the relative density of the air, from a logged jet that was right',
    seen: 'common practice',
  },
  'jet-caution': {
    title:
      'One size leaner at a time, not under the smallest jet logged as good, rounded up to the richer jet, read by plug and piston',
    seen: 'common practice',
  },
  'jet-log': {
    title: 'Exponent of the jets logged as right: five sessions and 4 % of density apart before it counts',
    seen: 'common practice',
  },
  'air-leak-test': {
    title:
      'Crankcase under air before leaning: 5 psi for 10 minutes losing 0.5 psi at most in one text, 6 to 9 psi for 5 to 10 minutes without loss in another; that seals can be pushed out is common practice',
    seen: 'excerpt',
  },
  'throttle-zones': {
    title:
      'Which part meters at which throttle: an article on gearbox karts; which way clip, air screw and cutaway act is from memory',
    seen: 'read',
  },
  'series-orifice': {
    title: 'Two openings behind each other with equal discharge coefficients; worked outside the project',
    seen: 'memory',
  },
  'petrol-expansion': {
    title: 'Petrol grows by 0.00095 a kelvin: an answer of a university physicist at techzle.com',
    seen: 'read',
  },
  'combustion-balance': {
    title:
      'Oxygen balance of CcHhOo with 20.95 % oxygen in air of 28.9647 g/mol; 1.85 hydrogen to a carbon as 40 CFR 90.426 assumes (as copied at ecfr.okayd.com); ethanol 789 kg/m³ from memory',
    seen: 'read',
  },
  'premix-shares': {
    title:
      'R parts of petrol to one of oil; arithmetic, rows worked outside the project. Two-stroke oil 0.86 to 0.97 kg/l from memory',
    seen: 'memory',
  },
  'premix-leaning': {
    title: 'More oil leans fuel to air: a two-stroke tuner quoted at dirtrider.net, thread 184622',
    seen: 'excerpt',
  },
  'litres-a-lap': {
    title: 'Litres a lap from what was filled in less what was drained, at least three sessions, two laps to spare',
    seen: 'common practice',
  },
  'fuel-sample': {
    title:
      'Fuel that must be left differs: never under 1.5 l in one international text (edition not shown), 1 l at the end of the race in national rules of 2010; so it is asked',
    seen: 'excerpt',
  },
  'fuel-work': {
    title:
      'Fuel for the work of carburetted two-strokes in general: table of a dynamometer maker as quoted at mechanics.stackexchange.com; conversion as printed in Wikipedia, Brake-specific fuel consumption; 450 g/(kW h) of race engines and 45 % mean power from memory',
    seen: 'excerpt',
  },
  'fuel-balance': {
    title: 'One charge a turn: air by swept volume and dry density, fuel by air over fuel; worked outside the project',
    seen: 'memory',
  },
  'mass-at-scales': {
    title:
      'Weighed after the race: start mass is least mass, fuel burnt, other loss and margin; 0.4 kg ± 0.3 kg other loss',
    seen: 'common practice',
  },
} as const satisfies Readonly<Record<string, Source>>;
