# What `panside-cli figure` says: what each figure is about, what each of its keys is, and what is wrong with what was typed.
# Names of figures and keys, and examples of values, are typed as they stand and so are the same in every language.

## What is listed

cli-values = A value is written with its unit and no space: temp=46C reading=31mm torque=9lbf.ft. A comma or a point is the decimal sign. Parts of one value are joined by a colon.
# $is: what the key is
cli-perhaps = { $is } (may be left out)
# $is: what the key is
cli-often = { $is } (once or more)
# $is: what the key is
cli-perhaps-often = { $is } (as often as there are)

## Keys of several figures

cli-key-reading = what the stick shows, with its own temperature and time if need be, 31mm or 31mm:46C or 31mm:46C:12min; dry, or dry-confirmed after a second look
cli-key-mark = a row of the chart: temperature, low and high mark, 40C:12mm:22mm; else --sheet
cli-key-temp = fluid temperature of the readings, 46C
cli-key-chart = the chart's key on the sheet, level_chart
cli-key-agree = how far readings may differ, 2mm
cli-key-floor = level floor, yes or no
cli-key-idle = engine idling, yes or no
cli-key-park = in park, yes or no
cli-key-cycled = ranges cycled, yes or no
cli-key-started = when the engine was started, 5min
cli-key-changed = when fluid was last added or drained, 10min
cli-key-now = now, 15min
cli-key-addition = what was added with the height above the low mark before and after, 0.5L:-8mm:-1mm
cli-key-tool = the tool's range, 5Nm:25Nm
cli-key-class = how far it may be off, 4%; else by ISO 6789 class A
cli-key-due = last day of its calibration, 2026-06-30
cli-key-calibrated = instead: the day it was calibrated, 2025-06-30
cli-key-months = months between calibrations, 12
cli-key-on = the day it is used, 2026-05-04
cli-key-ambient = temperature of the surroundings, 22C

## Keys of the figure "level"

cli-level = where the fluid level stands at its temperature

## Keys of the figure "diagnosis"

cli-diagnosis = whether the symptom may be judged yet
cli-diagnosis-level = a time and where the level stood, 10min:below, in, above or unclear
cli-diagnosis-tried = a time and what a try of the concern showed, 20min:shows or gone

## Keys of the figure "topup"

cli-topup = how much to pour in after a reading
cli-topup-gain = rise for each litre, 15mm/L
cli-topup-share = share of the estimate to pour, 80%
cli-topup-pour = the most at once, 0.5L

## Keys of the figure "gain"

cli-gain = rise of the level for each litre, learnt from additions

## Keys of the figure "refill"

cli-refill = how much to pour in first after a drain
cli-refill-drained = what came out and its temperature, 4.2L:45C
cli-refill-poured = temperature of the new fluid, 20C
cli-refill-density = its density at 15 °C, 850kg/m3
cli-refill-holdback = what to stay short by, 0.3L
cli-refill-temp = fluid temperature of those readings at intake, 46C
cli-refill-gain = rise for each litre, 15mm/L; needed with readings

## Keys of the figure "balance"

cli-balance = what was drained against what went in, at 15 °C, with the uncertainty of the difference
cli-balance-drained = a volume, how far it may be off, its temperature and how far that may be off, 4.2L:0.05L:45C:2K
cli-balance-added = the same of what went in, 4.0L:0.02L:20C:2K
cli-balance-density = density at 15 °C and how far it may be off, 850kg/m3:10kg/m3
cli-balance-unseen = what may be lost unseen, 0.1L
cli-balance-capacity = what the transmission holds, 7L

## Keys of the figure "coil"

cli-coil = a coil's resistance at the temperature of its limits, with the meter's error
cli-coil-ohms = what the meter shows, 6.9ohm, or OL for overload
cli-coil-temp = the coil's temperature, 62C
cli-coil-tempoff = how far that may be off, 2K
cli-coil-leads = what the leads alone have, 0.2ohm
cli-coil-meter = the meter's error: percent of the reading and last digits, 0.5%:0.02ohm
cli-coil-limits = lower and upper limit, 5.0ohm:5.6ohm; else a key on the sheet, coil_resistance_20
cli-coil-at = the temperature of the limits, 20C

## Keys of the figure "code"

cli-code = trouble codes by their structure
cli-code-codes = codes with commas between them, P0765,U0100
cli-code-bytes = instead: the bytes of an answer, 43:01:07:65

## Keys of the figure "vin"

cli-vin = a vehicle identification number: check digit, model year, what it may be misread from
cli-vin-vin = the number, 17 characters

## Keys of the figure "torque"

cli-torque = whether a click counts: tolerance, tool, guard band, mixed-up unit
cli-torque-torque = the setting that clicked, 9Nm or 80lbf.in
cli-torque-target = the torque that is wanted, 9Nm
cli-torque-tolerance = its tolerance to both sides, 10%
cli-torque-spec = instead of both: a key on the sheet, pan_bolt_torque
cli-torque-stage = which stage of the sheet's torque, 2

## Keys of the figure "tool"

cli-tool = whether a tool may be used for a setting on a day
cli-tool-setting = the setting that is wanted, 9Nm

## Keys of the figure "adapter"

cli-adapter = what to set on a tool with an adapter
cli-adapter-torque = the torque that is wanted at the bolt, 30lbf.ft
cli-adapter-tool = the tool's length from grip to drive, 12in
cli-adapter-adapter = the adapter's length from drive to bolt, 6in
cli-adapter-angle = angle between them: 0deg straight on, 90deg square, 180deg back

## Keys of the figure "angle"

cli-angle = a stage that is turned by an angle
cli-angle-target = the angle and its tolerance to both sides, 90deg:5deg
cli-angle-turned = what was turned, 88deg

## Keys of the figure "bolt"

cli-bolt = whether a torque makes sense for thread and grade
cli-bolt-torque = the torque, 9Nm
cli-bolt-thread = the thread, M6 or M8x1
cli-bolt-grade = the grade on the head, 8.8, 10.9 or 12.9

## Keys of the figure "order"

cli-order = the order of a cover's bolts, and the next one
cli-order-pattern = star for a ring, crosswise for a pan, spiral for a plate
cli-order-bolt = a bolt and where it sits, A:0mm:60mm
cli-order-done = a bolt that is done in this stage, A

## Keys of the figure "cooldown"

cli-cooldown = how a hot part cools, and the time before which it is not at its touch limit
cli-cooldown-reading = a time and what the contact probe shows, 0min:180C
cli-cooldown-ambientoff = how far that may be off or change, 2K
cli-cooldown-limit = the touch limit, 48C; else touch_limit_bare_metal of the sheet
cli-cooldown-probe = how far the probe may be off, 1K
cli-cooldown-off = when the engine was last switched off, 0min
cli-cooldown-place = joint or shell

## Keys of the figure "touch"

cli-touch = how hot a surface may be to be touched
cli-touch-contact = how long it is touched, 10min or 5s
cli-touch-gloves = level against contact heat that is printed on them, 1 to 4

## Keys of the figure "surface"

cli-surface = the true temperature of a surface that was read by infrared
cli-surface-shows = what the meter shows, 60C
cli-surface-set = the emissivity that is set on it, 0.95
cli-surface-surface = coated, oxidised, rusty or bright
cli-surface-emissivity = instead: the surface's lowest and highest emissivity, 0.8:0.9

## Keys of the figure "labour"

cli-labour = time by phase, waiting and unplanned time apart, in tenths of an hour
cli-labour-event = a time and what the clock was told, 0min:on:drain, 20min:on:drain:waiting:cooling, 40min:on:drain:unplanned:seized nut or 50min:off
cli-labour-until = until when it is counted if still clocked on, 60min
cli-labour-expected = what was expected in all, 45min

## What is wrong with what was typed

# $key: the key; $text: its value; $why: what is wrong, a sentence
cli-wrong = { $key }={ $text }: { $why }
# $name: as typed; $known: the names of the figures
cli-no-figure = There is no figure "{ $name }". Choose one of: { $known }.
# $text: as typed
cli-no-key-value = "{ $text }" is no key=value.
# $figure: its name; $key: as typed
cli-no-key = { $figure } has no key "{ $key }".
# $figure: its name; $key: the key
cli-needs = { $figure } needs { $key }=…
# $key: the key; $count: how often, more than once
cli-more-than-once = { $key }=… is given { $count } times; give it once.
# $file: its path
cli-does-not-load = { $file } does not load:
cli-yes-or-no = write yes or no.
# $example: the number with a unit behind it
cli-unit-missing = the unit is missing. Write it behind the number, such as { $example }.
cli-whole-number = write a whole number.
cli-day-form = write a day as year-month-day, such as 2026-06-30.
cli-gain-form = write a length for each litre, such as 15mm/L.
cli-bytes-form = write two hexadecimal digits a byte, such as 43:01:07:65.
cli-event-form = write time:on:phase, time:on:phase:waiting:reason, time:on:phase:unplanned:reason or time:off.
cli-form-mark = write it as temperature:low:high, such as 40C:12mm:22mm.
cli-form-level = write it as time:class, such as 10min:below.
cli-form-tried = write it as time:symptom, such as 20min:shows.
cli-form-addition = write it as volume:before:after, such as 0.5L:-8mm:-1mm.
cli-form-drained = write it as volume:temperature, such as 4.2L:45C.
cli-form-amount = write it as volume:off by:temperature:off by, such as 4.2L:0.05L:45C:2K.
cli-form-density = write it as density:off by, such as 850kg/m3:10kg/m3.
cli-form-limits = write it as lowest:highest, such as 5.0ohm:5.6ohm.
cli-form-meter = write it as percent:digits, such as 0.5%:0.02ohm.
cli-form-tool = write it as lowest:highest, such as 5Nm:25Nm.
cli-form-target = write it as angle:tolerance, such as 90deg:5deg.
cli-form-bolt = write it as name:right:up, such as A:0mm:60mm.
cli-form-reading = write it as time:temperature, such as 10min:140C.
cli-form-emissivity = write it as lowest:highest, such as 0.8:0.9.
cli-level-words = the level is below, in, above or unclear.
cli-tried-words = the symptom shows or is gone.
cli-pattern-words = it is star, crosswise or spiral.
cli-place-words = it is joint or shell.
cli-surface-words = it is coated, oxidised, rusty or bright.
# $count: how many stages the torque of the sheet has
cli-stages =
    { $count ->
        [one] it has one stage.
       *[other] it has { $count } stages.
    }
cli-temp-missing = temp=… is missing, or give each reading its own.
cli-gain-missing = gain=… is missing: the rise for each litre, such as gain=15mm/L.
cli-tolerance-missing = tolerance=… is missing.
cli-spec-missing = spec=… is missing: give target=… and tolerance=…, or spec=… with --sheet FILE.
cli-chart-missing = The chart is missing: give mark=… twice or more, or --sheet FILE.
cli-limits-missing = The limits are missing: give limits=5.0ohm:5.6ohm, or --sheet FILE.
cli-touch-limit-missing = The touch limit is missing: give limit=48C, or --sheet FILE.
cli-codes-or-bytes = Give either codes=P0765,U0100 or bytes=43:01:07:65.
cli-due-or-calibrated = Give either due=2026-06-30 or calibrated=2025-06-30.
cli-surface-or-emissivity = Give either surface=coated or emissivity=0.8:0.9.
# $key: as typed
cli-no-chart = The sheet has no level chart "{ $key }".
# $key: as typed
cli-no-range = The sheet has no range "{ $key }".
# $key: as typed
cli-no-torque = There is no sheet with the torque "{ $key }".
# $key: the key
cli-no-value = The sheet has no value "{ $key }".
