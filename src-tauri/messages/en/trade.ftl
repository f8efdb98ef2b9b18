# Why a number of the trade could not be taken, or a figure could not be worked out. A value comes with its unit.

## Numbers, units, tables and tools that can't be taken

trade-number-empty = No number yet. Type what the instrument shows.
# $text: as typed; $character: what does not fit
trade-number-character = "{ $character }" in "{ $text }" is not part of a number.
# $text: as typed
trade-number-separators = "{ $text }" has more than one comma or point. Type it without thousands separators.
# $text: as typed
trade-number-unfinished = "{ $text }" needs a digit at the end.
# $text: as typed
trade-number-too-large = "{ $text }" is too large. Type what the instrument shows.
trade-amount-empty = No amount yet. Type it, such as 12.50.
# $text: as typed
trade-amount-below-zero = "{ $text }" is below zero. Type an amount from 0 on.
# $text: as typed; $whole: the number with its sign between thousands; $parts: the number with its sign as the decimal sign
trade-amount-ambiguous = "{ $text }" can be { $whole } or { $parts }. Type it as one of these.
# $text: as typed
trade-amount-places = "{ $text }" has more than two places behind the decimal sign. Round it to two.
# $text: as typed; $most: the most that is taken
trade-amount-too-large = "{ $text }" is too large: at most { $most }. Look for a digit too many.
trade-sum-too-large = The amounts add up to more than can be counted. Look for a digit too many.
# $known: the codes that are known
trade-currency-missing = The currency is missing. Choose one of: { $known }.
# $text: as typed; $known: the codes that are known
trade-currency-unknown = The currency "{ $text }" is not known here. Choose one of: { $known }.
# $text: as typed; $known: the units that are known
trade-unit-unknown = The unit "{ $text }" is not known here. Choose one of: { $known }.
# $unit: as typed; $found: what it measures, $wanted: what is asked for, both trade-quantity-*
trade-quantity-differs = "{ $unit }" is a unit of { $found }; a unit of { $wanted } is asked for.
# $value: as typed
trade-not-measurable = No instrument shows { $value }. Read it again.
# $value: as typed; $quantity: trade-quantity-*; $lowest: trade-lowest-*
trade-below-lowest = { $value } cannot be a { $quantity }: it is below { $lowest }. Check the sign and the unit.
# $points: how many there are
trade-table-too-short = A chart needs at least two points; here are { $points }. Complete the sheet.
# $position: which point, from 1
trade-table-not-finite = Point { $position } of the chart is not a number to calculate with. Correct the sheet.
# $previous, $next: two points that follow each other
trade-table-not-rising = The chart goes from { $previous } to { $next }. Enter its points in rising order, each once.
# $value: what was looked up; $from, $to: where the chart holds
trade-outside-table = { $value } is outside the chart, which covers { $from } to { $to }.
# $temperature, $low, $high: one point of the chart
trade-chart-marks = At { $temperature } the chart has { $low } as low and { $high } as high mark. The low mark must be 0 or more and below the high mark.
# $value: as typed
trade-stick-below-end = A trace at { $value } is below the end of the stick. Read it again.
# $value: as it stands
trade-agreement-negative = Readings cannot agree within { $value }. Enter 0 or more.
# $percent: as it stands
trade-percent-range = { $percent } % cannot be a tolerance. It must be above 0 % and below 100 %.
# $value: as it stands
trade-target-not-positive = { $value } cannot be a torque to reach. It must be above 0.
trade-no-stage = The torque has no stage. Enter at least one.
# $lowest, $highest: the range given
trade-tool-range = The tool's range { $lowest } to { $highest } is not possible. Correct the tool.

## Figures that can't be worked out

# $position: which entry, from 1
trade-clock-went-back = The clock went back before entry { $position }, so nobody knows how long it took. Set the clock.
# $position: the place of the entry, counted from 1
trade-in-the-future = Taking the time of entry { $position } failed: it lies after now. Put the clock or the time right.
# $position: the place of the later one, counted from 1
trade-same-moment = Taking reading { $position } failed: it has the time of the one before it. Put one of the times right.
trade-no-reading = Working it out failed: there is no reading. Take one.
trade-level-not-known = Working out a volume failed: the level is unclear. Read it until the readings agree.
# $gain: rise for each litre
trade-gain-not-positive = A rise of { $gain } is not possible. Correct the sheet.
trade-no-addition = Learning the rise for each litre failed: nothing was added yet. Enter what was poured in.
# $position: its place, counted from 1
trade-addition-empty = Learning the rise for each litre failed: addition { $position } is 0 L. Enter what was poured in.
# $percent: the share in percent
trade-share-range = Taking { $percent } % as the share to pour failed: it must be above 0 % and at most 100 %.
trade-pour-empty = Splitting the top-up failed: the most to pour at once must be above 0 L.
# $pours: how many
trade-too-many-pours = Splitting the top-up failed: it would take { $pours } pours. Allow more at once, or look at the figures.
# $hold_back: what to stay short by
trade-hold-back-too-large = Working out the first refill failed: { $hold_back } to stay short by leaves nothing to pour. Look at it again.
# $density: on the sheet
trade-density-range = A fluid density of { $density } is not possible: 800.9 to 1163.5 kg/m³ at 15 °C. Correct the sheet.
# $temperature: as entered
trade-fluid-temperature = A volume at { $temperature } can't be calculated with: −40 to 95 °C only. Measure it when the fluid has cooled.
trade-nothing-measured = The balance can't be worked out: it needs what was drained and what was added.
# $temperature: as typed; $from, $to: where copper is calculated with
trade-copper-range = { $temperature } is outside { $from } to { $to }, where a coil can be calculated. Read the temperature again.
# $lowest, $highest: the limits on the sheet
trade-limits-turned = The limits { $lowest } to { $highest } are not possible. Correct the sheet.
# $percent: as typed
trade-meter-percent = A meter error of { $percent } % is not possible: 0 or more and below 100. Check the meter's manual.
# $leads: what the leads have
trade-leads-above-reading = The leads have { $leads }, more than leads and coil together. Measure both again.
# $code: as typed
trade-code-form = "{ $code }" is not a trouble code. A code is like P0765: a letter P, C, B or U and four digits.
# $code: as typed
trade-code-padding = "{ $code }" stands for "no code". Leave it out.
# $bytes: the bytes; $why: trade-answer-*
trade-code-answer = Reading the answer "{ $bytes }" failed: { $why }. Ask the control unit again.
# $length: as entered
trade-tool-length = The tool's length of { $length } must be above 0. Measure from the grip to the drive.
# $length: as entered
trade-adapter-length = The crowfoot's length of { $length } is below 0. For one that points back, enter the angle.
# $angle: as entered
trade-adapter-angle = The crowfoot's angle of { $angle } must be between −180 and 180 degrees.
trade-adapter-reach = The crowfoot points so far back that the bolt is at the grip. Use another one.
# $angle, $tolerance: as on the sheet
trade-angle-stage = An angle of { $angle } ± { $tolerance } is not possible: above 0 and at most 720 degrees, the tolerance above 0 and below it.
# $angle: as entered
trade-angle-turned = A turn of { $angle } is not possible: 0 to 720 degrees. Read it again.
# $months: the interval in months
trade-calibration-months = Working out a calibration's last day failed: { $months } months do not give one. Correct the tool.
# $text: what was typed
trade-thread-form = Reading the thread "{ $text }" failed: write it as M6, M8x1 or M10x1.25.
# $diameter: nominal diameter; $pitch: pitch
trade-thread-range = Taking a thread of { $diameter } with a pitch of { $pitch } failed: the diameter must lie between 3 mm and 16 mm, the pitch above 0 mm and below a quarter of it.
# $text: what was typed
trade-grade-form = Reading the grade "{ $text }" failed: it is one of 8.8, 10.9 and 12.9, as it stands on the head.
trade-no-bolts = Finding an order failed: there is no bolt. Enter where the bolts sit.
# $id: the name
trade-bolt-twice = Finding an order failed: two bolts are called "{ $id }". Give each a name of its own.
# $first, $second: numbers of two places
trade-bolts-in-one-place = Fasteners { $first } and { $second } have the same place. Correct one of them.
# $id: its name
trade-bolt-unknown = Finding the next bolt failed: there is no bolt "{ $id }". Take one of the cover's.
trade-no-contact = Finding a touch limit failed: the contact must last longer than 0 s.
# $level: the level
trade-glove-level = Finding a touch limit failed: gloves have a contact heat level of 1 to 4, not { $level }.
# $lowest, $highest: as typed
trade-emissivity-range = An emissivity of { $lowest } to { $highest } is not possible: above 0 and at most 1. Check the meter.
# $value: what the meter shows
trade-radiation = No surface gives { $value } with this emissivity. Use a contact probe.
# $position: the place of the entry, counted from 1
trade-not-clocked-on = Adding up labour failed at entry { $position }: it clocks off what was not clocked on. Put the entries right.
# $position: the place of the entry, counted from 1
trade-reason-missing = Adding up labour failed at entry { $position }: waiting and unplanned work need a reason. Enter it.
trade-too-long = Adding up labour failed: it comes to more time than can be counted. Put the times right.
trade-answer-too-short = it is too short
trade-answer-first-byte = its first byte is none of 43, 47 and 4A
trade-answer-count = its count is not that of its codes

## What is measured

trade-quantity-temperature = temperature
trade-quantity-length = length
trade-quantity-torque = torque
trade-quantity-volume = volume
trade-quantity-resistance = resistance
trade-quantity-voltage = voltage
trade-quantity-distance = distance
trade-quantity-rotation-speed = rotation speed
trade-quantity-time = time
trade-quantity-angle = angle
trade-quantity-temperature-difference = temperature difference
trade-quantity-density = density
trade-quantity-force = force
trade-quantity-rise = rise for each volume
trade-quantity-pressure = pressure
trade-lowest-absolute-zero = absolute zero
trade-lowest-zero = zero

# What the figures of the trade say: how they came about, and where their rules come from. A measured value is given with
# its unit; minutes, percent and factors are numbers as text. What a line is about is written small, as it stands before
# its value.

## Headings, and what several figures say

working-given = given
working-steps = steps
working-result = result
working-source = source
# $name: what an instrument, a standard or a person calls it
working-name = { $name }
working-read = read
# $minutes: minutes since the first entry
working-after = after { $minutes } min
# $low, $high: the ends, each a value with its unit
working-range = { $low } to { $high }
# $value: what was read; $at: the temperature or the angle of it
working-at = { $value } at { $at }
# $temperature: for which the value stands
working-at-temperature = at { $temperature }
working-surroundings = surroundings
working-meter-shows = meter shows
working-drained = drained
working-estimate = estimate
working-rise = rise for each litre
working-factor = factor
working-limits = limits
working-torque = torque
working-target = target
working-setting = setting
working-tool = tool
working-calibrated-until = calibrated until
working-day = day
working-touch-limit = touch limit

## Fluid balance

working-balance = fluid balance
working-added = added
working-density = density at 15 °C
working-unseen = unseen
working-drained-at-15 = drained at 15 °C
working-added-at-15 = added at 15 °C
working-difference = difference
working-difference-how = added − drained
working-uncertainty = uncertainty
# $volumes, $temperatures, $density, $unseen: the parts, in litres
working-uncertainty-how = 2 × √({ $volumes }² volumes + { $temperatures }² temperatures + { $density }² density + { $unseen }² unseen)
# $difference: the difference with its uncertainty
working-balanced = The difference of { $difference } lies within its own uncertainty.
# $difference: the difference with its uncertainty
working-more-in = More went in than came out: { $difference }.
# $difference: the difference with its uncertainty
working-less-in = Less went in than came out: { $difference }. The level decides what is missing.
working-beyond-capacity = That is more than the transmission holds: look at the figures again.

## Torque against its bolt

working-bolt = torque against its bolt
working-bolt-given = bolt
working-bolt-area = stress area
working-bolt-proof-load = proof load
working-bolt-usual = usual pull
working-bolt-friction = from dry to slippery
# $percent: the usual pull as a share of the proof load
working-bolt-plausible = The torque makes sense: { $percent } % of its proof load at the usual friction.
# $percent: the usual pull as a share of the proof load
working-bolt-high = The torque is high for this bolt: { $percent } % of its proof load at the usual friction. Look at the sheet again.
# $percent: the usual pull as a share of the proof load
working-bolt-impossible = The torque can't be meant for this bolt: { $percent } % of its proof load at the usual friction. Wrong unit, wrong line or wrong bolt.

## Trouble codes

working-codes = trouble codes
# $bytes: two bytes in hexadecimal digits
working-code-bytes = bytes { $bytes }
# $system: powertrain, chassis, body or network; $origin: who defines the code; $part: its family, none where it has none
working-code =
    { $system ->
        [chassis] chassis
        [body] body
        [network] network
       *[powertrain] powertrain
    }, { $origin ->
        [maker] defined by the vehicle's maker
        [reserved] reserved
       *[standard] defined by the standard
    }{ $part ->
        [fuel_and_air] , fuel and air metering
        [ignition] , ignition and misfire
        [emissions] , auxiliary emission controls
        [speed_and_idle] , speed and idle
        [computer] , computer and its outputs
        [transmission] , transmission
        [hybrid] , hybrid propulsion
       *[none] {""}
    }
working-codes-none = No code is stored.
# $count: how many; $codes: the codes
working-codes-found =
    { $count ->
        [one] One code: { $codes }.
       *[other] { $count } codes: { $codes }.
    }

## Coil resistance

working-coil = coil resistance
working-coil-overload = overload
working-coil-leads = leads
working-coil-meter-error = meter's error
working-coil-temperature = temperature
working-coil-alone = coil alone
working-coil-worst = with every error
working-coil-worst-how = meter and thermometer at their worst
working-coil-in = The coil is within its limits.
working-coil-low = The coil is below its lower limit: turns are shorted, or it is another part.
working-coil-high = The coil is above its upper limit: look at the pins, then at the coil.
working-coil-unclear = Undecided: a limit lies within the errors. Measure again at the limits' temperature or with a finer range.
working-coil-open = The coil is open: look at connector and wire before the coil is blamed.
working-coil-short = The coil is shorted: look at connector and wire before the coil is blamed.

## Cool-down

working-cooling = cool-down
working-cooling-place = probed at
working-cooling-joint = joint
working-cooling-shell = shell
# $temperature: what was probed
working-cooling-left-out = { $temperature }, does not count: the engine ran since
working-cooling-probe = probe
working-cooling-rate = rate
working-cooling-left-over = left over
# $readings: how many count, three or more
working-cooling-curve = least squares through { $readings } readings
working-cooling-earliest = earliest
working-cooling-likely = likely
working-cooling-not-before = not before
working-cooling-time-how = from the last reading to the limit
working-cooling-below = The last reading is at or below the limit. Probe again before hands go on.
working-cooling-cools = It cools. The time is "not before": probe again then.
working-cooling-too-few = Not yet enough readings: three are needed since the engine was off.
working-cooling-rises = A reading is hotter than one before it: the engine was run, or a hot core heats the part again. Wait, and begin anew from the hottest reading.
working-cooling-never = The limit lies at or below the surroundings, so it is never reached: look at limit and surroundings.
working-cooling-no-curve = The readings give no curve to go by: take more, some minutes apart.
# $minutes: how long, with its unit
working-cooling-wait = Not before { $minutes } after the last reading.
working-cooling-spread = These readings can't say when: their spread is too wide. Take more.

## Whether the symptom may be judged

working-diagnosis = whether the symptom may be judged
# $class: where the level stood
working-diagnosis-level = level { $class }
working-diagnosis-shows = tried, the symptom shows
working-diagnosis-gone = tried, the symptom is gone
working-diagnosis-not-read = Diagnosis stays closed: read the fluid level at its temperature first.
working-diagnosis-below = Diagnosis stays closed: the level is too low. Top up, read again, try again.
working-diagnosis-above = Diagnosis stays closed: the level is too high. Take some out, read again, try again.
working-diagnosis-unclear = Diagnosis stays closed: the level is unclear. Read it again.
working-diagnosis-not-tried = Diagnosis stays closed: the level is in its band now, so try the concern again first.
working-diagnosis-was-level = Diagnosis is open, and the symptom is gone: the level was the cause found so far.
working-diagnosis-open = Diagnosis is open: the symptom shows with the level in its band.

## Rise of the level for each litre

working-gain = rise of the level for each litre
# $number: which addition, from 1
working-gain-addition = addition { $number }
# $volume: what was poured in; $before, $after: height above the low mark
working-gain-rose = { $volume }, from { $before } to { $after }
working-gain-how = Σ volume × rise / Σ volume²
working-gain-interval = 95 % interval to both sides
# $gain: the rise for each litre
working-gain-learnt = The level rises { $gain }.

## Estimate

working-repair-estimate = estimate
working-estimate-unpriced = no price
working-estimate-sum = parts and labor
working-estimate-limit = with all that may turn up
# $parts, $labor, $sum, $limit: amounts with their currency; $hours: hours of labor
working-estimate-comes-to = Parts { $parts }, labor { $labor } for { $hours } h: { $sum } before tax, at most { $limit } with what may turn up.

## Labour

working-labour = labour
# $phase: the phase of the job
working-labour-on = on: { $phase }
# $phase: the phase of the job; $reason: why it waits
working-labour-on-waiting = on: { $phase }, waiting: { $reason }
# $phase: the phase of the job; $reason: why it was not planned
working-labour-on-unplanned = on: { $phase }, unplanned: { $reason }
working-labour-off = off
working-labour-work = work
# $reason: why it waits
working-labour-waiting = waiting: { $reason }
# $reason: why it was not planned
working-labour-unplanned = unplanned: { $reason }
working-labour-work-how = planned + unplanned
working-labour-tenths = tenths of an hour
# $minutes: how long, with its unit
working-labour-tenths-how = { $minutes } / 6 min, to the nearest
# $hours: hours in tenths; $waiting: how long, with its unit
working-labour-sum = { $hours } h of labour; waiting { $waiting } apart.
# $expected: how long, with its unit; $minutes: the difference without its sign; $than: more or less
working-labour-expected =
    { $than ->
        [more] Expected: { $expected }; it took { $minutes } min more.
       *[less] Expected: { $expected }; it took { $minutes } min less.
    }

## Fluid level

working-level = fluid level
# $number: which reading, from 1
working-level-reading = reading { $number }
working-level-dry = no trace
working-level-dry-confirmed = no trace, looked at again
# $read: what was read
working-level-before-start = { $read }, does not count: the engine was started since
# $read: what was read
working-level-before-change = { $read }, does not count: fluid was added or drained since
# $temperature: a row of the chart
working-level-chart-at = chart at { $temperature }
working-level-agreement = may differ by
working-level-agreement-open = not given: on the same side of the marks
# $temperature: of the reading
working-level-band-at = band at { $temperature }
# $temperature: of the reading
working-level-low-at = low mark at { $temperature }
# $temperature: of the reading
working-level-high-at = high mark at { $temperature }
working-level-chart = chart
working-level-outside = outside the chart
# $number: which reading, from 1
working-level-above-low = reading { $number } above the low mark
working-level-nearest = nearest mark
# $class: where it lies; $distance: how far from the mark; $mark: low or high
working-level-from-mark =
    { $mark ->
        [low] { $class }, { $distance } from the low mark
       *[high] { $class }, { $distance } from the high mark
    }
working-level-spread = spread
working-level-spread-how = highest − lowest above the low mark
working-level-below = below the band
working-level-in = in the band
working-level-above = above the band
working-level-unclear = unclear
# $class: where it stands; $reason: why, a sentence
working-level-is = The level is { $class }. { $reason }
working-level-agree = The readings agree.
working-level-no-trace-confirmed = The stick stays dry after a second look: the level is below the stick, by how much is not known.
working-level-too-few = One reading is not enough: wipe the stick and read again.
working-level-outside-chart = A temperature is outside the chart, and the chart is not guessed beyond its ends: bring the fluid inside and read again.
working-level-no-trace = The stick stayed dry: look at its seating, at the temperature and at the idle, then read again.
working-level-disagree = The readings do not agree: wipe the stick and read again.
working-level-classes-differ = The readings lie on both sides of a mark: read again.
working-level-floor = The level is not judged: put the vehicle on a level floor and read again.
working-level-idle = The level is not judged: let the engine idle and read again.
working-level-park = The level is not judged: shift to park and read again.
working-level-ranges = The level is not judged: cycle through the ranges with the brake held and read again.

## Bolt order

working-order = bolt order
working-order-pattern = pattern
working-order-star = star
working-order-crosswise = crosswise from the middle
working-order-spiral = spiral from the middle
# $id: the bolt's name
working-order-bolt = bolt { $id }
# $bolts: every bolt's name, with commas between them
working-order-is = Order: { $bolts }.
working-order-stages = The same order in every stage. The sheet's own order, if it has one, comes first.
# $id: the bolt's name
working-order-next = Next: { $id }.
working-order-done = All are done in this stage.

## Surface by infrared

working-surface = surface by infrared
working-surface-set-to = set to
working-surface-emissivity = surface's emissivity
working-surface-lowest = lowest
working-surface-highest = highest
# $likely, $lowest, $highest: temperatures
working-surface-is = The surface is { $likely }, between { $lowest } and { $highest }.
working-surface-no-evidence = This is no evidence that it can be touched: a bright surface reads far too low. Use a contact probe or coat a spot.

## Top-up and first refill

working-top-up = top-up
working-top-up-share = share to pour
working-top-up-most = most at once
working-top-up-rise = rise to the middle of the band
working-top-up-rise-how = middle − trace, mean of the readings
# $estimate: a volume
working-top-up-at-least = at least { $estimate }
working-top-up-pours = pours
# $estimate: a volume; $percent: the share of it; $count: how many pours
working-top-up-pours-how =
    { $count ->
        [one] { $estimate } × { $percent } %, at most up to the high mark, in one pour
       *[other] { $estimate } × { $percent } %, at most up to the high mark, in { $count } pours
    }
# $pour: a volume
working-top-up-each = { $pour } each
# $total: a volume; $count: how many pours; $estimate: a volume, or at least that
working-top-up-add =
    { $count ->
        [one] Pour in { $total } in one step, then read again. The estimate is { $estimate }; stay short of it.
       *[other] Pour in { $total } in { $count } steps, then read again. The estimate is { $estimate }; stay short of it.
    }
# $estimate: a volume
working-top-up-take-out = Too high: take out about { $estimate }, then read again. Shifts are not judged before.
working-top-up-leave = The level is in its band: add nothing.
working-refill = first refill
working-refill-new = new fluid
working-refill-hold-back = stay short by
working-refill-intake = level at intake
# $class: where the level stood; $gain: the rise for each litre
working-refill-level = { $class }, { $gain }
working-refill-not-known = not known
working-refill-as-new = drained as new fluid
# $drained: a volume at its temperature; $temperature: of the new fluid
working-refill-as-new-how = { $drained }, at { $temperature }
working-refill-missing = missing at intake
working-refill-missing-how = rise to the middle / rise for each litre
working-refill-pour = first pour
# $pour: a volume
working-refill-first = Pour in { $pour } first; start, cycle the ranges, bring the fluid into the chart and read. The rest follows the reading.

## Torque

working-torque-newton-metres = setting in N·m
working-torque-off-target = off target
working-torque-off-target-how = (setting − target) / target
working-torque-proved = proved
# $percent: how far the tool may be off
working-torque-proved-how = limits, narrowed by { $percent } %
working-torque-outside = The setting is outside the tolerance: set the tool again.
working-torque-tool-range = The setting is outside the tool's range: take a tool that reaches it.
working-torque-calibration = The tool's calibration has run out: take another tool.
# $value: the number of the setting in another unit; $unit: that unit
working-torque-unit-slip = { $value } would fit: is the tool's scale in { $unit }?
working-torque-inside = Inside the tolerance, also with all that the tool may be off.
working-torque-tool-coarse = Inside the tolerance as set. No setting of this tool proves it: the tolerance is finer than the tool.
working-torque-not-proved = Inside the tolerance as set, but not proved: the tool's deviation reaches over a limit.
working-tool-use = whether a tool may be used
working-tool-may = The tool may be used for it.
working-adapter = setting with an adapter
working-adapter-wanted = torque at the bolt
working-adapter-given = adapter
# $setting: in the unit of the torque; $newton_metres: the same in N·m; $wanted: the torque at the bolt
working-adapter-set = Set the tool to { $setting } ({ $newton_metres }) for { $wanted } at the bolt, and keep the angle.
working-angle = angle stage
working-angle-turned = turned
working-angle-left = left to turn
working-angle-inside = Inside the tolerance.
# $left: the angle that is left
working-angle-short = Too little: turn on by { $left }.
working-angle-over = Too much: do not turn back; loosen or replace the bolt as the sheet says.

## Touch limit

working-touch-contact = contact
working-touch-gloves = gloves
working-touch-bare = none
# $level: the level printed on the gloves
working-touch-level = contact heat level { $level }
# $level: the level printed on the gloves
working-touch-level-short = contact heat level { $level }, which stands for 15 s only
working-touch-surface = surface
working-touch-metal = judged as bare metal
# $limit: the highest temperature; $contact: how long
working-touch-at-most = At most { $limit } for a contact of { $contact }.

## Vehicle identification number

working-vin = vehicle identification number
working-vin-sum = sum of value × weight
working-vin-check-digit = check digit
working-vin-year = model year
# $code: the character at place 10
working-vin-year-how = place 10, { $code }
# $year: of a light vehicle; $first, $second: of any other
working-vin-years = { $year } for a light vehicle, else { $first } or { $second }
# $vin: the number
working-vin-fits = { $vin } has the right form and its check digit fits.
# $found: how many characters
working-vin-length = It has { $found } characters, but a vehicle identification number has 17: read it again.
# $position: which place, from 1; $found: the character
working-vin-character = Place { $position } has "{ $found }", which no number has: read it again.
# $found: the check digit; $expected: what the others ask for
working-vin-check = The check digit at place 9 is { $found }, but the other characters ask for { $expected }: read it again. Outside North America it need not fit.
# $found: the character
working-vin-no-year = Place 10 has "{ $found }", which stands for no model year: read it again.
# $vin: the number that may be meant; $changes: what was taken for what
working-vin-perhaps = Perhaps { $vin }: { $changes }.
# $meant: the character that may be meant; $found: the one that was read; $position: which place, from 1
working-vin-change = { $meant } for { $found } at place { $position }
# $start, $next: changes
working-vin-changes = { $start }, { $next }
# $start, $last: changes
working-vin-changes-last = { $start } and { $last }

## Where rules and constants come from: the names of what was published stay as they are

# $says: what it is and says; $seen: how well it was seen
source-seen =
    { $seen ->
        [read] { $says } (read)
        [second_hand] { $says } (second-hand)
        [memory] { $says } (from memory)
        [common_practice] { $says } (common practice)
       *[ours] { $says } (our choice)
    }
source-chart = the sheet's chart, on straight lines between its rows, never beyond them
source-level-conditions = the level counts on a level floor, idling, in park, after the ranges were cycled
source-read-twice = the level is read at least twice and the readings must agree
source-level-first = level and temperature come before any diagnosis
source-add-less = add less than the estimate, then read again
source-drained-first = the first refill is what was drained, the rest follows the reading
source-least-squares = least squares; the spread from what is left over, by Student's t (textbook)
source-expansion = ASTM D1250 / API MPMS 11.1, lubricating oils, table 54D: K0 = 0, K1 = 0.6278 in °C; transmission fluid is an oil with many additives, so this is an estimate
source-uncertainty = JCGM 100 (GUM): limits to both sides count as rectangular, parts add up as squares, coverage factor 2
source-copper = NBS Handbook 100, copper: 0.00393 / °C at 20 °C, linear up to 200 °C
source-meter-error = a meter's error is its percent of the reading and its last digits together
source-code-form = SAE J2012 / ISO 15031-6: two bytes, system and origin in the upper four bits
source-code-groups = SAE J2012 groups as two scan tool manuals and a forum page quote them; where they differ on 3xxx in body and chassis, "reserved" is taken
source-vin-rule = 49 CFR 565.15 (c): values, weights, remainder by 11
source-vin-years = 49 CFR 565.15: position 10 by a cycle of 30 years; position 7 tells the cycle of light vehicles only
source-vin-lookalikes = characters that are taken for each other by eye
source-tool-rules = ISO 6789:2003, type II class A: 4 %, 6 % up to 10 N·m; used within its range only
source-calibrated-yearly = ISO 6789: a click tool is calibrated every 12 months or 5000 clicks
source-guard-band = ISO 14253-1: proved inside when the limits, narrowed by the uncertainty, are kept
source-adapter = setting = torque × L / (L + E cos angle): US Army TM 9-254, US Navy aviation training manual
source-angle-marked = an angle is turned from a mark on bolt and part, in one go, and its bolt is not used again where the sheet says so
source-proof-loads = ISO 898-1: stress area and proof stress, as suppliers' tables give them; 8.8 from memory
source-nut-factor = Shigley, Mechanical Engineering Design, 9th ed., T = K F d and table 8-15: K 0.12 to 0.30
source-coarse-pitch = ISO 261: coarse pitches
source-star = star pattern as in ASME PCC-1, the older one: opposite, quarter, opposite
source-from-the-middle = a cover is tightened from the middle out, crosswise, in stages
source-newton = Newton's law of cooling, T = Ta + (T0 − Ta) e^(−k t) (textbook)
source-reheats = a catalyst's core heats its shell again: joint and shell are both probed
source-touch = ISO 13732-1, bare metal, as pages and ECMA-287 quote it: 65 °C 1 s, 55 °C 10 s, 48 °C 10 min, 43 °C longer; 51 °C for 1 min is from memory
source-gloves = EN 407, contact heat: level 1 to 4 holds 100, 250, 350, 500 °C for 15 s
source-planck = Planck's law over 8 to 14 µm, CODATA 2018 constants (textbook)
source-radiometry = what an infrared meter takes up: emissivity × surface + (1 − emissivity) × surroundings (camera manuals)
source-emissivities = emissivity at 8 to 14 µm from the tables in meters' and cameras' manuals
source-tenths = a tenth of an hour is 6 minutes, to the nearest: 3 to 8 minutes are 0.1 h (a time card chart); some shops round up
source-line-rounding = each line to the nearest hundredth, half up, and sums of the lines as rounded
