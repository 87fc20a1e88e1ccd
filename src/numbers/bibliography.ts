/**
 * Every source a card may name. `seen` says how it was used: `read` in a public copy, `excerpt` as quoted by somebody
 * who is named, `memory` recalled and not verified, `common practice` without a published source.
 */
export type Source = { readonly title: string; readonly seen: 'read' | 'excerpt' | 'memory' | 'common practice' };

export const BIBLIOGRAPHY = {
  'jcgm-100': {
    title:
      'JCGM 100:2008, Evaluation of measurement data: Guide to the expression of uncertainty in measurement (GUM); 4.3.7 rectangular limits, 5.1.2 combination, G.4.1 Welch-Satterthwaite, H.1 example (components as given in the documentation of the GTC package of the Measurement Standards Laboratory of New Zealand; clauses from memory)',
    seen: 'excerpt',
  },
  'jcgm-106': {
    title:
      'JCGM 106:2012, Evaluation of measurement data: The role of measurement uncertainty in conformity assessment; 7.3, 7.4 (example as quoted at metrologyrules.com, 2022/03), 8 guarded acceptance',
    seen: 'excerpt',
  },
  'ilac-g8': {
    title:
      'ILAC-G8:09/2019, Guidelines on decision rules and statements of conformity (as quoted at tla.sgs.com, Decision Rule)',
    seen: 'excerpt',
  },
  'stack-up': {
    title:
      'Worst case and root-sum-square of a dimensional chain: worked example at metricmech.com, tolerance stack-up',
    seen: 'read',
  },
  'as-26': {
    title:
      'M. Abramowitz, I. A. Stegun (ed.), Handbook of Mathematical Functions, NBS AMS 55, 1964; 26.2.11 series, 26.2.14 continued fraction',
    seen: 'memory',
  },
  'inch-1959': {
    title: 'International yard and pound agreement, 1959: 1 in = 25.4 mm exactly (NIST SP 811, 2008, Appendix B)',
    seen: 'memory',
  },
  'axle-stack': {
    title:
      'Sum of lengths along the rear axle, outer tyre edge to outer tyre edge; 55 in over the tyres for 5 3/4 in from bearing to hub is a garage rule of thumb',
    seen: 'common practice',
  },
  'hub-engagement': {
    title: 'At least 40 mm of axle inside a clamped hub, unless its maker says otherwise',
    seen: 'common practice',
  },
  'split-hub': {
    title:
      'Split hub on a round shaft, two-line contact and vector sum of torque and axial force: published design output at dsoftcon.be, ShaftHubLock; method of the text books named at schweizer-fn.de and tbksoft.com, chapter 19 (structure read, formulas there are images)',
    seen: 'read',
  },
  'nasa-5020': {
    title:
      'NASA-STD-5020B, Requirements for threaded fastening systems; TFSR 6 preload scatter of 35 % by torque wrench, TFSR 14 friction 0.20 clean and 0.10 coated or lubricated (as quoted in DOI 10.1007/s11668-019-00693-z and in public extracts)',
    seen: 'excerpt',
  },
  'dynamic-two': {
    title: 'A load put on suddenly doubles its static effect (elementary energy result)',
    seen: 'memory',
  },
  'key-strength': {
    title:
      'Strength of a square key: formulas at esierra.me, KeyDesign_pg; example 7-6 of a machine-design text, 9th edition, recalled',
    seen: 'memory',
  },
  'press-fit': {
    title: 'Elastic press fit after Lamé: worked example at aionlinecalculator.com, press-fit-calculator',
    seen: 'read',
  },
  'hub-loads': {
    title:
      'Loads on a kart hub: tyre grip 1.7, 57 % of weight at the rear, inner rear wheel in the air in a corner, margin 1.3 against slip',
    seen: 'common practice',
  },
  rodrigues: {
    title:
      'O. Rodrigues, 1840: turning a vector about an axis, a cos + (k × a) sin + k (k·a)(1 - cos); rows worked with matrices, quaternions and a search along the rim outside the project',
    seen: 'memory',
  },
  'axis-angles': {
    title:
      'ISO 8855 and SAE J670: caster and kingpin inclination as angles in the side and front view (caster as in SAE 850219, read in a public copy; the standards themselves from memory)',
    seen: 'excerpt',
  },
  ackermann: {
    title:
      'Cotangent rule of correct steering, cot outer - cot inner = kingpin spacing / wheelbase, as printed at examveda.com',
    seen: 'read',
  },
  'spring-statics': {
    title:
      'Sums of forces and moments on linear springs, worked from first principles; rows worked as linear systems outside the project',
    seen: 'memory',
  },
  'rollover-static': {
    title: 'Static stability factor, track over twice the height of the centre of mass, as printed at designnews.com',
    seen: 'read',
  },
  'gravity-1901': {
    title: 'Standard gravity 9.80665 m/s² exactly: 3rd General Conference on Weights and Measures, 1901',
    seen: 'memory',
  },
  'toe-geometry': {
    title:
      'Sine and tangent of a toe angle over the diameter it is read at; plane geometry, rows worked outside the project',
    seen: 'memory',
  },
  'half-turn': {
    title: 'Rolling half a wheel turn and reading at the same marks takes out what a rim is bent',
    seen: 'common practice',
  },
  'square-geometry': {
    title: 'Axle and kingpins as four points of a plane; coordinate geometry, rows worked outside the project',
    seen: 'memory',
  },
  'square-limits': {
    title: 'Kingpin to axle within 1 mm from side to side, diagonals within 2 mm; the frame maker may say otherwise',
    seen: 'common practice',
  },
  'iso-898-1': {
    title:
      'ISO 898-1, Mechanical properties of fasteners, property classes of bolts: proof and ultimate loads as reprinted at staging2.optimas.com, iso-metric-thread-proof-loads, and slsbearings.com, tensile-strength; clauses, profile and classes other than 8.8, 10.9 and 12.9 from memory',
    seen: 'excerpt',
  },
  'asme-b1-1': {
    title:
      'ASME B1.1, Unified inch screw threads, appendix B: stress area as given at engineersedge.com, thread_stress_area, and boltport.com, UNF table; the list of threads from memory',
    seen: 'excerpt',
  },
  'sae-j429': {
    title: 'SAE J429, Mechanical requirements for externally threaded fasteners: grades 2, 5 and 8',
    seen: 'memory',
  },
  'nut-factor': {
    title:
      'Nut factor: spread by surface at zipfastener.com, engineering data; a chart with 0.20 dry and 0.15 lubricated at mobiletechengineering.com, 2020/11/15',
    seen: 'read',
  },
  'vdi-2230': {
    title:
      'VDI 2230 part 1, Systematic calculation of highly stressed bolted joints: fine-thread tables as reprinted at mastik.pt, page 685; formulas from memory',
    seen: 'excerpt',
  },
  'preload-scatter': {
    title:
      'NASA-STD-5020, preload uncertainty of a torque wrench, 35 % dry and 25 % lubricated, as quoted in Journal of Failure Analysis and Prevention, doi 10.1007/s11668-019-00693-z; turn of nut and stretch from a student team page',
    seen: 'excerpt',
  },
  'ac-43-13-torque': {
    title:
      'FAA AC 43.13-1B, Acceptable methods, techniques and practices: paragraph 7-40, tables 7-1 and 7-2, as copied at landseaskyspace.com, ac4313',
    seen: 'read',
  },
  'army-locknut': {
    title:
      'US Army TM 10-5430-232-12&P table I-2 and TM 1-1500-204-23-6 table 2-8: least breakaway torque of used locknuts',
    seen: 'read',
  },
  'army-lubricated': {
    title: 'US Army TM 9-6115-604-34 table 1-2, notes: cut of dry torques for oiled and plated screws',
    seen: 'read',
  },
  'hex-head': {
    title: 'ISO 4014 bearing face of hexagon heads, ISO 273 medium clearance holes',
    seen: 'memory',
  },
  statics: {
    title: 'Sums of forces and moments of a rigid body at rest; first principles',
    seen: 'memory',
  },
  'corner-shares': {
    title:
      'Front, left and cross (front right with rear left) share of four wheel readings; the diagonal is always named',
    seen: 'common practice',
  },
  'raised-axle': {
    title:
      'Height of the centre of mass from one axle raised: derived for wheels of unequal size by moment balance of a turned rigid body; for equal wheels it is the result printed as eq. 3 at openbooks.link and in a note by Gray, 1997; that the usual formulas mishandle unequal radii is said in the abstract of SAE 2004-01-1076',
    seen: 'read',
  },
  'plane-fit': {
    title: 'A stiff plate on four equal springs, least energy: F = A (AᵀA)⁻¹ [m, m x, m y]; worked outside the project',
    seen: 'memory',
  },
  'ballast-lp': {
    title:
      'Least ballast as a linear programme over the moments of mass; linear equations, rows solved outside the project',
    seen: 'memory',
  },
  'ballast-fixing': {
    title:
      'Ballast rules of five bodies, which differ (two bolts of 6 mm a block; 8 mm through-bolted with 30 mm washers; class 8.8 and 5 kg a block; 1/4 in; 5/16 in pinned): their strictest merge. Read in public copies, the first as quoted by others; no international article text',
    seen: 'excerpt',
  },
  'fuel-density': {
    title: 'Petrol about 0.745 kg/l, 0.715 to 0.775 kg/l by season and blend; weigh a litre of your own',
    seen: 'common practice',
  },
  'share-start': {
    title: 'Starting shares 43 % front and 50 % left: published chassis set-up guide, 2005',
    seen: 'read',
  },
  'iso-1234': {
    title: 'ISO 1234, Split pins: dimension table as reprinted at tgrfast.com, ProductDetails/234',
    seen: 'read',
  },
  'pin-for-bolt': {
    title: 'ISO 1234, Split pins: the bolt sizes each pin is for',
    seen: 'memory',
  },
  'twist-per-inch': {
    title: 'NASM33540, General practices for safety wiring: twists an inch as quoted in a thread at wmrc.ca',
    seen: 'excerpt',
  },
  'lockwire-rules': {
    title:
      'FAA AC 43.13-1B, paragraphs 7-122 to 7-126, as quoted at vansairforce.net, thread 78913, and landseaskyspace.com, ac4313; US Army TM 10-3930-659-34, paragraph 2-22',
    seen: 'excerpt',
  },
  'strap-strength': {
    title: 'Loop strength of nylon 6/6 straps by width: trade table at cableties-online.co.uk',
    seen: 'read',
  },
  'strap-ageing': {
    title:
      'IEC 62275, Cable ties for electrical installations: type 1 keeps 50 % after conditioning, as quoted by NEMA',
    seen: 'excerpt',
  },
  'ac-43-13-locking': {
    title:
      'FAA AC 43.13-1B, paragraph 7-64: where self-locking nuts may not be used, as copied at globalmicroturbine.com',
    seen: 'read',
  },
  'clip-practice': {
    title:
      'Spring clips hold light side load and lock no thread; marks show and do not hold; a key holds nothing along its shaft',
    seen: 'common practice',
  },
  'brake-balance': {
    title:
      'Axle loads, ideal share and lock order of a two-axle vehicle by moment balance: formulas read at vipsolutions.in and novasolver.jp; values worked outside the project',
    seen: 'read',
  },
  'brake-ratio': {
    title: 'Pedal ratio and piston area: worked example at board.moparts.org, post 1235219',
    seen: 'read',
  },
  'brake-heat': { title: 'Heat of a disc in one stop: worked problem at solve.club, hot-wheels', seen: 'read' },
  'brake-stop': { title: 'Stopping distance v t + v²/(2 a): formula at engineeringniche.com', seen: 'read' },
  'brake-usual': {
    title:
      'Efficiency 95 %, pad friction 0.35 to 0.5, rotating share 0.03 to 0.05, specific heat 460 J/(kg·K), effect of which axle locks first',
    seen: 'memory',
  },
  'pad-limit': {
    title: 'At least 2 mm of friction material, unless the maker says otherwise',
    seen: 'common practice',
  },
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

export type SourceKey = keyof typeof BIBLIOGRAPHY;
