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
trade-lowest-absolute-zero = absolute zero
trade-lowest-zero = zero
